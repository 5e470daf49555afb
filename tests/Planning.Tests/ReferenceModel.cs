using Google.OrTools.Sat;
using PostFrame.CuttingWorker.Planning;

namespace PostFrame.PlanningTests;

/// <summary>
/// The textbook assignment model: every roll a variable, every piece count on it another.
/// </summary>
internal static class ReferenceModel
{
    public static long? LeastCost(CuttingProblem problem)
    {
        var model = new CpModel();
        var pieces = problem.Items.Sum(i => i.Demand);
        var rolls = problem.Stock
            .SelectMany(s => Enumerable.Range(0, Math.Min(s.Count ?? pieces, pieces))
            .Select(_ => s))
            .Select(s => (Type: s, Used: model.NewBoolVar(""))).ToList();
        var placed = problem.Items.Select(_ => new List<IntVar>()).ToArray();
        foreach (var (type, used) in rolls)
        {
            var on = problem.Items.Select(i => model.NewIntVar(0, i.Demand, "")).ToArray();
            for (var i = 0; i < on.Length; i++)
                placed[i].Add(on[i]);
            model.Add(LinearExpr.WeightedSum(on, problem.Items.Select(i => i.LengthNm))
                <= (type.LengthNm - type.EndTrimNm) * used);
        }

        for (var i = 0; i < placed.Length; i++)
            model.Add(LinearExpr.Sum(placed[i]) == problem.Items[i].Demand);
        model.Minimize(LinearExpr.WeightedSum(
            rolls.Select(r => r.Used), rolls.Select(r => r.Type.Cost)));
        var solver = new CpSolver
        {
            StringParameters = "num_workers:1 random_seed:1 symmetry_level:0",
        };
        return solver.Solve(model) switch
        {
            CpSolverStatus.Optimal => (long)Math.Round(solver.ObjectiveValue),
            CpSolverStatus.Infeasible => null,
            var status => throw new InvalidOperationException($"Reference ended {status}."),
        };
    }
}
