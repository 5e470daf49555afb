namespace PostFrame.Documents.Drawing;

/// <summary>Plane geometry for drawing.</summary>
internal static class Polygons
{
    /// <summary>
    /// The part of a polygon inside a rectangle. Source: Sutherland–Hodgman clipping, from memory;
    /// a polygon cut in two comes back joined along the rectangle's edge, which fills alike.
    /// </summary>
    public static IReadOnlyList<Spot> Clip(IReadOnlyList<Spot> polygon, Frame frame)
    {
        var left = Keep(polygon, p => p.X - frame.X);
        var right = Keep(left, p => frame.Right - p.X);
        var top = Keep(right, p => p.Y - frame.Y);
        return Keep(top, p => frame.Bottom - p.Y);
    }

    private static List<Spot> Keep(IReadOnlyList<Spot> polygon, Func<Spot, double> depth)
    {
        var kept = new List<Spot>();
        for (var i = 0; i < polygon.Count; i++)
        {
            var a = polygon[i];
            var b = polygon[(i + 1) % polygon.Count];
            var (depthA, depthB) = (depth(a), depth(b));
            if (depthA >= 0)
            {
                kept.Add(a);
            }

            if ((depthA > 0 && depthB < 0) || (depthA < 0 && depthB > 0))
            {
                var part = depthA / (depthA - depthB);
                kept.Add(new Spot(a.X + (b.X - a.X) * part, a.Y + (b.Y - a.Y) * part));
            }
        }

        return kept;
    }
}
