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
        return LotPlanning.Split(problem) is { } lots
            ? PlanLots(problem, lots, limits, cancel)
            : Solve(problem, limits, cancel).Plan;
    }

    /// <summary>
    /// Half the work goes to the problem as if lots could mix, for the bound and for a plan that
    /// happens to hold them; the lots share the other half by the pieces each has to give. Shares
    /// follow from the problem alone, and both ways are always gone, so that more work never gives
    /// less.
    /// </summary>
    private static CuttingPlan PlanLots(
        CuttingProblem problem, List<CuttingProblem> lots, PlanLimits limits,
        CancellationToken cancel)
    {
        PlanLimits Share(double part) => limits with { WorkSeconds = limits.WorkSeconds * part };
        var (mixed, held) = Solve(
            problem, Share(0.5), cancel, rolls => HoldsLots(problem, rolls));
        var pieces = problem.Items.Sum(i => (double)i.Demand);
        var parts = lots.Select(lot => Solve(
            lot, Share(0.5 * lot.Items.Sum(i => i.Demand) / pieces), cancel)).ToList();
        var joined = LotPlanning.Join(
            [.. parts.Select(p => p.Plan)], mixed, (int)LeastRolls(problem));
        var rank = parts.Aggregate(default(PlanRank), (sum, part) => sum + part.Rank!.Value);
        return held is { } whole && whole.CompareTo(rank) <= 0
            ? mixed with { WorkSeconds = joined.WorkSeconds }
            : joined;
    }

    /// <summary>No plan, however dear, takes fewer rolls and remnants.</summary>
    internal static long LeastRolls(CuttingProblem problem) =>
        RollCountBound.Of(Written(problem), [], cost: null);

    /// <summary>
    /// The best plan that holds what is asked beyond the problem, with its rank; where none came
    /// up, the best one, without.
    /// </summary>
    private static (CuttingPlan Plan, PlanRank? Rank) Solve(
        CuttingProblem problem, PlanLimits limits, CancellationToken cancel,
        Func<IReadOnlyList<PlannedRoll>, bool>? holds = null)
    {
        var instance = Written(problem);
        var meter = new WorkMeter(limits, cancel);
        PlanRank? Rank(Packing packing)
        {
            if (holds is null)
                return PlanRank.Of(instance, packing, problem.MinUsefulOffcutNm);
            var written = PlanWriting.Write(problem, instance, packing).Rolls;
            return holds(written) ? PlanRank.Of(problem, instance, packing, written) : null;
        }

        var search = Search.Run(instance, meter, limits.Seed, p => Rank(p) is not null);
        var best = search.Kept is { } kept
            ? Finishing.Of(instance, kept, problem.MinUsefulOffcutNm, Rank, meter)
            : search.Best;
        var (rolls, unmet) = PlanWriting.Write(problem, instance, best);
        var plan = new CuttingPlan
        {
            Rolls = rolls,
            Refusals = [],
            Unmet = unmet,
            RollCount = (int)best.RollCount,
            LowerBoundRolls = (int)Math.Min(search.LeastRolls(best), int.MaxValue),
            Cost = best.Cost,
            LowerBoundCost = search.Bound,
            Proven = unmet.Count == 0 && best.Cost == search.Bound,
            Method = search.Method,
            Explanation = search.Why,
            WorkSeconds = meter.Spent,
        };
        return (plan, Rank(best));
    }

    private static Instance Written(CuttingProblem problem) => Instance.From(
        [.. problem.Items.Select(i => (i.LengthNm, i.Demand))], problem.Stock, problem.CostText);

    private static bool HoldsLots(CuttingProblem problem, IReadOnlyList<PlannedRoll> rolls)
    {
        var group = problem.Items.ToDictionary(i => i.Key, i => i.LotGroup, StringComparer.Ordinal);
        var lot = problem.Stock.ToDictionary(s => s.Key, s => s.Lot, StringComparer.Ordinal);
        return rolls
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
