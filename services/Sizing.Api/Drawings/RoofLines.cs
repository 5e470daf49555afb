using PostFrame.Documents;
using PostFrame.Engine;
using PostFrame.Engine.Buildings;
using PostFrame.Engine.Quantities;

namespace PostFrame.SizingApi.Drawings;

/// <summary>
/// Ridge, breaks and ridge vent on a roof plane. The plane's height along the slope says which
/// stretch of the cross-section it lies on; the corners inside that stretch are its lines.
/// </summary>
internal static class RoofLines
{
    private static readonly Length Slack = Length.FromMillimetres(2);

    public static IEnumerable<MapLine> Of(
        PlaneResult plane, SizingInput input, BuildingSummary building)
    {
        if (plane.Kind is not Engine.Buildings.PlaneKind.Roof)
        {
            yield break;
        }

        var profile = building.Profile;
        var ridge = HighestOf(profile);
        var height = Length.FromNanometres(plane.Outline.Max(point => point.Up.Nanometres));
        var from = plane.Outline.Min(point => point.Across.TotalInches);
        var to = plane.Outline.Max(point => point.Across.TotalInches);
        if (StretchOf(profile, ridge, height) is { } stretch)
        {
            var up = Length.Zero;
            for (var corner = stretch.First + 1; corner < stretch.Last; corner++)
            {
                up += Between(profile[corner - 1], profile[corner]);
                var fromEave = stretch.Last == ridge || stretch.First < ridge
                    ? up
                    : height - up;
                yield return new MapLine(
                    corner == ridge ? "ridge" : "break", from, to, fromEave.TotalInches);
            }
        }

        var meetsRidge = plane.Plane is "roofA" or "roofB";
        if (building.Ridge is RidgeKind.Vented && meetsRidge)
        {
            var roof = input.Building?.Roof;
            yield return new MapLine(
                "ridge vent", Math.Max(from, roof?.VentFrom?.TotalInches ?? from),
                Math.Min(to, roof?.VentTo?.TotalInches ?? to), height.TotalInches, IsVent: true);
        }
    }

    /// <summary>The corners the plane runs between: over the ridge, or up to it.</summary>
    private static (int First, int Last)? StretchOf(
        IReadOnlyList<PlanePoint> profile, int ridge, Length height)
    {
        for (var first = 0; first <= ridge; first++)
        {
            var length = Length.Zero;
            for (var last = first + 1; last < profile.Count; last++)
            {
                length += Between(profile[last - 1], profile[last]);
                var misses = length - height;
                if (last >= ridge && misses < Slack && misses > -Slack)
                {
                    return (first, last);
                }
            }
        }

        return null;
    }

    private static int HighestOf(IReadOnlyList<PlanePoint> profile)
    {
        var highest = 0;
        for (var corner = 1; corner < profile.Count; corner++)
        {
            highest = profile[corner].Up > profile[highest].Up ? corner : highest;
        }

        return highest;
    }

    private static Length Between(PlanePoint a, PlanePoint b)
    {
        var across = (b.Across - a.Across).TotalMillimetres;
        var up = (b.Up - a.Up).TotalMillimetres;
        return Length.FromMillimetres(Math.Sqrt((across * across) + (up * up)));
    }
}
