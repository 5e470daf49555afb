using PostFrame.Engine.Buildings;
using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.TakeOff;

/// <summary>
/// Chooses roll widths along a run so that the least area is bought, then the fewest pieces made.
/// </summary>
/// <remarks>
/// Dynamic programming from the end of the run over the places a strip edge can lie; exact, because
/// a strip's pieces depend only on where it lies. Of equals, the wider strip first. Own method.
/// </remarks>
internal sealed class BestWidths(CoverUnit unit, PieceRule rule, Practice practice)
{
    /// <summary>More places than this are not searched: the best single width is taken.</summary>
    private const int MostPlaces = 20_000;

    public IReadOnlyList<Length> For(StripRun run)
    {
        var wideFirst = unit.Widths.OrderByDescending(w => w).ToArray();
        var places = Places(run, wideFirst);
        if (places is null) return BestSingle(run);
        var best = new Dictionary<long, Choice>();
        for (var i = places.Count - 1; i >= 0; i--)
            best[places[i]] = BestFrom(Length.FromNanometres(places[i]), run, wideFirst, best);
        var widths = new List<Length>();
        for (var at = Length.Zero; !Done(at, run); at += unit.Product.CoverageOf(widths[^1]))
            widths.Add(best[at.Nanometres].Width);
        return widths;
    }

    /// <summary>What a sequence of widths buys and how many pieces it makes.</summary>
    public (Int128 Area, int Pieces) Weigh(StripRun run, IReadOnlyList<Length> widths)
    {
        var (area, pieces) = ((Int128)0, 0);
        var at = Length.Zero;
        foreach (var width in widths)
        {
            var (a, p) = Cost(at, width, run);
            (area, pieces) = (area + a, pieces + p);
            at += unit.Product.CoverageOf(width);
        }
        return (area, pieces);
    }

    private IReadOnlyList<Length> BestSingle(StripRun run)
    {
        var layout = new StripLayout(unit, rule, practice);
        return unit.Widths.OrderByDescending(w => w)
            .Select(w => layout.Uniform(run, w, LastStrip.Make))
            .MinBy(widths => Weigh(run, widths))!;
    }

    private Choice BestFrom(
        Length at, StripRun run, Length[] wideFirst, Dictionary<long, Choice> best)
    {
        Choice? chosen = null;
        foreach (var width in wideFirst)
        {
            var next = at + unit.Product.CoverageOf(width);
            var (area, pieces) = Cost(at, width, run);
            if (!Done(next, run))
            {
                var rest = best[next.Nanometres];
                (area, pieces) = (area + rest.Area, pieces + rest.Pieces);
            }
            if (chosen is null || (area, pieces).CompareTo((chosen.Area, chosen.Pieces)) < 0)
                chosen = new(width, area, pieces);
        }
        return chosen!;
    }

    private (Int128 Area, int Pieces) Cost(Length at, Length width, StripRun run)
    {
        var coverage = unit.Product.CoverageOf(width);
        var covers = new Interval(run.Start + at, run.Start + at + coverage).ClippedTo(run.Part);
        var (area, pieces) = ((Int128)0, 0);
        foreach (var plane in unit.PlanesAt(covers))
            foreach (var draft in rule.Of(plane, covers, unit.NarrowestCoverage))
            {
                area += (Int128)width.Nanometres * draft.Cut.Nanometres;
                pieces++;
            }
        return (area, pieces);
    }

    private List<long>? Places(StripRun run, Length[] widths)
    {
        var seen = new SortedSet<long> { 0 };
        var open = new Queue<long>(seen);
        while (open.TryDequeue(out var at))
            foreach (var width in widths)
            {
                var next = at + unit.Product.CoverageOf(width).Nanometres;
                if (Done(Length.FromNanometres(next), run) || !seen.Add(next)) continue;
                if (seen.Count > MostPlaces) return null;
                open.Enqueue(next);
            }
        return [.. seen];
    }

    private bool Done(Length at, StripRun run) =>
        at > Length.Zero && at >= run.Size - practice.Tolerance;

    private sealed record Choice(Length Width, Int128 Area, int Pieces);
}
