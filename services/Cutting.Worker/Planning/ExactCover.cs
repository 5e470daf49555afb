using Google.OrTools.Sat;

namespace PostFrame.CuttingWorker.Planning;

/// <summary>
/// Decides whether the listed patterns hold a plan within a cost, and looks for the cheapest, with
/// CP-SAT, whose answers rest on whole-number arithmetic alone.
/// </summary>
internal static class ExactCover
{
    public enum Outcome
    {
        Open,
        Impossible,
        Found,
    }

    /// <summary>
    /// What is decided, and every plan met on the way, from the first to the cheapest. Whoever
    /// stops later has met the same plans before: none of them is forgotten.
    /// </summary>
    public static (Outcome Outcome, List<List<(Pattern, int)>> Plans) Within(
        Instance instance, IReadOnlyList<Pattern> patterns, long cost, long bound, double work,
        int seed, WorkMeter meter)
    {
        var model = new CpModel();
        var times = patterns.Select((p, k) => model.NewIntVar(0, Most(instance, p), $"{k}"))
            .ToArray();
        var uses = new List<(IntVar, int)>[instance.Items];
        for (var i = 0; i < uses.Length; i++)
            uses[i] = [];
        for (var k = 0; k < times.Length; k++)
        {
            for (var e = 0; e < patterns[k].Item.Length; e++)
                uses[patterns[k].Item[e]].Add((times[k], patterns[k].Count[e]));
        }

        for (var i = 0; i < uses.Length; i++)
        {
            var cut = LinearExpr.WeightedSum(
                uses[i].Select(u => u.Item1), uses[i].Select(u => u.Item2));
            model.Add(cut >= instance.Demand[i]);
        }

        for (var b = 0; b < instance.Bins.Length; b++)
        {
            if (instance.Bins[b].Count != int.MaxValue)
                model.Add(LinearExpr.Sum(times.Where((_, k) => patterns[k].Bin == b))
                    <= instance.Bins[b].Count);
        }

        var total = LinearExpr.WeightedSum(times, patterns.Select(p => instance.Bins[p.Bin].Cost));
        model.AddLinearConstraint(total, bound, cost);
        if (bound < cost)
            model.Minimize(total);
        var limit = Math.Min(work, meter.Left);
        // Breaking symmetries before the search, release 9.15 ends the whole process on some models
        // (a failed check in its own code, VarToConstraints(var).empty()), so it does not look.
        // What it looks for in columns that many rows share counts a whole work second on models of
        // some ten thousand patterns, before the search that is to be done within far less.
        var solver = new CpSolver
        {
            StringParameters = $"num_workers:1 random_seed:{seed} cp_model_presolve:true "
                + FormattableString.Invariant($"max_deterministic_time:{limit:F3} ")
                + "linearization_level:2 symmetry_level:0 find_big_linear_overlap:false",
        };
        using var met = new Met(patterns, times);
        using var stop = meter.Cancel.Register(solver.StopSearch);
        var status = meter.Cancel.IsCancellationRequested
            ? CpSolverStatus.Unknown
            : solver.Solve(model, met);
        meter.Steps(1e9 * (solver.Response?.DeterministicTime ?? 0) + 1e6);
        if (limit < work && status is not (CpSolverStatus.Infeasible or CpSolverStatus.Optimal))
            meter.End();
        return status switch
        {
            CpSolverStatus.Infeasible => (Outcome.Impossible, []),
            CpSolverStatus.Feasible or CpSolverStatus.Optimal => (Outcome.Found, met.Plans),
            _ => (Outcome.Open, []),
        };
    }

    private sealed class Met(IReadOnlyList<Pattern> patterns, IntVar[] times)
        : CpSolverSolutionCallback
    {
        public List<List<(Pattern, int)>> Plans { get; } = [];

        public override void OnSolutionCallback() => Plans.Add(
            [.. patterns.Select((p, k) => (p, (int)Value(times[k]))).Where(r => r.Item2 > 0)]);
    }

    private static int Most(Instance instance, Pattern pattern)
    {
        var most = instance.Bins[pattern.Bin].Count;
        var needed = 0;
        for (var k = 0; k < pattern.Item.Length; k++)
            needed = Math.Max(needed,
                (instance.Demand[pattern.Item[k]] + pattern.Count[k] - 1) / pattern.Count[k]);
        return Math.Min(most, needed);
    }
}
