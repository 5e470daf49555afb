using PostFrame.CuttingWorker.Planning;
using Xunit;

namespace PostFrame.PlanningTests;

/// <summary>No input makes the planner loop, overflow or return a plan the check refuses.</summary>
public sealed class FuzzTests
{
    private static readonly long[] Lengths =
        [1, 2, 3, 7, 100, 99_991, 25_400_000, 30_480_000_000, CuttingProblem.LongestNm - 1,
            CuttingProblem.LongestNm, 0, -1, long.MaxValue, long.MinValue];

    private static readonly int[] Counts = [0, 1, 2, 3, 50, 10_000, 9_999_999, -1, int.MaxValue];

    private static readonly long[] Costs = [0, 1, 2, 1000, 999_983, 1_000_000_000_000, -1,
        long.MaxValue];

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void Any_problem_is_refused_with_reasons_or_planned_so_that_the_check_agrees(int block)
    {
        for (var seed = block * 500; seed < block * 500 + 500; seed++)
        {
            var problem = Wild(new Random(seed));
            var plan = CuttingStock.Plan(
                problem, new() { WorkSeconds = 0.02 }, TestContext.Current.CancellationToken);
            if (plan.Refusals.Count > 0)
                continue;
            var faults = PlanCheck.Check(problem, plan);
            Assert.True(faults.Count == 0, $"seed {seed}: {faults.FirstOrDefault()?.Text}");
        }
    }

    /// <summary>
    /// Mostly good values with odd ones among them, so that both ends are reached.
    /// </summary>
    private static CuttingProblem Wild(Random random)
    {
        var scale = Lengths[random.Next(8)];
        long Length() => random.Next(12) == 0
            ? Lengths[random.Next(Lengths.Length)]
            : Math.Max(1, scale / random.Next(1, 30));
        return new CuttingProblem
        {
            Items = [.. Enumerable.Range(0, random.Next(0, 25)).Select(k => new CuttingItem(
                random.Next(60) == 0 ? "twin" : $"i{k}", Length(),
                random.Next(8) == 0 ? Counts[random.Next(Counts.Length)] : random.Next(0, 30)))],
            Stock = [.. Enumerable.Range(0, random.Next(0, 6)).Select(k => new StockType
            {
                Key = $"s{k}",
                LengthNm = random.Next(12) == 0 ? Length() : scale,
                EndTrimNm = random.Next(4) == 0 ? scale / 50 : 0,
                Count = random.Next(3) > 0 ? null : Counts[random.Next(Counts.Length - 2)],
                Cost = Costs[random.Next(random.Next(9) == 0 ? Costs.Length : 6)],
                Lot = random.Next(5) == 0 ? "lot" : null,
            })],
            MinUsefulOffcutNm = scale / random.Next(1, 9),
        };
    }
}
