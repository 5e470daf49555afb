namespace PostFrame.CuttingWorker.Planning;

/// <summary>The planner's one entry.</summary>
public static class CuttingStock
{
    /// <summary>
    /// Plans the cutting of <paramref name="problem"/> from its stock at the least total cost, with a
    /// lower bound on the cost of any plan.
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
        var instance = Instance.From(
            [.. problem.Items.Select(i => (i.LengthNm, i.Demand))], problem.Stock);
        var meter = new WorkMeter(limits, cancel);
        var search = Search.Run(instance, meter, limits.Seed);
        var (rolls, unmet) = PlanWriting.Write(problem, instance, search.Best);
        var cheapest = instance.Bins.Select(b => b.Cost).DefaultIfEmpty(0).Max();
        var proven = unmet.Count == 0 && search.Best.Cost == search.Bound;
        return new CuttingPlan
        {
            Rolls = rolls,
            Refusals = [],
            Unmet = unmet,
            RollCount = (int)search.Best.RollCount,
            LowerBoundRolls = cheapest == 0 ? 0 : (int)((search.Bound + cheapest - 1) / cheapest),
            Cost = search.Best.Cost,
            LowerBoundCost = search.Bound,
            Proven = proven,
            Method = search.Method,
            Explanation = search.Why,
            WorkSeconds = meter.Spent,
        };
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
