namespace PostFrame.CuttingWorker.Planning;

/// <summary>
/// Gives every group of pieces that must match in colour one lot, before anything is planned: the
/// largest group first, to the oldest lot whose rolls still hold it. Each lot is then planned
/// alone.
/// </summary>
internal static class LotPlanning
{
    /// <summary>The problem split by lot; null when lots do not matter in it.</summary>
    public static List<CuttingProblem>? Split(CuttingProblem problem)
    {
        var lots = problem.Stock
            .GroupBy(s => s.Lot is null ? "" : $"lot {s.Lot}", StringComparer.Ordinal)
            .OrderByDescending(g => g.Max(s => s.AgeDays))
            .ThenBy(g => g.Key, StringComparer.Ordinal)
            .Select(g => g.ToList()).ToList();
        if (lots.Count < 2 || problem.Items.All(i => i.LotGroup is null))
            return null;
        var given = lots.Select(_ => new List<CuttingItem>()).ToList();
        var groups = problem.Items.Where(i => i.Demand > 0)
            .GroupBy(i => i.LotGroup is null ? $"item {i.Key}" : $"group {i.LotGroup}",
                StringComparer.Ordinal)
            .OrderByDescending(g => g.First().LotGroup is not null)
            .ThenByDescending(g => g.Sum(i => (double)i.LengthNm * i.Demand))
            .ThenBy(g => g.Key, StringComparer.Ordinal);
        foreach (var group in groups)
        {
            var at = Enumerable.Range(0, lots.Count)
                .FirstOrDefault(l => Holds(lots[l], [.. given[l], .. group]), -1);
            given[at < 0 ? Fallback(lots, group) : at].AddRange(group);
        }

        return [.. lots.Select((stock, l) => problem with { Items = given[l], Stock = stock })];
    }

    /// <summary>
    /// One plan out of the lots' plans; its bound is that of the plan as if lots could mix.
    /// </summary>
    public static CuttingPlan Join(List<CuttingPlan> plans, CuttingPlan mixed, int boundRolls)
    {
        var (cost, bound) = (plans.Sum(p => p.Cost), mixed.LowerBoundCost);
        var unmet = plans.SelectMany(p => p.Unmet).ToList();
        return plans[0] with
        {
            Rolls = [.. plans.SelectMany(p => p.Rolls)],
            Unmet = unmet,
            RollCount = plans.Sum(p => p.RollCount),
            LowerBoundRolls = boundRolls,
            Cost = cost,
            LowerBoundCost = bound,
            Proven = unmet.Count == 0 && cost == bound,
            Method = "one lot for each group; " + plans.MaxBy(p => p.RollCount)!.Method,
            Explanation = "Were lots free to mix: " + mixed.Explanation,
            WorkSeconds = mixed.WorkSeconds + plans.Sum(p => p.WorkSeconds),
        };
    }

    /// <summary>The lot that can hold the group's longest piece and has most length.</summary>
    private static int Fallback(List<List<StockType>> lots, IEnumerable<CuttingItem> group)
    {
        var longest = group.Max(i => i.LengthNm);
        return Enumerable.Range(0, lots.Count)
            .OrderByDescending(l =>
                lots[l].Any(s => s.Count is null or > 0 && s.UsableNm >= longest))
            .ThenByDescending(l => lots[l].Sum(s => (double)s.UsableNm * (s.Count ?? 1e6))).First();
    }

    private static bool Holds(List<StockType> stock, List<CuttingItem> items)
    {
        var longest = items.Max(i => i.LengthNm);
        var rolls = stock.Where(s => s.Count is null or > 0).ToList();
        if (rolls.Any(s => s.Count is null && s.UsableNm >= longest))
            return true;
        var wanted = items.Sum(i => (double)i.LengthNm * i.Demand);
        return longest <= rolls.Select(s => s.UsableNm).DefaultIfEmpty(0).Max()
            && wanted <= rolls.Sum(s => (double)s.UsableNm * (s.Count ?? 1e18))
            && FirstFit.Decreasing(Instance.From(
                [.. items.Select(i => (i.LengthNm, i.Demand))], rolls)).UnmetLength == 0;
    }
}
