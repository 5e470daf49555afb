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
}
