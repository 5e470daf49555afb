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

    /// <summary>
    /// Counts rolls as a small part of cost, so that the enumeration finds the fewest rolls among
    /// the cheapest plans.
    /// </summary>
    [Fact]
    public void No_cheapest_plan_takes_fewer_rolls_and_remnants_than_the_bound_says()
    {
        var (tight, all) = (0, 0);
        for (var seed = 200_000; seed < 201_000; seed++)
        {
            var problem = RandomProblems.Small(seed);
            var plan = CuttingStock
                .Plan(problem, PlanLimits.Default, TestContext.Current.CancellationToken);
            if (!plan.Proven)
                continue;
            var counted = problem with
            {
                Stock = [.. problem.Stock.Select(s => s with { Cost = s.Cost * 1000 + 1 })],
            };
            var fewest = new BruteForce(counted).LeastCost() - plan.Cost * 1000;
            Assert.True(plan.LowerBoundRolls <= fewest, $"seed {seed}: {fewest}");
            (tight, all) = (tight + (plan.LowerBoundRolls == fewest ? 1 : 0), all + 1);
        }

        Assert.True(tight > all * 0.8, $"equal to the fewest in {tight} of {all}");
    }

    /// <summary>The caller's unit stands at the bound, whichever argument proved it; where one
    /// length is left that pieces fit, rolls are counted.</summary>
    [Fact]
    public void The_reason_states_the_bound_in_the_unit_of_its_cost()
    {
        var stated = 0;
        for (var seed = 300_000; seed < 300_300; seed++)
        {
            var problem = RandomProblems.Small(seed) with { CostText = cost => $"{cost} hl" };
            var plan = CuttingStock
                .Plan(problem, PlanLimits.Default, TestContext.Current.CancellationToken);
            if (plan.RollCount == 0)
                continue;
            Assert.Matches(
                $@"less than {plan.LowerBoundCost} hl|\d rolls\.|fewer than \d",
                plan.Explanation);
            stated += plan.Explanation.Contains(" hl") ? 1 : 0;
        }

        Assert.InRange(stated, 100, 300);
    }

    /// <summary>One roll is no rolls, and what ends in dots has more to tell.</summary>
    [Fact]
    public void The_reason_reads_as_a_sentence_whatever_the_counts()
    {
        var single = 0;
        for (var seed = 400_000; seed < 400_600; seed++)
        {
            var problem = RandomProblems.Small(seed);
            var reason = CuttingStock.Plan(
                problem, PlanLimits.Default, TestContext.Current.CancellationToken).Explanation;
            Assert.DoesNotMatch(@"(^|[^\d,.])1 (\w+ )?(rolls|pieces|patterns)\b|\dths", reason);
            Assert.DoesNotMatch(@"(^|[^\d,.])(0|[2-9]|\d\d+) (\w+ )?(roll|piece)\b", reason);
            Assert.True(!reason.Contains('…') || problem.Items.Count > 4, reason);
            single += reason.Contains(" 1 roll.") ? 1 : 0;
        }

        Assert.InRange(single, 10, 500);
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
