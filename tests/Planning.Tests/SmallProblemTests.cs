using PostFrame.CuttingWorker.Planning;
using Xunit;

namespace PostFrame.PlanningTests;

/// <summary>
/// Thousands of small problems, of one and several roll lengths, remnants, counts, costs and trims,
/// against complete enumeration and against CP-SAT on a model with nothing of the planner's in it.
/// </summary>
public sealed class SmallProblemTests
{
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void Cost_equals_the_least_of_all_plans_tried_one_by_one(int block)
    {
        for (var seed = block * 1000; seed < block * 1000 + 1000; seed++)
        {
            var problem = RandomProblems.Small(seed);
            var plan = CuttingStock
                .Plan(problem, PlanLimits.Default, TestContext.Current.CancellationToken);
            Judge(seed, problem, plan, new BruteForce(problem).LeastCost());
        }
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void Cost_equals_the_optimum_of_an_independent_model(int block)
    {
        for (var seed = 100_000 + block * 300; seed < 100_300 + block * 300; seed++)
        {
            var problem = RandomProblems.Small(seed);
            var plan = CuttingStock
                .Plan(problem, PlanLimits.Default, TestContext.Current.CancellationToken);
            Judge(seed, problem, plan, ReferenceModel.LeastCost(problem));
        }
    }

    private static void Judge(int seed, CuttingProblem problem, CuttingPlan plan, long? least)
    {
        var faults = PlanCheck.Check(problem, plan);
        Assert.True(faults.Count == 0, $"seed {seed}: {faults.FirstOrDefault()?.Text}");
        if (plan.Refusals.Count > 0)
        {
            Assert.True(least is null, $"seed {seed}: refused, yet a plan of cost {least} exists");
            return;
        }

        if (least is null)
        {
            Assert.True(plan.Unmet.Count > 0,
                $"seed {seed}: no plan meets the demand, one is claimed");
            Assert.False(plan.Proven, $"seed {seed}");
            return;
        }

        Assert.True(plan.Unmet.Count == 0, $"seed {seed}: demand can be met at {least}");
        Assert.True(plan.Cost == least && plan.Proven,
            $"seed {seed}: cost {plan.Cost}, bound {plan.LowerBoundCost}, optimum {least}");
    }
}
