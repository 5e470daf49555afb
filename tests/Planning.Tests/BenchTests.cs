using PostFrame.CuttingWorker.Planning;
using Xunit;

namespace PostFrame.PlanningTests;

public sealed class BenchTests
{
    [Fact]
    public void Most_open_equals_the_least_over_all_sequences_of_small_benches()
    {
        for (var seed = 0; seed < 400; seed++)
        {
            var random = new Random(seed);
            var rolls = Enumerable.Range(0, random.Next(1, 7)).Select(_ =>
                (IReadOnlyCollection<string>)[.. Enumerable.Range(0, random.Next(1, 4))
                    .Select(_ => $"{random.Next(0, 6)}").Distinct()]).ToList();
            var found = Bench.Sequence(rolls, PlanLimits.Default,
                TestContext.Current.CancellationToken);
            var least = Orders(rolls.Count).Min(o => Open(rolls, o));
            Assert.True(found.Proven && found.MostOpen == least
                && Open(rolls, found.Rolls) == least,
                $"seed {seed}: {found.MostOpen} found, bound {found.LowerBound}, least {least}");
        }
    }

    /// <summary>2005 Constraint Modelling Challenge instances; optima re-proven when the list was
    /// made.</summary>
    [Fact]
    public void Published_open_stacks_optima_are_found_and_proven()
    {
        var folder = ReferenceData.Folder("cutting");
        foreach (var line in File.ReadLines(Path.Combine(folder, "openstacks_optima.csv")).Skip(1))
        {
            var cells = line.Split(',');
            var rolls = ReferenceData.OpenStacks(File.ReadAllText(Path.Combine(folder, cells[0])));
            var found = Bench.Sequence(
                rolls, new() { WorkSeconds = 30 }, TestContext.Current.CancellationToken);
            Assert.Equal((cells[3], true), ($"{found.MostOpen}", found.Proven));
            Assert.Equal(found.MostOpen, Open(rolls, found.Rolls));
        }
    }

    [Fact]
    public void Orders_finish_in_needed_by_order_when_the_foreman_asks_for_that()
    {
        List<IReadOnlyCollection<string>> rolls = [["b", "c"], ["a", "c"], ["a"], ["b"]];
        var sequence = Bench.InOrder(rolls, ["a", "b", "c"]);
        Assert.Equal([1, 2, 0, 3], sequence.Rolls);
        Assert.Equal(2, Open(rolls, sequence.Rolls));
    }

    /// <summary>
    /// Own count: after each roll, the orders begun and not yet finished before it.
    /// </summary>
    private static int Open(IReadOnlyList<IReadOnlyCollection<string>> rolls,
        IReadOnlyList<int> order) =>
        Enumerable.Range(0, order.Count).Max(at => rolls.SelectMany(r => r).Distinct().Count(name =>
            order.Take(at + 1).Any(r => rolls[r].Contains(name))
            && order.Skip(at).Any(r => rolls[r].Contains(name))));

    private static IEnumerable<int[]> Orders(int count) => count == 0
        ? [[]]
        : Orders(count - 1).SelectMany(o => Enumerable.Range(0, count)
            .Select(at => (int[])[.. o.Take(at), count - 1, .. o.Skip(at)]));
}
