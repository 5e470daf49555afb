namespace PostFrame.CuttingWorker.Planning;

/// <summary>The planner's one entry.</summary>
public static class CuttingStock
{
    private const double FinishingWork = 0.1;

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
    /// follow from the problem alone, so that more work never gives a lot less.
    /// </summary>
    private static CuttingPlan PlanLots(
        CuttingProblem problem, List<CuttingProblem> lots, PlanLimits limits,
        CancellationToken cancel)
    {
        PlanLimits Share(double part) => limits with { WorkSeconds = limits.WorkSeconds * part };
        var whole = Solve(problem, Share(0.5), cancel, rolls => HoldsLots(problem, rolls));
        if (whole is { Holds: true, Plan.Proven: true })
            return whole.Plan;
        var pieces = problem.Items.Sum(i => (double)i.Demand);
        var plans = lots.Select(lot => Solve(
            lot, Share(0.5 * lot.Items.Sum(i => i.Demand) / pieces), cancel).Plan).ToList();
        var leastRolls = RollCountBound.Of(Written(problem), [], cost: null);
        var joined = LotPlanning.Join(plans, whole.Plan, (int)leastRolls);
        return whole.Holds && Rank(problem, whole.Plan).CompareTo(Rank(problem, joined)) <= 0
            ? whole.Plan with { WorkSeconds = joined.WorkSeconds }
            : joined;
    }

    private static (Int128 UnmetNm, long Cost, int Rolls) Rank(
        CuttingProblem problem, CuttingPlan plan)
    {
        var length = problem.Items.ToDictionary(i => i.Key, i => i.LengthNm);
        var unmet = plan.Unmet.Aggregate(
            Int128.Zero, (sum, left) => sum + (Int128)length[left.Key] * left.Value);
        return (unmet, plan.Cost, plan.RollCount);
    }

    /// <summary>
    /// The best plan that holds what is asked beyond the problem; where none came up, the best one.
    /// </summary>
    private static (CuttingPlan Plan, bool Holds) Solve(
        CuttingProblem problem, PlanLimits limits, CancellationToken cancel,
        Func<IReadOnlyList<PlannedRoll>, bool>? holds = null)
    {
        var instance = Written(problem);
        var meter = new WorkMeter(limits, cancel);
        bool Keeps(Packing packing) =>
            holds?.Invoke(PlanWriting.Write(problem, instance, packing).Rolls) ?? true;
        var search = Search.Run(instance, meter, limits.Seed, Keeps);
        var best = search.Kept ?? search.Best;
        if (holds is null || search.Kept is not null)
        {
            var finished = Finished(instance, best, problem.MinUsefulOffcutNm, meter);
            if (Keeps(finished))
                best = finished;
        }

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
        return (plan, search.Kept is not null);
    }

    /// <summary>
    /// The same rolls with more worth keeping left on them, then with fewer patterns to set up.
    /// </summary>
    private static Packing Finished(
        Instance instance, Packing found, long minUsefulNm, WorkMeter meter)
    {
        var polishing = meter.Another(FinishingWork);
        var polished = Polish.Offcuts(instance, found, minUsefulNm, polishing);
        var lessening = meter.Another(FinishingWork);
        var fewer = FewerPatterns.Of(instance, polished, minUsefulNm, lessening);
        meter.Steps((polishing.Spent + lessening.Spent) * 1e9);
        return fewer;
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
