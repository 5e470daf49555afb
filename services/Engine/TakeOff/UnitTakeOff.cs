using PostFrame.Engine.Buildings;
using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.TakeOff;

/// <summary>A piece with its strip and roll width, before it has a mark.</summary>
internal sealed record StripPiece(StripPosition Strip, Draft Draft)
{
    /// <summary>Roll that is bought for it, width × cut length [nm²].</summary>
    public Int128 BoughtNm2 => (Int128)Strip.Width.Nanometres * Draft.Cut.Nanometres;
}

/// <summary>Everything one unit gives: strips, and pieces in strip order.</summary>
internal sealed record UnitTakeOff(
    CoverUnit Unit, IReadOnlyList<StripRun> Runs, IReadOnlyList<StripPosition> Strips,
    IReadOnlyList<StripPiece> Pieces)
{
    /// <summary>Area [nm²], then pieces.</summary>
    public (Int128 Area, int Pieces) Bought => (Pieces.Aggregate(
        (Int128)0, (sum, p) => sum + p.BoughtNm2),
        Pieces.Count);
}

/// <summary>Takes off a unit: lays its strips, makes their pieces, joins short headers.</summary>
/// <remarks>Source: takeoff.md 2.3 (bands), 2.6, 3 and W6 (short headers).</remarks>
internal sealed class UnitTaker(Building building, Practice practice, PieceRule rule)
{
    /// <remarks>
    /// The best widths are chosen strip by strip; headers made one may save more at a single width.
    /// </remarks>
    public UnitTakeOff Take(CoverUnit unit)
    {
        var runs = StripRun.Of(unit.Plane, building, practice);
        if (unit.Plane.IsBand && BandWidth(unit) is { } width)
            return Band(unit, runs, width);
        var layout = new StripLayout(unit, rule, practice);
        var take = Laid(unit, runs, layout.Lay(runs));
        if (!unit.BestWidths || !practice.MergeShortHeaders || !rule.HasOpenings(unit.Plane))
            return take;
        return unit.Widths.OrderDescending().Select(w => Laid(unit, runs, layout.Lay(runs, w)))
            .Prepend(take).MinBy(t => t.Bought)!;
    }

    private UnitTakeOff Laid(
        CoverUnit unit, IReadOnlyList<StripRun> runs, IReadOnlyList<StripPosition> strips)
    {
        var pieces = strips
            .SelectMany(strip => unit.PlanesAt(strip.Covers)
                .SelectMany(plane => rule.Of(plane, strip.Covers, unit.NarrowestCoverage))
                .Select(draft => new StripPiece(strip, draft)))
            .ToList();
        return new(unit, runs, strips,
            practice.MergeShortHeaders
                ? new HeaderMerge(unit, rule, practice).Merged(pieces)
                : pieces);
    }

    /// <summary>The narrowest offered roll that lies across the band; null: hang it upright.
    /// </summary>
    private Length? BandWidth(CoverUnit unit)
    {
        var height = unit.Plane.Edge.Start.Up - unit.Plane.Base
            + practice.WallTop + practice.WallBase;
        return unit.Widths.Where(w => w >= height).OrderBy(w => w)
            .Select(w => (Length?)w).FirstOrDefault();
    }

    private UnitTakeOff Band(CoverUnit unit, IReadOnlyList<StripRun> runs, Length width)
    {
        var usable = unit.Product.Rolls.First(r => r.Width == width).RollLength
            - practice.EndTrim - practice.BreakLap;
        var strips = new List<StripPosition>();
        var pieces = new List<StripPiece>();
        var upright = new Interval(unit.Plane.Base, unit.Plane.Edge.Start.Up);
        foreach (var run in runs)
        {
            var parts = Math.Max(1, run.Size.StepsToCover(usable, practice.Tolerance));
            for (var i = 0L; i < parts; i++)
            {
                var along = new Interval(
                    run.Start + run.Size.Times((double)i / parts),
                    run.Start + run.Size.Times((double)(i + 1) / parts));
                var strip = new StripPosition(
                    strips.Count + 1, along, along.ClippedTo(run.Part), width);
                var lap = i + 1 < parts ? practice.BreakLap : Length.Zero;
                strips.Add(strip);
                pieces.Add(new(strip, rule.Along(
                    unit.Plane, PieceRole.Full, along, lap, upright)));
            }
        }
        return new(unit, runs, strips, pieces);
    }
}
