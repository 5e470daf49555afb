namespace PostFrame.CuttingWorker.Planning;

/// <summary>
/// Which of two plans is better, in the order in which it counts: demand met, cost, rolls, length
/// kept for the rack, scrap, patterns to set up. The lesser is better. Ranks of separate parts add
/// up, and a sum of ranks of which none got worse is no worse.
/// </summary>
internal readonly record struct PlanRank(
    Int128 UnmetNm, Int128 Cost, long Rolls, Int128 KeptNm, Int128 ScrapNm, long Patterns)
    : IComparable<PlanRank>
{
    /// <summary>Of rolls without their keys.</summary>
    public static PlanRank Of(Instance instance, Packing packing, long leastNm)
    {
        var (kept, scrap) = LeftOver(packing.Rolls.Select(r => (
            instance.LeftNm(r.Pattern.Bin, r.Pattern.Room(instance)), r.Times)), leastNm);
        return new PlanRank(
            (Int128)packing.UnmetLength * instance.UnitNm, packing.Cost, packing.RollCount, kept,
            scrap, packing.Rolls.Count);
    }

    /// <summary>Of rolls with their keys: alike are those of one lot that give and cost the same.
    /// </summary>
    public static PlanRank Of(
        CuttingProblem problem, Instance instance, Packing packing,
        IReadOnlyList<PlannedRoll> rolls)
    {
        var stock = problem.Stock.ToDictionary(s => s.Key, StringComparer.Ordinal);
        var patterns = rolls.Select(r => (stock[r.StockKey].UsableNm, stock[r.StockKey].Cost,
            stock[r.StockKey].Lot, Cuts: string.Join(' ', r.Cuts.GroupBy(c => c.LengthNm)
                .OrderBy(g => g.Key).Select(g => $"{g.Sum(c => c.Count)} x {g.Key}"))));
        return Of(instance, packing, problem.MinUsefulOffcutNm) with
        {
            Patterns = patterns.Distinct().Count(),
        };
    }

    public static PlanRank operator +(PlanRank a, PlanRank b) => new(
        a.UnmetNm + b.UnmetNm, a.Cost + b.Cost, a.Rolls + b.Rolls, a.KeptNm + b.KeptNm,
        a.ScrapNm + b.ScrapNm, a.Patterns + b.Patterns);

    public int CompareTo(PlanRank other) =>
        (UnmetNm, Cost, Rolls, -KeptNm, ScrapNm, Patterns).CompareTo((other.UnmetNm, other.Cost,
            other.Rolls, -other.KeptNm, other.ScrapNm, other.Patterns));

    private static (Int128 Kept, Int128 Scrap) LeftOver(
        IEnumerable<(long Nm, int Times)> rolls, long leastNm)
    {
        var (kept, scrap) = (Int128.Zero, Int128.Zero);
        foreach (var (nm, times) in rolls)
        {
            if (nm >= leastNm)
                kept += (Int128)nm * times;
            else
                scrap += (Int128)nm * times;
        }

        return (kept, scrap);
    }
}
