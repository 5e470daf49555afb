using Google.OrTools.LinearSolver;

namespace PostFrame.CuttingWorker.Planning;

/// <summary>
/// Looks for a cheap selection among given patterns with a branch-and-cut solver in floating point:
/// quick at finding, and for that reason never asked to prove anything.
/// </summary>
internal static class Selection
{
    /// <summary>The first node with its cuts takes about as long as so many later ones.</summary>
    private const double RootNodes = 20;

    /// <summary>
    /// The first plan of at most this cost that is met, which is the same however long the search
    /// may take; or nothing, and whether the solver believes there is none.
    /// </summary>
    public static (List<(Pattern Pattern, int Times)> Rolls, bool None) Find(
        Instance instance, IReadOnlyList<Pattern> patterns, long cost, int nodes, int seed,
        WorkMeter meter)
    {
        var nodeWork = patterns.Count * 2e-5;
        var allowed = (int)Math.Min(nodes, (meter.Left / nodeWork) - RootNodes);
        var cut = allowed < nodes;
        if (allowed < 1)
        {
            meter.End();
            return ([], false);
        }

        using var solver = Solver.CreateSolver("SCIP")
            ?? throw new InvalidOperationException("The MIP library did not load.");
        solver.SetSolverSpecificParametersAsString(
            $"limits/totalnodes = {allowed}\n"
                + "limits/solutions = 1\n"
                + $"randomization/randomseedshift = {seed}");
        var times = patterns.Select(_ => solver.MakeIntVar(0, double.PositiveInfinity, ""))
            .ToArray();
        var rows = instance.Demand
            .Select(d => solver.MakeConstraint(d, double.PositiveInfinity)).ToArray();
        var stock = instance.Bins
            .Select(b => solver.MakeConstraint(
                0, b.Count == int.MaxValue ? double.PositiveInfinity : b.Count)).ToArray();
        var scale = Math.Max(1.0, instance.Bins.Max(b => b.Cost));
        var total = solver.MakeConstraint(0, cost / scale + 1e-9);
        for (var p = 0; p < times.Length; p++)
        {
            var pattern = patterns[p];
            for (var k = 0; k < pattern.Item.Length; k++)
                rows[pattern.Item[k]].SetCoefficient(times[p], pattern.Count[k]);
            stock[pattern.Bin].SetCoefficient(times[p], 1);
            total.SetCoefficient(times[p], instance.Bins[pattern.Bin].Cost / scale);
            // With one roll length any selection within the cost will do.
            if (instance.Bins.Length > 1)
                solver.Objective().SetCoefficient(
                    times[p], instance.Bins[pattern.Bin].Cost / scale);
        }

        solver.Objective().SetMinimization();
        using var stop = meter.Cancel.Register(() => solver.InterruptSolve());
        var status = meter.Cancel.IsCancellationRequested
            ? Solver.ResultStatus.NOT_SOLVED
            : solver.Solve();
        meter.Steps((Math.Clamp(solver.Nodes(), 0, allowed) + RootNodes) * nodeWork * 1e9);
        if (cut && status is not (Solver.ResultStatus.OPTIMAL or Solver.ResultStatus.INFEASIBLE))
            meter.End();
        if (status is not (Solver.ResultStatus.OPTIMAL or Solver.ResultStatus.FEASIBLE))
            return ([], status == Solver.ResultStatus.INFEASIBLE);
        return (
            [.. patterns.Select((p, k) => (p, (int)Math.Round(times[k].SolutionValue())))
                .Where(r => r.Item2 > 0)],
            false);
    }
}
