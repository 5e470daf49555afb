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
        var packing = FirstFit.Decreasing(instance);
        var bound = MaterialBound(instance);
        var (rolls, unmet) = PlanWriting.Write(problem, instance, packing);
        return new CuttingPlan
        {
            Rolls = rolls,
            Refusals = [],
            Unmet = unmet,
            RollCount = (int)packing.RollCount,
            LowerBoundRolls = bound,
            Cost = packing.Cost,
            LowerBoundCost = bound * instance.Bins.Select(b => b.Cost).DefaultIfEmpty(0).Min(),
            Proven = unmet.Count == 0
                && packing.Cost == bound * instance.Bins.Select(b => b.Cost).DefaultIfEmpty(0).Min(),
            Method = "first-fit decreasing",
            Explanation = "Total length over the longest roll, rounded up.",
            WorkSeconds = 0,
        };
    }

    private static int MaterialBound(Instance instance)
    {
        if (instance.Items == 0)
            return 0;
        var total = Int128.Zero;
        for (var i = 0; i < instance.Items; i++)
            total += (Int128)instance.Length[i] * instance.Demand[i];
        var longest = instance.Bins.Max(b => b.Capacity);
        return (int)((total + longest - 1) / longest);
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
