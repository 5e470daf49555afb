using PostFrame.CuttingWorker.Planning;
using Xunit;

namespace PostFrame.PlanningTests;

/// <summary>What lies on the rack after a plan, before and after its rolls were packed afresh.
/// </summary>
public sealed class PolishTests
{
    /// <summary>
    /// Four pieces of 3, two on a roll of 9 and two on one of 11, leave 3 and 5, both worth keeping
    /// from 3 up. With three on the 11 the 2 left of it would be lost (plain arithmetic).
    /// </summary>
    [Fact]
    public void Length_too_short_for_any_piece_still_counts_as_kept()
    {
        var instance = Instance.From([(3, 4)], [Roll("nine", 9, 1), Roll("eleven", 11, 1)]);
        var found = Packing.Of(
            instance, [(new Pattern(1, [0], [2]), 1), (new Pattern(0, [0], [2]), 1)], [0]);

        Assert.Equal(8, Kept(instance, Polish.Offcuts(instance, found, 3, Work(1)), 3));
    }

    [Fact]
    public void More_work_never_takes_more_rolls_nor_keeps_less_on_as_many()
    {
        var fewer = 0;
        for (var seed = 0; seed < 2_000; seed++)
        {
            var random = new Random(seed);
            var leastNm = random.Next(0, 30);
            var instance = Instance.From(
                [.. Enumerable.Range(0, random.Next(2, 9))
                    .Select(_ => ((long)random.Next(1, 20), random.Next(1, 9)))],
                [.. Enumerable.Range(0, random.Next(1, 9)).Select(
                    k => Roll($"r{k}", random.Next(20, 60), k == 0 ? null : random.Next(1, 5)))]);
            var best = FirstFit.Decreasing(instance);
            foreach (var work in new[] { 1e-4, 3e-4, 1e-3, 3e-3, 0.1 })
            {
                var next = Polish.Offcuts(
                    instance, FirstFit.Decreasing(instance), leastNm, Work(work));
                var (was, now) = (Kept(instance, best, leastNm), Kept(instance, next, leastNm));
                Assert.True(
                    next.RollCount < best.RollCount || next.RollCount == best.RollCount
                    && now >= was, $"seed {seed}, work {work}: {best.RollCount} rolls, {was} "
                    + $"kept; now {next.RollCount}, {now}");
                fewer += next.RollCount < best.RollCount ? 1 : 0;
                best = next;
            }
        }

        Assert.InRange(fewer, 20, 1_900);
    }

    private static StockType Roll(string key, long length, int? count) =>
        new() { Key = key, LengthNm = length, Count = count, Cost = 0 };

    private static WorkMeter Work(double seconds) =>
        new(new() { WorkSeconds = seconds }, TestContext.Current.CancellationToken);

    private static long Kept(Instance instance, Packing packing, long leastNm) => packing.Rolls
        .Select(roll => (roll.Times, Left: instance.Bins[roll.Pattern.Bin].Slack
            + instance.UnitNm * (instance.Bins[roll.Pattern.Bin].Capacity
                - roll.Pattern.Used(instance))))
        .Where(roll => roll.Left >= leastNm).Sum(roll => roll.Times * roll.Left);
}
