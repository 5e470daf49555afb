namespace PostFrame.Documents.Drawing;

/// <summary>Plane geometry for drawing: clipping and filling shapes with patterns.</summary>
internal static class Polygons
{
    /// <summary>
    /// The part of a polygon inside a rectangle. Source: Sutherland–Hodgman clipping, from memory;
    /// a polygon cut into two parts comes back joined along the rectangle's edge, which fills alike.
    /// </summary>
    public static IReadOnlyList<Spot> Clip(IReadOnlyList<Spot> polygon, Frame frame)
    {
        var left = Keep(polygon, p => p.X - frame.X);
        var right = Keep(left, p => frame.Right - p.X);
        var top = Keep(right, p => p.Y - frame.Y);
        return Keep(top, p => frame.Bottom - p.Y);
    }

    /// <summary>Parallel bars rising at 45° inside a polygon: (from, to) pairs.</summary>
    public static IEnumerable<(Spot From, Spot To)> DiagonalBars(
        IReadOnlyList<Spot> polygon, double spacing)
    {
        if (polygon.Count < 3)
        {
            yield break;
        }

        var first = Math.Ceiling(polygon.Min(p => p.X + p.Y) / spacing) * spacing;
        var last = polygon.Max(p => p.X + p.Y);
        for (var offset = first + spacing / 2; offset < last; offset += spacing)
        {
            var crossings = Crossings(polygon, offset);
            for (var i = 0; i + 1 < crossings.Count; i += 2)
            {
                yield return (crossings[i], crossings[i + 1]);
            }
        }
    }

    /// <summary>Centres of dots on a staggered grid that lie wholly inside a polygon.</summary>
    public static IEnumerable<Spot> Dots(
        IReadOnlyList<Spot> polygon, double spacing, double radius)
    {
        if (polygon.Count < 3)
        {
            yield break;
        }

        var around = Frame.Around(polygon);
        var row = 0;
        for (var y = around.Y + spacing / 2; y < around.Bottom; y += spacing / 2, row++)
        {
            var shift = row % 2 == 0 ? spacing / 2 : spacing;
            for (var x = around.X + shift; x < around.Right; x += spacing)
            {
                var centre = new Spot(x, y);
                if (Contains(polygon, centre) && Distance(polygon, centre) >= radius)
                {
                    yield return centre;
                }
            }
        }
    }

    public static bool Contains(IReadOnlyList<Spot> polygon, Spot point)
    {
        var inside = false;
        for (var i = 0; i < polygon.Count; i++)
        {
            var a = polygon[i];
            var b = polygon[(i + 1) % polygon.Count];
            if (a.Y > point.Y != b.Y > point.Y
                && point.X < a.X + (b.X - a.X) * (point.Y - a.Y) / (b.Y - a.Y))
            {
                inside = !inside;
            }
        }

        return inside;
    }

    private static double Distance(IReadOnlyList<Spot> polygon, Spot point)
    {
        var least = double.MaxValue;
        for (var i = 0; i < polygon.Count; i++)
        {
            var a = polygon[i];
            var b = polygon[(i + 1) % polygon.Count];
            var (dx, dy) = (b.X - a.X, b.Y - a.Y);
            var length = dx * dx + dy * dy;
            var along = length == 0
                ? 0
                : Math.Clamp(((point.X - a.X) * dx + (point.Y - a.Y) * dy) / length, 0, 1);
            var (ex, ey) = (a.X + along * dx - point.X, a.Y + along * dy - point.Y);
            least = Math.Min(least, Math.Sqrt(ex * ex + ey * ey));
        }

        return least;
    }

    private static List<Spot> Crossings(IReadOnlyList<Spot> polygon, double offset)
    {
        var crossings = new List<Spot>();
        for (var i = 0; i < polygon.Count; i++)
        {
            var a = polygon[i];
            var b = polygon[(i + 1) % polygon.Count];
            var (fromA, fromB) = (a.X + a.Y - offset, b.X + b.Y - offset);
            if (fromA > 0 != fromB > 0)
            {
                crossings.Add(Between(a, b, fromA / (fromA - fromB)));
            }
        }

        crossings.Sort((p, q) => p.X.CompareTo(q.X));
        return crossings;
    }

    private static IReadOnlyList<Spot> Keep(IReadOnlyList<Spot> polygon, Func<Spot, double> depth)
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

            if (depthA > 0 && depthB < 0 || depthA < 0 && depthB > 0)
            {
                kept.Add(Between(a, b, depthA / (depthA - depthB)));
            }
        }

        return kept;
    }

    private static Spot Between(Spot a, Spot b, double part) =>
        new(a.X + (b.X - a.X) * part, a.Y + (b.Y - a.Y) * part);
}
