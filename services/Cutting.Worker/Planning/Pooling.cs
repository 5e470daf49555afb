namespace PostFrame.CuttingWorker.Planning;

/// <summary>The foreman's choice: fewer orders open at the bench, or less material.</summary>
public static class Pooling
{
    /// <summary>
    /// For each number of orders open at once: orders are taken in needed-by order, that many at a
    /// time, and planned together; what a group's rolls leave goes to the next group.
    /// </summary>
    /// <param name="orders">All orders of the shift.</param>
    /// <param name="stock">Rolls and remnants.</param>
    /// <param name="minUsefulOffcutNm">Least offcut worth keeping [nm].</param>
    /// <param name="openAtOnce">The numbers to compare, each 1 or more.</param>
    /// <param name="limits">Work allowed for each single plan.</param>
    /// <param name="cancel">Ends each search early.</param>
    public static IReadOnlyList<PoolingChoice> Table(
        IReadOnlyList<BenchOrder> orders, IReadOnlyList<StockType> stock, long minUsefulOffcutNm,
        IReadOnlyList<int> openAtOnce, PlanLimits limits, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(orders);
        ArgumentNullException.ThrowIfNull(openAtOnce);
        var queue = orders.OrderBy(o => o.NeededBy).ThenBy(o => o.Key, StringComparer.Ordinal)
            .ToList();
        CuttingProblem Problem(IEnumerable<BenchOrder> some, IReadOnlyList<StockType> from) => new()
        {
            Items = [.. some.SelectMany(o => o.Items)],
            Stock = from,
            MinUsefulOffcutNm = minUsefulOffcutNm,
        };
        var all = CuttingStock.Plan(Problem(queue, stock), limits, cancel);
        var choices = openAtOnce.Order().Select(w => Choice(
            w, w >= queue.Count ? [all] : Groups(queue, w, stock, Problem, limits, cancel), queue,
            all.LowerBoundCost, minUsefulOffcutNm)).ToList();
        for (var k = 1; k < choices.Count; k++)
        {
            // Who allows more orders open may still keep to fewer.
            if (choices[k - 1].Cost < choices[k].Cost)
                choices[k] = choices[k - 1] with { OpenAtOnce = choices[k].OpenAtOnce };
        }

        return choices;
    }

    private static List<CuttingPlan> Groups(
        List<BenchOrder> queue, int size, IReadOnlyList<StockType> stock,
        Func<IEnumerable<BenchOrder>, IReadOnlyList<StockType>, CuttingProblem> problem,
        PlanLimits limits, CancellationToken cancel)
    {
        var (plans, rack) = (new List<CuttingPlan>(), stock.ToList());
        foreach (var group in queue.Chunk(size))
        {
            var plan = CuttingStock.Plan(problem(group, rack), limits, cancel);
            plans.Add(plan);
            var shortest = queue.SelectMany(o => o.Items).Min(i => i.LengthNm);
            rack = Rack(rack, plan, plans.Count, shortest);
        }

        return plans;
    }

    /// <summary>The stock after a plan: rolls used are gone, what they left has come.</summary>
    private static List<StockType> Rack(
        List<StockType> rack, CuttingPlan plan, int group, long shortest)
    {
        var used = plan.Rolls.GroupBy(r => r.StockKey, StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => g.Sum(r => r.Times), StringComparer.Ordinal);
        var next = rack.Select(s => s with { Count = s.Count - used.GetValueOrDefault(s.Key) })
            .Where(s => s.Count is null or > 0).ToList();
        var left = plan.Rolls.Where(r => r.LeftOverNm >= shortest)
            .GroupBy(r => r.LeftOverNm).Select((g, k) => new StockType
            {
                Key = $"left {group}-{k + 1}",
                LengthNm = g.Key,
                Count = g.Sum(r => r.Times),
                Cost = 0,
                IsRemnant = true,
            });
        next.AddRange(left);
        return next;
    }

    /// <summary>
    /// What came of the rolls bought: pieces, offcuts never used again, and scrap.
    /// </summary>
    private static PoolingChoice Choice(
        int open, List<CuttingPlan> plans, List<BenchOrder> orders, long bound, long minUseful)
    {
        var rolls = plans.SelectMany(p => p.Rolls).ToList();
        var bought = rolls.Where(r => !IsLeft(r.StockKey)).ToList();
        var usable = bought.Sum(r =>
            r.Times * (r.LeftOverNm + r.Cuts.Sum(c => c.LengthNm * c.Count)));
        var (offcuts, kept) = (0, 0L);
        foreach (var useful in rolls.Where(r => r.LeavesOffcut))
            (offcuts, kept) = (offcuts + useful.Times, kept + useful.Times * useful.LeftOverNm);
        foreach (var again in rolls.Where(r => IsLeft(r.StockKey)))
        {
            var whole = again.LeftOverNm + again.Cuts.Sum(c => c.LengthNm * c.Count);
            if (whole < minUseful)
                continue;
            (offcuts, kept) = (offcuts - again.Times, kept - again.Times * whole);
        }

        var pieces = orders.SelectMany(o => o.Items).Sum(i => i.LengthNm * i.Demand);
        return new PoolingChoice
        {
            OpenAtOnce = open,
            Cost = plans.Sum(p => p.Cost),
            Rolls = bought.Sum(r => r.Times),
            ScrapNm = usable - pieces - kept,
            Offcuts = offcuts,
            LowerBoundCost = bound,
        };
    }

    private static bool IsLeft(string stockKey) =>
        stockKey.StartsWith("left ", StringComparison.Ordinal);
}
