using PostFrame.CuttingWorker.Planning;
using Xunit;

namespace PostFrame.PlanningTests;

/// <summary>
/// Cuts and branching decide whether listed patterns hold a plan within a cost; complete
/// enumeration says what is true.
/// </summary>
public sealed class GapClosingTests
{
    [Fact]
    public void A_cost_that_some_plan_meets_is_never_called_impossible()
    {
        for (var seed = 0; seed < 300; seed++)
        {
            var (problem, least) = Problem(seed);
            if (Decide(problem, least, out var found))
                Assert.Fail($"seed {seed}: a plan of {least} exists");
            if (found is not null)
                Assert.True(found <= least, $"seed {seed}: found {found}, wanted {least}");
        }
    }

    /// <summary>
    /// Branching is on pieces wanted once; with others it may have to leave the question open.
    /// </summary>
    [Fact]
    public void A_cost_below_every_plan_is_shown_to_be_so_and_no_plan_is_found_for_it()
    {
        var (once, twice) = (0, 0);
        for (var seed = 0; seed < 300; seed++)
        {
            var (problem, least) = Problem(seed);
            var shown = Decide(problem, least - 1, out var found) ? 1 : 0;
            Assert.Null(found);
            (once, twice) = seed % 2 == 0 ? (once + shown, twice) : (once, twice + shown);
        }

        Assert.True(once >= 148 && twice >= 100, $"shown in {once} and {twice} of 150 each");
    }

    /// <summary>Pieces wanted once or twice, three or so to a roll: where fractions mislead.
    /// </summary>
    private static (CuttingProblem Problem, long Least) Problem(int seed)
    {
        var random = new Random(seed);
        var several = seed % 3 == 0;
        var problem = new CuttingProblem
        {
            Items = [.. Enumerable.Range(0, 9).Select(k => new CuttingItem(
                $"{k}", random.Next(12, 45), seed % 2 == 0 ? 1 : random.Next(1, 3)))
                .DistinctBy(i => i.LengthNm)],
            Stock = [.. Enumerable.Range(0, several ? 3 : 1).Select(k => new StockType
            {
                Key = $"s{k}",
                LengthNm = 100 - 17 * k,
                Cost = several ? 100 - 15 * k : 1,
                Count = k == 1 ? 2 : null,
            })],
        };
        return (problem, new BruteForce(problem).LeastCost()!.Value);
    }

    private static bool Decide(CuttingProblem problem, long target, out long? found)
    {
        var instance = Instance.From(
            [.. problem.Items.Select(i => (i.LengthNm, i.Demand))], problem.Stock);
        var meter = new WorkMeter(
            new() { WorkSeconds = 30 }, TestContext.Current.CancellationToken);
        using var closing = new GapClosing(instance, [.. All(instance)], target, 1, meter);
        var none = closing.None(5000);
        found = closing.Found is { } rolls ? Trim.Of(instance, rolls) switch
        {
            { UnmetLength: > 0 } => long.MaxValue,
            var packing => packing.Cost,
        } : null;
        return none;
    }

    /// <summary>Every way to fill every bin, by counting up.</summary>
    private static IEnumerable<Pattern> All(Instance instance)
    {
        for (var b = 0; b < instance.Bins.Length; b++)
        {
            var fillings = Enumerable.Range(0, instance.Items).Aggregate(
                (IEnumerable<int[]>)[[]], (some, i) => some.SelectMany(f =>
                    Enumerable.Range(0, instance.Demand[i] + 1).Select(c => (int[])[.. f, c])))
                .Where(f => f.Select((c, i) => c * instance.Length[i]).Sum()
                    <= instance.Bins[b].Capacity);
            foreach (var filling in fillings)
            {
                var held = Enumerable.Range(0, filling.Length).Where(i => filling[i] > 0).ToArray();
                yield return new Pattern(b, held, [.. held.Select(i => filling[i])]);
            }
        }
    }
}
