using PostFrame.Engine.Heat;
using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.Buildings;

/// <summary>
/// One flat (or unfolded) face that strips stand on: a base line, an upper edge over the run, and
/// what pieces meet at each end. Roof slopes, sidewalls and endwalls are all this.
/// </summary>
internal sealed record Plane
{
    public required string Id { get; init; }

    /// <summary>Short code used in marks.</summary>
    public required string Code { get; init; }

    public required string Title { get; init; }

    public required PlaneKind Kind { get; init; }

    /// <summary>
    /// Upper edge along the whole plane: heights of a wall, slope length of a roof.
    /// </summary>
    public required Profile Edge { get; init; }

    /// <summary>Where pieces start; above zero on stem walls, wainscots and bands.</summary>
    public Length Base { get; init; }

    public required PlaneEnd Bottom { get; init; }

    public required PlaneEnd Top { get; init; }

    /// <summary>The stretches to cover; one unless panels split the run.</summary>
    public required IReadOnlyList<Interval> Parts { get; init; }

    /// <summary>
    /// Where the plane starts along the building: set back with its lean-to, or before endwall 1
    /// by the rake overhang it covers.
    /// </summary>
    public Length Origin { get; init; }

    /// <summary>A stretch where there is no wall, because an open lean-to stands there.</summary>
    public Interval? Gap { get; init; }

    /// <summary>Segments of a roof slope from its foot upwards; empty for walls.</summary>
    public IReadOnlyList<SlopePart> Slopes { get; init; } = [];

    /// <summary>Stretches of a slope that a flush lean-to leaves without an overhang.</summary>
    public IReadOnlyList<Cutback> Cutbacks { get; init; } = [];

    /// <summary>Vented stretch of its ridge.</summary>
    public Interval? Vent { get; init; }

    public IReadOnlyList<PlaneLine> Lines { get; init; } = [];

    public required Framing Framing { get; init; }

    /// <summary>True for the low strip of main wall left above a dropped lean-to.</summary>
    public bool IsBand { get; init; }

    public Length Run => Edge.End.Across;

    public bool IsWall => Kind != PlaneKind.Roof;

    /// <summary>True when the ridge is vented over a stretch, or where its edge stands.</summary>
    public bool IsVentedAt(Interval covers) => Vent is { } vent
        && (vent.Overlaps(covers) || (covers.Size == Length.Zero && vent.Holds(covers)));

    /// <summary>Angle to the horizontal [°], weighted by length; 90 for walls.</summary>
    public double SlopeDegrees
    {
        get
        {
            if (IsWall) return 90;
            var along = Slopes.Sum(s => s.Along.TotalMetres);
            return Slopes.Sum(s =>
                Math.Abs(s.Slope.TotalDegrees) * s.Along.TotalMetres) / along;
        }
    }

    /// <summary>Where a strip starts: above the overhang when all of it lies at a lean-to.
    /// </summary>
    public Length BottomOn(Interval covers) =>
        Base + Sum(Cutbacks.Where(c => c.Along.Holds(covers)).Select(c => c.AtBottom));

    /// <summary>The highest point a strip has to reach.</summary>
    public PlanePoint TopOn(Interval covers)
    {
        var highest = Edge.HighestOn(covers.From, covers.To);
        var less = Sum(Cutbacks.Where(c => c.Along.Holds(covers)).Select(c => c.AtTop));
        return highest with { Up = highest.Up - less };
    }

    /// <summary>Area of the covered stretches between base and edge.</summary>
    public Area Area => Parts.SelectMany(Steps).Aggregate(
        Quantities.Area.Zero, (sum, step) => sum
            + Edge.AreaAbove(BottomOn(step) + Edge.HighestOn(step.From, step.To).Up
                - TopOn(step).Up, step.From, step.To));

    /// <summary>
    /// Polygon of the covered stretches, counter-clockwise from its lower left; stretches are
    /// joined by the line of their feet.
    /// </summary>
    public IReadOnlyList<PlanePoint> Outline()
    {
        if (Parts.Count == 0) return [];
        var top = new List<PlanePoint>();
        var foot = new List<PlanePoint>();
        for (var i = 0; i < Parts.Count; i++)
        {
            if (i > 0)
            {
                PlanePoint[] gap = [.. FootOf(new(Parts[i - 1].To, Parts[i].From))];
                foot.AddRange(gap);
                top.AddRange(gap);
            }
            PlanePoint[] here = [.. FootOf(Parts[i])];
            foot.AddRange(here);
            top.AddRange([here[0], .. Steps(Parts[i]).SelectMany(TopOf), here[^1]]);
        }
        top.Reverse();
        var isStepped = Cutbacks.Count > 0;
        PlanePoint[] round = [.. isStepped ? foot : foot.Take(1), .. top.SkipLast(1)];
        PlanePoint[] all = [.. round.Where((p, i) => i == 0 || p != round[i - 1])];
        return !isStepped ? all : [.. all.Where((p, i) =>
            p.Up != all[(i + 1) % all.Length].Up || p.Up != all[i == 0 ? ^1 : i - 1].Up)];
    }

    private IEnumerable<PlanePoint> FootOf(Interval stretch) => Steps(stretch).SelectMany(
        s => new PlanePoint[] { new(s.From, BottomOn(s)), new(s.To, BottomOn(s)) });

    private IEnumerable<PlanePoint> TopOf(Interval step)
    {
        var less = Edge.HighestOn(step.From, step.To).Up - TopOn(step).Up;
        return Edge.Part(step.From, step.To).Points.Select(p => p with { Up = p.Up - less });
    }

    /// <summary>A stretch between the ends of the cutbacks within it.</summary>
    private IEnumerable<Interval> Steps(Interval part)
    {
        Length[] edges = [.. Cutbacks.SelectMany(c => new[] { c.Along.From, c.Along.To })
            .Where(e => part.From < e && e < part.To).Append(part.From).Append(part.To)
            .Distinct().Order()];
        return edges.Zip(edges.Skip(1), (from, to) => new Interval(from, to));
    }

    private static Length Sum(IEnumerable<Length> lengths) =>
        lengths.Aggregate(Length.Zero, (sum, l) => sum + l);
}
