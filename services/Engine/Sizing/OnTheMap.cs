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
        if (plane.Kind != PlaneKind.Roof || plane.Id is not ("roof" or "roofA" or "roofB"))
            return [];
        var top = plane.Outline().Max(point => point.Up);
        var ridge = plane.Lines.Where(line => line.Kind == "ridge")
            .Select(line => line.Up).DefaultIfEmpty(top).First();
        return
        [
            .. from panel in building.Panels
               where panel.Treatment == TranslucentTreatment.CoverAndCut
                   && (plane.Id == "roof" || panel.Plane == "roof" || panel.Plane == plane.Id)
               from part in plane.Parts
               where part.Overlaps(panel.Along)
               let along = panel.Along.ClippedTo(part)
               let isUpper = plane.Id == "roof" && panel.Plane == "roofB"
               let isLower = plane.Id == "roof" && panel.Plane == "roofA"
               select new PlacedPanel(
                   along.From, along.To, isUpper ? ridge : Length.Zero, isLower ? ridge : top),
        ];
    }
}
