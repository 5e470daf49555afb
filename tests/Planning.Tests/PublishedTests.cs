using PostFrame.CuttingWorker.Planning;
using Xunit;

namespace PostFrame.PlanningTests;

/// <summary>
/// Published instances with proven optima (BPPLIB, Delorme, Iori and Martello 2018; sources per row
/// in the data's own list). Read where they may not be shipped from.
/// </summary>
public sealed class PublishedTests
{
    [Fact]
    public void No_plan_or_bound_contradicts_a_published_optimum()
    {
        var folder = ReferenceData.Folder("cutting");
        var (tried, proven) = (0, 0);
        foreach (var line in File.ReadLines(Path.Combine(folder, "optima.csv")).Skip(1))
        {
            var cells = line.Split(',');
            if (cells[1] is "ai" or "ani" || tried++ % 4 != 0)
                continue;
            var problem = ReferenceData.OneLength(File.ReadAllText(Path.Combine(folder, cells[0])));
            var plan = CuttingStock.Plan(
                problem, new() { WorkSeconds = 2 }, TestContext.Current.CancellationToken);
            var optimum = long.Parse(cells[5], System.Globalization.CultureInfo.InvariantCulture);
            Assert.Empty(PlanCheck.Check(problem, plan));
            Assert.True(plan.LowerBoundCost <= optimum && optimum <= plan.Cost, cells[0]);
            proven += plan.Proven ? 1 : 0;
        }

        Assert.True(proven > tried / 4 * 0.9, $"only {proven} of {tried / 4} proven");
    }

    /// <summary>
    /// The optimum lies one roll above the rounded-up relaxation, so neither rounding nor any dual
    /// bound alone can prove it.
    /// </summary>
    [Theory]
    [InlineData("bpplib/random/BPP_1000_750_0.1_0.8_0.txt")]
    [InlineData("bpplib/ani/201_2500_NR_0.txt")]
    [InlineData("bpplib/ani/201_2500_NR_40.txt")]
    [InlineData("bpplib/hard28/Hard28_BPP716.txt")]
    public void An_optimum_above_the_rounded_relaxation_is_proven(string file)
    {
        var folder = ReferenceData.Folder("cutting");
        var cells = File.ReadLines(Path.Combine(folder, "optima.csv"))
            .Select(l => l.Split(',')).First(c => c[0] == file);
        var problem = ReferenceData.OneLength(File.ReadAllText(Path.Combine(folder, file)));
        var plan = CuttingStock.Plan(
            problem, new() { WorkSeconds = 20 }, TestContext.Current.CancellationToken);
        Assert.Empty(PlanCheck.Check(problem, plan));
        Assert.Equal((cells[5], true), ($"{plan.LowerBoundCost}", plan.Proven));
        Assert.Equal(cells[5], $"{plan.RollCount}");
    }
}
