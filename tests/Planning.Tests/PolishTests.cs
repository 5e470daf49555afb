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

        var polish = new Polish(instance, found, 3);
        Assert.True(polish.Run(Work(1)));
        Assert.Equal(8, Kept(instance, polish.Packing, 3));
    }

    /// <summary>Stopped again and again, it ends where one run without a stop ends.</summary>
    [Fact]
    public void More_work_never_keeps_less_on_the_same_rolls()
    {
        var more = 0;
        for (var seed = 0; seed < 2_000; seed++)
        {
            var (instance, leastNm) = Random(seed);
            var best = FirstFit.Decreasing(instance);
            var (polish, whole) = (
                new Polish(instance, best, leastNm), new Polish(instance, best, leastNm));
            foreach (var work in new[] { 1e-4, 3e-4, 1e-3, 3e-3, 0.1 })
            {
                polish.Run(Work(work));
                var next = polish.Packing;
                var (was, now) = (Kept(instance, best, leastNm), Kept(instance, next, leastNm));
                Assert.True(
                    next.RollCount == best.RollCount && now >= was, $"seed {seed}, work {work}: "
                    + $"{best.RollCount} rolls, {was} kept; now {next.RollCount}, {now}");
                more += now > was ? 1 : 0;
                best = next;
            }

            whole.Run(Work(1));
            Assert.Equal(Text(whole.Packing), Text(best));
        }

        Assert.InRange(more, 200, 9_000);
    }

    private static (Instance Instance, long LeastNm) Random(int seed)
    {
        var random = new Random(seed);
        var leastNm = random.Next(0, 30);
        return (Instance.From(
            [.. Enumerable.Range(0, random.Next(2, 9))
                .Select(_ => ((long)random.Next(1, 20), random.Next(1, 9)))],
            [.. Enumerable.Range(0, random.Next(1, 9)).Select(
                k => Roll($"r{k}", random.Next(20, 60), k == 0 ? null : random.Next(1, 5)))]),
            leastNm);
    }

    private static string Text(Packing packing) => string.Join(' ', packing.Rolls.Select(
        r => $"{r.Times}x{string.Join(',', r.Pattern.Item.Zip(r.Pattern.Count))}"));

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
