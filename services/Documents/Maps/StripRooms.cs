using PostFrame.Documents.Drawing;

namespace PostFrame.Documents.Maps;

/// <summary>
/// Where on a strip text may stand: inside the outline, clear of openings and lines.
/// </summary>
internal static class StripRooms
{
    private const double EdgePt = 1.2;

    /// <summary>Where the lap of the strip before is drawn, from the joint.</summary>
    private const double LapPt = 1.6;

    /// <summary>A line's word reaches this far from it, in letter sizes of the strips.</summary>
    private const double LineWordPt = 1.7;

    /// <summary>
    /// Free stretches along the strip, and slots beside its openings, on the page.
    /// </summary>
    public static IReadOnlyList<Frame> Free(PlacedPlane placed, MapStrip strip, double textPt) =>
        [.. All(placed, strip, textPt).Select(room => room.Inset(EdgePt))];

    /// <summary>What of a strip's height lies inside the outline over all of [from, to].</summary>
    public static (double BottomIn, double TopIn) Reach(
        MapPlane plane, double fromIn, double toIn, MapStrip strip)
    {
        var (bottom, top) = (strip.BottomIn, strip.TopIn);
        var between = plane.OutlineIn
            .Select(point => point.AcrossIn)
            .Where(across => across > fromIn && across < toIn);
        foreach (var across in between.Append(fromIn + 0.01).Append(toIn - 0.01))
        {
            var crossings = Crossings(plane, across);
            if (crossings.Count >= 2)
            {
                bottom = Math.Max(bottom, crossings[0]);
                top = Math.Min(top, crossings[^1]);
            }
        }

        return (bottom, Math.Max(bottom, top));
    }

    private static List<double> Crossings(MapPlane plane, double across)
    {
        var found = new List<double>();
        for (var i = 0; i < plane.OutlineIn.Count; i++)
        {
            var a = plane.OutlineIn[i];
            var b = plane.OutlineIn[(i + 1) % plane.OutlineIn.Count];
            if (a.AcrossIn <= across != b.AcrossIn <= across)
            {
                var part = (across - a.AcrossIn) / (b.AcrossIn - a.AcrossIn);
                found.Add(a.UpIn + part * (b.UpIn - a.UpIn));
            }
        }

        found.Sort();
        return found;
    }

    private static IEnumerable<Frame> All(PlacedPlane placed, MapStrip strip, double textPt)
    {
        var plane = placed.Plane;
        var (fromIn, toIn) = PlaneShape.Run(plane, strip);
        var (bottom, top) = Reach(plane, fromIn, toIn, strip);
        var pad = LineWordPt * textPt / placed.Scale;
        var lines = plane.Lines
            .Where(line => line.FromIn < toIn && line.ToIn > fromIn)
            .Select(line => (From: line.UpIn - pad, To: line.UpIn + pad))
            .ToList();
        var openings = plane.Openings
            .Where(opening => opening.FromIn < toIn && opening.ToIn > fromIn)
            .ToList();
        var blocks = lines.Concat(openings.Select(o => (From: o.BottomIn, To: o.TopIn)));
        var clearOfLap = fromIn + (plane.LapIn > 0 ? LapPt / placed.Scale : 0);
        foreach (var (from, to) in Gaps(blocks, bottom, top))
        {
            yield return placed.Box(Math.Min(clearOfLap, toIn), toIn, from, to);
        }

        if (openings.Count == 0)
        {
            yield break;
        }

        foreach (var (from, to) in Gaps(lines, bottom, top))
        {
            var beside = openings.Select(o => (From: o.FromIn, To: o.ToIn));
            foreach (var (left, right) in Gaps(beside, fromIn, toIn))
            {
                yield return placed.Box(left, right, from, to);
            }
        }
    }

    private static IEnumerable<(double From, double To)> Gaps(
        IEnumerable<(double From, double To)> blocks, double from, double to)
    {
        var at = from;
        foreach (var block in blocks.OrderBy(block => block.From).Append((From: to, To: to)))
        {
            if (Math.Min(block.From, to) > at)
            {
                yield return (at, Math.Min(block.From, to));
            }

            at = Math.Max(at, block.To);
        }
    }
}
