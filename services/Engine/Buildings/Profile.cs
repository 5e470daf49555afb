using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.Buildings;

/// <summary>
/// The upper edge of a plane as a polyline of (across, up) points, strictly rightwards. Every roof
/// form is one of these, and nothing after it asks for the form again.
/// </summary>
/// <remarks>Source: takeoff.md 2.3, the profile rule.</remarks>
public sealed class Profile
{
    private readonly PlanePoint[] points;

    /// <summary>A polyline of at least two points, each to the right of the one before.</summary>
    /// <exception cref="ArgumentException">Fewer points, or one not to the right.</exception>
    public Profile(IEnumerable<PlanePoint> vertices)
    {
        points = [.. vertices];
        if (points.Length < 2)
            throw new ArgumentException("A profile has at least two points.", nameof(vertices));
        for (var i = 1; i < points.Length; i++)
            if (points[i].Across <= points[i - 1].Across)
                throw new ArgumentException("A profile runs rightwards.", nameof(vertices));
    }

    /// <summary>The vertices, from left to right.</summary>
    public IReadOnlyList<PlanePoint> Points => points;

    /// <summary>Where it starts.</summary>
    public PlanePoint Start => points[0];

    /// <summary>Where it ends.</summary>
    public PlanePoint End => points[^1];

    /// <summary>The highest point; of several, the first.</summary>
    public PlanePoint Highest => HighestOn(Start.Across, End.Across);

    /// <summary>A level edge of a given length.</summary>
    public static Profile Level(Length run, Length height) =>
        new([new(Length.Zero, height), new(run, height)]);

    /// <summary>Height at a place; beyond its ends, that of the end.</summary>
    public Length HeightAt(Length across)
    {
        if (across <= Start.Across) return Start.Up;
        for (var i = 1; i < points.Length; i++)
        {
            if (across > points[i].Across) continue;
            var (left, right) = (points[i - 1], points[i]);
            var share = (across - left.Across) / (right.Across - left.Across);
            return left.Up == right.Up
                ? left.Up
                : Settled(left.Up + (right.Up - left.Up).Times(share));
        }
        return End.Up;
    }

    /// <summary>
    /// The highest point on [from, to]: at an end or at any vertex between them, so that neither a
    /// ridge inside a strip nor a concave profile is missed. Of several, the first.
    /// </summary>
    public PlanePoint HighestOn(Length from, Length to)
    {
        var best = new PlanePoint(from, HeightAt(from));
        foreach (var point in points)
            if (point.Across > from && point.Across < to && Settled(point.Up) > best.Up)
                best = point with { Up = Settled(point.Up) };
        var end = new PlanePoint(to, HeightAt(to));
        return end.Up > best.Up ? end : best;
    }

    /// <summary>The lowest height on [from, to].</summary>
    public Length LowestOn(Length from, Length to)
    {
        var best = Length.Min(HeightAt(from), HeightAt(to));
        foreach (var point in points)
            if (point.Across > from && point.Across < to)
                best = Length.Min(best, point.Up);
        return best;
    }

    /// <summary>
    /// Length along the edge from one vertex to a later one, each segment summed.
    /// </summary>
    public Length EdgeLength(int fromVertex, int toVertex)
    {
        double sum = 0;
        for (var i = fromVertex; i < toVertex; i++)
            sum += Math.Sqrt(
                Square((points[i + 1].Across - points[i].Across).Nanometres)
                + Square((points[i + 1].Up - points[i].Up).Nanometres));
        return Length.FromNanometres(checked((long)Math.Round(sum)));
    }

    /// <summary>The part on [from, to], with ends interpolated.</summary>
    public Profile Part(Length from, Length to) => new(
        points.Where(p => p.Across > from && p.Across < to)
            .Prepend(new(from, HeightAt(from)))
            .Append(new(to, HeightAt(to))));

    /// <summary>Area between the edge and a level base, on [from, to].</summary>
    public Area AreaAbove(Length baseline, Length from, Length to)
    {
        var part = Part(from, to).points;
        double sum = 0;
        for (var i = 1; i < part.Length; i++)
            sum += (part[i].Across - part[i - 1].Across).TotalMetres
                * ((part[i].Up + part[i - 1].Up).TotalMetres / 2 - baseline.TotalMetres);
        return Area.FromSquareMetres(sum);
    }

    /// <summary>Slope of the segment that ends at a vertex; falling is negative.</summary>
    public Slope SlopeBefore(int vertex) => Slope.FromRatio(
        (points[vertex].Up - points[vertex - 1].Up)
        / (points[vertex].Across - points[vertex - 1].Across));

    /// <summary>The steepest of its segments, rising or falling, as a rise.</summary>
    public Slope Steepest => Slope.FromRatio(Enumerable.Range(1, points.Length - 1)
        .Max(i => Math.Abs(SlopeBefore(i).RiseOverRun)));

    /// <summary>
    /// A height on a slope to 25 nm, which divides 1/64 in and every metric size of whole
    /// micrometres: vertices are rounded to a nanometre, and a height that lies on a step or on
    /// the tolerance above it must not fall beyond by that.
    /// </summary>
    private static Length Settled(Length length) =>
        Length.FromNanometres((long)Math.Round(length.Nanometres / 25.0) * 25);

    private static double Square(double value) => value * value;
}
