using PostFrame.Engine.Buildings;
using PostFrame.Engine.Quantities;

namespace PostFrame.Engine;

/// <summary>What a plane's drawing shows beside its strips and wall openings.</summary>
/// <remarks>Source: plain geometry.</remarks>
internal static class OnTheMap
{
    /// <summary>
    /// Translucent panels the strips run over: cut out on site, and a fall hazard until then.
    /// </summary>
    public static IReadOnlyList<PlacedPanel> Panels(Building building, Plane plane)
    {
        if (!plane.Id.StartsWith("roof", StringComparison.Ordinal)) return [];
        var top = plane.Outline().Max(point => point.Up);
        var ridge = plane.Lines.Where(line => line.Kind == "ridge")
            .Select(line => line.Up).DefaultIfEmpty(top).First();
        return
        [
            .. from panel in building.Panels
               where panel.Treatment == TranslucentTreatment.CoverAndCut
                   && (plane.Id == "roof"
                       || plane.Id.StartsWith(panel.Plane, StringComparison.Ordinal))
               let place = new Interval(
                   panel.Along.From - plane.Origin, panel.Along.To - plane.Origin)
               from part in plane.Parts
               where part.Overlaps(place)
               let along = place.ClippedTo(part)
               let isUpper = plane.Id == "roof" && panel.Plane == "roofB"
               let isLower = plane.Id == "roof" && panel.Plane == "roofA"
               select new PlacedPanel(
                   along.From, along.To, isUpper ? ridge : Length.Zero, isLower ? ridge : top),
        ];
    }
}
