using PostFrame.Engine.Buildings;
using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.TakeOff;

/// <summary>
/// Planes whose strips share their positions: mostly one plane; over and beside a part-length
/// ridge vent, the whole roof and its two slopes.
/// </summary>
internal sealed record CoverUnit
{
    /// <summary>The plane the run is taken from.</summary>
    public required Plane Plane { get; init; }

    /// <summary>Planes that take over where the first one's vent lies; else empty.</summary>
    public IReadOnlyList<Plane> PairsAtVent { get; init; } = [];

    public required Product Product { get; init; }

    /// <summary>Roll widths to choose from; one unless the best were asked for.</summary>
    public required IReadOnlyList<Length> Widths { get; init; }

    public bool BestWidths { get; init; }

    public required LastStrip LastStrip { get; init; }

    /// <summary>/insulation/n, for messages.</summary>
    public required string Path { get; init; }

    /// <summary>
    /// What the narrowest roll on offer covers: a window wider than two of these is wide, whichever
    /// widths are chosen, so that an opening counts the same for all its strips.
    /// </summary>
    public Length NarrowestCoverage => Product.CoverageOf(Widths.Min());

    public IReadOnlyList<Plane> PlanesAt(Interval covers) =>
        PairsAtVent.Count > 0 && Plane.IsVentedAt(covers)
            ? PairsAtVent
            : [Plane];
}
