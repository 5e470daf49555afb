using System.Text.Json;
using PostFrame.CuttingWorker.Planning;
using Xunit;

namespace PostFrame.PlanningTests;

/// <summary>Many lots on the rack and planes that must each come from one.</summary>
public sealed class LotTests
{
    private const long Inch = 25_400_000;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    /// <summary>A fifth more may go to finishing; every lot takes its first step to the end.
    /// </summary>
    [Theory]
    [InlineData(0.5)]
    [InlineData(1)]
    public void All_lots_together_are_planned_within_one_work_limit(double work)
    {
        var problem = Rack(seed: 1, lots: 20, rolls: 20, planes: 100, lengths: 25);
        var plan = CuttingStock.Plan(problem, new() { WorkSeconds = work }, Cancel);
        Assert.Empty(PlanCheck.Check(problem, plan));
        Assert.Empty(plan.Unmet);
        Assert.InRange(plan.WorkSeconds, 0, work * 1.4);
    }

    /// <summary>
    /// Thousands of patterns for each lot: the solver's preparations alone can cost more than its
    /// share.
    /// </summary>
    [Theory]
    [InlineData(4)]
    [InlineData(12)]
    public void Lots_with_thousands_of_patterns_keep_to_the_limit_too(int lots)
    {
        (long Length, int Demand)[] lot =
        [
            (303, 5), (195, 18), (180, 2), (150, 6), (141, 4), (111, 3), (96, 2), (93,
            3), (90, 10), (81, 18), (75, 1), (66, 2), (63, 5), (60, 3), (48, 4), (45,
            8), (39, 10), (36, 2), (33, 3), (12, 2), (9, 2), (1, 4),
        ];
        var problem = new CuttingProblem
        {
            Items = [.. Enumerable.Range(0, lots).SelectMany(l => lot.Select(i =>
                new CuttingItem($"{l}-{i.Length}", i.Length, i.Demand, $"plane {l}")))],
            Stock = [.. Enumerable.Range(0, lots).SelectMany(l => new StockType[]
            {
                new() { Key = $"{l} a", LengthNm = 327, Cost = 327, Count = 60, Lot = $"{l}" },
                new() { Key = $"{l} b", LengthNm = 161, Cost = 162, Count = 5, Lot = $"{l}" },
                new() { Key = $"{l} c", LengthNm = 116, Cost = 0, Count = 4, Lot = $"{l}" },
            })],
        };
        var plan = CuttingStock.Plan(problem, new() { WorkSeconds = 0.5 }, Cancel);
        Assert.Empty(PlanCheck.Check(problem, plan));
        Assert.InRange(plan.WorkSeconds, 0, 0.5 * 1.4);
    }

    [Fact]
    public void More_work_never_gives_a_worse_plan_of_lots_and_equal_work_an_equal_one()
    {
        var mixed = 0;
        for (var seed = 0; seed < 20; seed++)
        {
            var problem = Rack(
                seed, lots: 1 + seed % 4, rolls: 3 + 2 * (seed % 7), planes: 2 + seed % 5,
                lengths: 6);
            var cost = long.MaxValue;
            foreach (var work in new[] { 0, 0.002, 0.02, 0.1 })
            {
                PlanLimits limits = new() { WorkSeconds = work };
                var plan = CuttingStock.Plan(problem, limits, Cancel);
                Assert.Empty(PlanCheck.Check(problem, plan));
                Assert.True(plan.Cost <= cost, $"seed {seed}, work {work}: {plan.Cost}, {cost}");
                Assert.Equal(
                    JsonSerializer.Serialize(plan.Rolls),
                    JsonSerializer.Serialize(CuttingStock.Plan(problem, limits, Cancel).Rolls));
                cost = plan.Cost;
                mixed += plan.Method.StartsWith("one lot", StringComparison.Ordinal) ? 0 : 1;
            }
        }

        Assert.InRange(mixed, 10, 70);
    }

    private static CuttingProblem Rack(
        int seed, int lots, int rolls, int planes, int lengths)
    {
        var random = new Random(seed);
        return new CuttingProblem
        {
            Items = [.. Enumerable.Range(0, planes).SelectMany(p => Enumerable.Range(0, lengths)
                .Select(k => new CuttingItem(
                    $"{p}-{k}", random.Next(220, 1100) * Inch / 2, random.Next(1, 3),
                    $"plane {p}")))],
            Stock =
            [
                .. Enumerable.Range(0, 2 * lots).Select(k => new StockType
                {
                    Key = $"roll {k}",
                    LengthNm = (k % 2 == 0 ? 750 : 1200) * Inch,
                    EndTrimNm = 6 * Inch,
                    Count = rolls,
                    Cost = k % 2 == 0 ? 19_050 : 30_480,
                    Lot = $"L-{k / 2}",
                    AgeDays = lots - k / 2,
                }),
                new StockType
                {
                    Key = "new", LengthNm = 1200 * Inch, EndTrimNm = 6 * Inch, Cost = 30_480,
                },
            ],
            MinUsefulOffcutNm = 72 * Inch,
        };
    }
}
