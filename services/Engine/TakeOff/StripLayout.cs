using PostFrame.Engine.Buildings;
using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.TakeOff;

/// <summary>Where the strips of a unit lie along its runs.</summary>
/// <remarks>Source: takeoff.md 2.6.</remarks>
internal sealed class StripLayout(CoverUnit unit, PieceRule rule, Practice practice)
{
    /// <summary>A last strip that covers less than this offers its choices.</summary>
    private readonly Length thinLast =
        practice.Metric ? Length.FromMillimetres(150) : Length.FromInches(6);

    /// <param name="runs">Stretches to cover.</param>
    /// <param name="only">One width where the best were asked for.</param>
    public IReadOnlyList<StripPosition> Lay(IReadOnlyList<StripRun> runs, Length? only = null)
    {
        var positions = new List<StripPosition>();
        foreach (var run in runs)
        {
            var widths = unit.BestWidths && only is null
                ? new BestWidths(unit, rule, practice).For(run)
                : Uniform(run, only ?? unit.Widths[0], unit.LastStrip);
            var start = run.Start - ShiftOf(run, widths);
            foreach (var width in widths)
            {
                var reach = new Interval(start, start + unit.Product.CoverageOf(width));
                positions.Add(new(
                    positions.Count + 1, reach, reach.ClippedTo(run.Part), width));
                start = reach.To;
            }
        }
        return positions;
    }

    /// <summary>Full-width strips, as many as cover the run less the tolerance.</summary>
    public IReadOnlyList<Length> Uniform(StripRun run, Length width, LastStrip last)
    {
        var coverage = unit.Product.CoverageOf(width);
        var count = Math.Max(1, run.Size.StepsToCover(coverage, practice.Tolerance));
        var widths = Enumerable.Repeat(width, checked((int)count)).ToList();
        if (last != LastStrip.Wider || !IsThin(run, width)) return widths;
        if (WiderFor(run, width) is not { } wider) return widths;
        widths.RemoveAt(widths.Count - 1);
        widths[^1] = wider;
        return widths;
    }

    /// <summary>True when the last full-width strip would cover less than 6 in.</summary>
    public bool IsThin(StripRun run, Length width)
    {
        var coverage = unit.Product.CoverageOf(width);
        var count = run.Size.StepsToCover(coverage, practice.Tolerance);
        return count > 1 && run.Size - coverage * (count - 1) < thinLast;
    }

    /// <summary>The narrowest roll that covers the last two strips' stretch; null without one.
    /// </summary>
    public Length? WiderFor(StripRun run, Length width)
    {
        var coverage = unit.Product.CoverageOf(width);
        var count = run.Size.StepsToCover(coverage, practice.Tolerance);
        var stretch = run.Size - coverage * (count - 2);
        var metric = unit.Product.Rolls.First(r => r.Width == width).Metric;
        return unit.Product.Rolls
            .Where(r => r.Metric == metric
                && unit.Product.CoverageOf(r.Width) >= stretch - practice.Tolerance)
            .OrderBy(r => r.Width).Select(r => (Length?)r.Width).FirstOrDefault();
    }

    /// <summary>Half the surplus goes before the run when larger wraps were asked for.</summary>
    private Length ShiftOf(StripRun run, IReadOnlyList<Length> widths)
    {
        if (unit.LastStrip != LastStrip.Wrap || unit.BestWidths || !IsThin(run, widths[0]))
            return Length.Zero;
        var covered = widths.Aggregate(
            Length.Zero, (sum, w) => sum + unit.Product.CoverageOf(w));
        return (covered - run.Size).Times(0.5);
    }
}
