namespace PostFrame.CuttingWorker.Planning;

/// <summary>The planner's one entry.</summary>
public static class CuttingStock
{
    /// <summary>
    /// Plans the cutting of <paramref name="problem"/> from its stock at the least total cost, with
    /// a lower bound on the cost of any plan.
    /// </summary>
    /// <remarks>
    /// Impossible input is answered with every refusal and no rolls. Cancelling ends the search
    /// early: the best plan so far is returned. Equal input and limits give an equal plan.
    /// </remarks>
    public static CuttingPlan Plan(
        CuttingProblem problem, PlanLimits limits, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(problem);
        ArgumentNullException.ThrowIfNull(limits);
        var refusals = ProblemCheck.Refusals(problem);
        if (refusals.Count > 0)
            return Refused(refusals);
        var meter = new WorkMeter(limits, cancel);
        var whole = Solve(problem, meter, limits.Seed);
        if (LotPlanning.Split(problem) is not { } lots || HoldsLots(problem, whole))
            return whole;
        var plans = lots.Select(l => Solve(l, new WorkMeter(limits, cancel), limits.Seed)).ToList();
        var leastRolls = RollCountBound.Of(Written(problem), [], cost: null);
        return LotPlanning.Join(plans, whole.LowerBoundCost, (int)leastRolls);
    }

    private static CuttingPlan Solve(CuttingProblem problem, WorkMeter meter, int seed)
    {
        var instance = Written(problem);
        var search = Search.Run(instance, problem.MinUsefulOffcutNm, meter, seed);
        var best = search.Best;
        var (rolls, unmet) = PlanWriting.Write(problem, instance, best);
        return new CuttingPlan
        {
            Rolls = rolls,
            Refusals = [],
            Unmet = unmet,
            RollCount = (int)best.RollCount,
            LowerBoundRolls = (int)Math.Min(search.LeastRolls, int.MaxValue),
            Cost = best.Cost,
            LowerBoundCost = search.Bound,
            Proven = unmet.Count == 0 && best.Cost == search.Bound,
            Method = search.Method,
            Explanation = search.Why,
            WorkSeconds = meter.Spent,
        };
    }

    private static Instance Written(CuttingProblem problem) => Instance.From(
        [.. problem.Items.Select(i => (i.LengthNm, i.Demand))], problem.Stock);

    private static bool HoldsLots(CuttingProblem problem, CuttingPlan plan)
    {
        var group = problem.Items.ToDictionary(i => i.Key, i => i.LotGroup, StringComparer.Ordinal);
        var lot = problem.Stock.ToDictionary(s => s.Key, s => s.Lot, StringComparer.Ordinal);
        return plan.Rolls
            .SelectMany(r => r.Cuts.Select(c => (Group: group[c.ItemKey], Lot: lot[r.StockKey])))
            .Where(g => g.Group is not null).Distinct().GroupBy(g => g.Group)
            .All(g => g.Count() == 1);
    }

    private static CuttingPlan Refused(List<PlanRefusal> refusals) => new()
    {
        Rolls = [],
        Refusals = refusals,
        Unmet = [],
        RollCount = 0,
        LowerBoundRolls = 0,
        Cost = 0,
        LowerBoundCost = 0,
        Proven = false,
        Method = "refused",
        Explanation = string.Join(" ", refusals.Select(r => r.Text)),
        WorkSeconds = 0,
    };
}
