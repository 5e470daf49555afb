using PostFrame.CuttingWorker.Planning;
using Xunit;

namespace PostFrame.PlanningTests;

/// <summary>
/// Set-ups at the bench: how many different patterns a plan has, against complete enumeration of
/// all plans with as few rolls.
/// </summary>
public sealed class FewerPatternsTests
{
    /// <summary>
    /// Eight of 3 and eight of 2 fill four rolls of 10: 3 + 3 + 2 + 2 on each (plain arithmetic).
    /// </summary>
    [Fact]
    public void One_pattern_is_cut_where_all_rolls_can_be_alike()
    {
        var plan = Plan(Problem(10, (3, 8), (2, 8)));
        Assert.Equal((4, 1), (plan.RollCount, Patterns(plan)));
    }

    [Fact]
    public void As_few_patterns_as_any_plan_of_as_few_rolls_can_have_or_one_more()
    {
        var (equal, one, all) = (0, 0, 0);
        for (var seed = 0; seed < 400; seed++)
        {
            var random = new Random(seed);
            var roll = random.Next(8, 25);
            var problem = Problem(roll, [.. Enumerable.Range(0, random.Next(2, 6))
                .Select(_ => (random.Next(2, roll), random.Next(1, 7))).DistinctBy(i => i.Item1)]);
            var plan = Plan(problem);
            if (!plan.Proven || plan.RollCount > 9)
                continue;
            var fewest = Fewest(
                [.. problem.Items.Select(i => (int)i.LengthNm)],
                [.. problem.Items.Select(i => i.Demand)], roll, plan.RollCount);
            Assert.InRange(Patterns(plan), fewest, 2 * fewest + 1);
            all++;
            equal += Patterns(plan) == fewest ? 1 : 0;
            one += Patterns(plan) == fewest + 1 ? 1 : 0;
        }

        TestContext.Current.SendDiagnosticMessage($"{equal} + {one} of {all}");
        Assert.True(equal > 0.97 * all && equal + one > 0.99 * all, $"{equal} + {one} of {all}");
    }

    private static CuttingPlan Plan(CuttingProblem problem)
    {
        var plan = CuttingStock
            .Plan(problem, PlanLimits.Default, TestContext.Current.CancellationToken);
        Assert.Empty(PlanCheck.Check(problem, plan));
        return plan;
    }

    private static CuttingProblem Problem(
        int roll, params (int Length, int Demand)[] items) => new()
        {
            Items = [.. items.Select(i => new CuttingItem($"i{i.Length}", i.Length, i.Demand))],
            Stock = [new StockType { Key = "roll", LengthNm = roll, Cost = 1 }],
        };

    private static int Patterns(CuttingPlan plan) => plan.Rolls
        .Select(r => string.Join(
            ' ', r.Cuts.OrderBy(c => c.LengthNm).Select(c => $"{c.Count}x{c.LengthNm}")))
        .Distinct().Count();

    /// <summary>
    /// Fewest different patterns: every pattern there is, in one fixed order, is cut none or more
    /// times, until pieces and rolls are used up.
    /// </summary>
    private static int Fewest(int[] length, int[] demand, int roll, int rolls)
    {
        var patterns = new List<int[]>();
        Fill(0, roll, new int[length.Length]);
        var best = int.MaxValue;
        Try(0, demand, rolls, 0);
        return best;

        void Fill(int from, int room, int[] made)
        {
            if (from == length.Length)
            {
                if (made.Any(n => n > 0))
                    patterns.Add((int[])made.Clone());
                return;
            }

            for (var n = 0; n <= demand[from] && n * length[from] <= room; n++)
            {
                made[from] = n;
                Fill(from + 1, room - n * length[from], made);
            }

            made[from] = 0;
        }

        void Try(int from, int[] left, int rollsLeft, int used)
        {
            if (left.All(n => n == 0))
            {
                best = Math.Min(best, used);
                return;
            }

            var long1 = left.Select((n, i) => n * length[i]).Sum();
            if (rollsLeft * roll < long1 || used + 1 >= best)
                return;
            for (var p = from; p < patterns.Count; p++)
            {
                var rest = (int[])left.Clone();
                for (var times = 1; times <= rollsLeft; times++)
                {
                    for (var i = 0; i < rest.Length; i++)
                        rest[i] -= patterns[p][i];
                    if (rest.Any(n => n < 0))
                        break;
                    Try(p + 1, rest, rollsLeft - times, used + 1);
                }
            }
        }
    }
}
