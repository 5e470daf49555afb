using PostFrame.Documents.Drawing;

namespace PostFrame.Documents.Maps;

/// <summary>Where a plane is: its outline may be notched or in several parts.</summary>
internal static class PlaneShape
{
    /// <summary>Beside an edge, so that the edge itself counts as inside.</summary>
    private const double HairIn = 0.02;

    /// <summary>The stretches of the plane at a height, from strip 1 [in].</summary>
    public static IReadOnlyList<(double From, double To)> Along(MapPlane plane, double upIn)
    {
        var below = Stretches(plane, upIn - HairIn);
        var above = Stretches(plane, upIn + HairIn);
        return Length(below) >= Length(above) ? below : above;
    }

    /// <summary>
    /// The part of a strip's run that lies on the plane: a last strip reaches past the edge.
    /// </summary>
    public static (double From, double To) Run(MapPlane plane, MapStrip strip)
    {
        var (least, most) = Ends(plane);
        var whole = (
            From: Math.Clamp(strip.FromIn, least, most), To: Math.Clamp(strip.ToIn, least, most));
        var middle = (strip.BottomIn + Math.Min(strip.TopIn, plane.OutlineIn.Max(p => p.UpIn))) / 2;
        return Along(plane, middle)
            .Select(part => (
                From: Math.Max(part.From, strip.FromIn), To: Math.Min(part.To, strip.ToIn)))
            .Where(part => part.To - part.From > HairIn)
            .DefaultIfEmpty(whole)
            .MaxBy(part => part.To - part.From);
    }

    /// <summary>A line only where the plane is: not across a gap, nor past its end.</summary>
    public static IEnumerable<MapLine> OnPlane(MapPlane plane, MapLine line) =>
        Along(plane, line.UpIn)
        .Select(part => line with
        {
            FromIn = Math.Max(line.FromIn, part.From),
            ToIn = Math.Min(line.ToIn, part.To),
        })
        .Where(part => part.ToIn > part.FromIn);

    public static (double Least, double Most) Ends(MapPlane plane) =>
        (plane.OutlineIn.Min(p => p.AcrossIn), plane.OutlineIn.Max(p => p.AcrossIn));

    /// <summary>The part of a plane between two places along its run, with what lies there.
    /// </summary>
    public static MapPlane Part(MapPlane plane, double fromIn, double toIn, bool isLast)
    {
        var window = new Frame(fromIn, -1e7, toIn - fromIn, 2e7);
        var outline = Polygons.Clip(
            [.. plane.OutlineIn.Select(p => new Spot(p.AcrossIn, p.UpIn))], window);
        return plane with
        {
            PartFromIn = fromIn,
            OutlineIn = [.. outline.Select(p => new MapPoint(p.X, p.Y))],
            Strips = [.. plane.Strips.Where(strip => strip.FromIn < toIn && strip.ToIn > fromIn
                || (strip.FromIn >= fromIn && (isLast || strip.FromIn < toIn)))],
            Openings = [.. plane.Openings.Where(o => o.FromIn < toIn && o.ToIn > fromIn)
                .Select(o => o with
                {
                    FromIn = Math.Max(o.FromIn, fromIn),
                    ToIn = Math.Min(o.ToIn, toIn),
                })],
            Lines = [.. plane.Lines.Where(line => line.FromIn < toIn && line.ToIn > fromIn)
                .Select(line => line with
                {
                    FromIn = Math.Max(line.FromIn, fromIn),
                    ToIn = Math.Min(line.ToIn, toIn),
                })],
        };
    }

    private static double Length(IReadOnlyList<(double From, double To)> parts) =>
        parts.Sum(part => part.To - part.From);

    private static List<(double From, double To)> Stretches(MapPlane plane, double upIn)
    {
        var crossings = new List<double>();
        for (var i = 0; i < plane.OutlineIn.Count; i++)
        {
            var a = plane.OutlineIn[i];
            var b = plane.OutlineIn[(i + 1) % plane.OutlineIn.Count];
            if (a.UpIn <= upIn != b.UpIn <= upIn)
            {
                var part = (upIn - a.UpIn) / (b.UpIn - a.UpIn);
                crossings.Add(a.AcrossIn + part * (b.AcrossIn - a.AcrossIn));
            }
        }

        crossings.Sort();
        var stretches = new List<(double From, double To)>();
        for (var i = 0; i + 1 < crossings.Count; i += 2)
        {
            if (crossings[i + 1] - crossings[i] > HairIn)
            {
                stretches.Add((crossings[i], crossings[i + 1]));
            }
        }

        return stretches;
    }
}
