using PostFrame.CuttingWorker.Planning;
using Xunit;

namespace PostFrame.PlanningTests;

/// <summary>
/// Who waits longer gets a plan at least as good in all that counts, in the order in which it
/// counts: pieces met, cost, rolls, length kept for the rack, scrap, patterns to set up.
/// </summary>
public sealed class MoreWorkTests
{
    private static readonly double[] Work = [0, 0.003, 0.01, 0.02, 0.05, 0.1, 0.2];

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    /// <summary>
    /// The ranks are reckoned here from the rolls as written, with nothing of the planner's own.
    /// </summary>
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void No_plan_gets_worse_in_anything_that_counts(int block)
    {
        var better = 0;
        for (var seed = block * 25; seed < block * 25 + 25; seed++)
        {
            var problem = Problem(seed);
            double[]? before = null;
            foreach (var work in Work)
            {
                var plan = CuttingStock.Plan(problem, new() { WorkSeconds = work }, Cancel);
                Assert.Empty(PlanCheck.Check(problem, plan));
                var now = Rank(problem, plan);
                var step = before is null ? 0 : Compare(now, before);
                Assert.True(step <= 0, $"seed {seed}, work {work}: {string.Join(" ", before ?? [])}"
                    + $" became {string.Join(" ", now)}");
                (before, better) = (now, better + (step < 0 ? 1 : 0));
            }
        }

        Assert.InRange(better, 15, 25 * Work.Length - 25);
    }

    /// <summary>
    /// Every offcut a bin of its own, and each an item's choice: all that goes over the rack must
    /// be counted, and stop half way.
    /// </summary>
    [Theory]
    [InlineData(0.05, 120)]
    [InlineData(0.2, 120)]
    [InlineData(0.2, 30)]
    public void Two_thousand_different_offcuts_are_planned_within_the_limit(double work, int items)
    {
        const long Inch = 25_400_000;
        var random = new Random(items);
        var problem = new CuttingProblem
        {
            Items = [.. Enumerable.Range(0, items).Select(k => new CuttingItem(
                $"{k}", random.Next(100, 900) * Inch / 2, random.Next(1, 6)))],
            Stock =
            [
                .. Enumerable.Range(0, 2_000).Select(k => random.Next(4_608, 70_400) * Inch / 64)
                    .Select((nm, k) => new StockType
                    {
                        Key = $"offcut {k}", LengthNm = nm, Count = 1, IsRemnant = true,
                        Cost = 1 + nm / 1_000_000_000,
                    }),
                new StockType { Key = "new", LengthNm = 1_200 * Inch, Cost = 30_480 },
            ],
            MinUsefulOffcutNm = 72 * Inch,
        };
        var plan = CuttingStock.Plan(problem, new() { WorkSeconds = work }, Cancel);
        Assert.Empty(PlanCheck.Check(problem, plan));
        Assert.Empty(plan.Unmet);
        Assert.InRange(plan.WorkSeconds, 0, work * 1.2 + 0.01);
    }

    private static double[] Rank(CuttingProblem problem, CuttingPlan plan)
    {
        var length = problem.Items.ToDictionary(i => i.Key, i => i.LengthNm);
        var stock = problem.Stock.ToDictionary(s => s.Key);
        var kept = plan.Rolls.Where(r => r.LeavesOffcut).Sum(r => r.LeftOverNm * r.Times);
        return
        [
            plan.Unmet.Sum(u => length[u.Key] * u.Value), plan.Cost, plan.RollCount, -kept,
            plan.Rolls.Sum(r => r.LeftOverNm * r.Times) - kept,
            plan.Rolls.Select(r => (stock[r.StockKey].UsableNm, stock[r.StockKey].Cost,
                stock[r.StockKey].Lot, string.Join(' ', r.Cuts.GroupBy(c => c.LengthNm)
                    .OrderBy(g => g.Key).Select(g => $"{g.Sum(c => c.Count)}x{g.Key}"))))
                .Distinct().Count(),
        ];
    }

    private static int Compare(double[] now, double[] before)
    {
        var first = Enumerable.Range(0, now.Length).FirstOrDefault(k => now[k] != before[k], -1);
        return first < 0 ? 0 : now[first].CompareTo(before[first]);
    }

    /// <summary>
    /// In turn: one roll length; several; offcuts beside it; offcuts that cost nothing; lots with
    /// planes that must each come from one.
    /// </summary>
    private static CuttingProblem Problem(int seed)
    {
        var random = new Random(seed);
        var (kind, roll) = (seed % 5, random.Next(30, 900));
        long Some(int parts) => random.Next(roll / parts + 1, roll);
        StockType Stock(string key, long length, int? count, long cost, int? lot = null) => new()
        {
            Key = key,
            LengthNm = length,
            Count = count,
            Cost = cost,
            EndTrimNm = seed % 3 == 0 ? length / 60 : 0,
            Lot = lot is null ? null : $"lot {lot}",
            AgeDays = lot ?? 0,
        };
        StockType[] more = kind switch
        {
            1 => [.. Enumerable.Range(0, 3).Select(k => (k, Some(2))).Select(
                r => Stock($"r{r.k}", r.Item2, random.Next(1, 9), r.Item2 + random.Next(3)))],
            2 => [.. Enumerable.Range(0, random.Next(1, 25)).Select(k => (k, Some(8))).Select(
                r => Stock($"o{r.k}", r.Item2, 1, 1 + r.Item2 / 100))],
            3 => [.. Enumerable.Range(0, random.Next(3, 12)).Select(
                k => Stock($"o{k}", Some(4), random.Next(1, 3), 0))],
            4 => [.. Enumerable.Range(0, random.Next(1, 5)).Select(
                k => Stock($"l{k}", roll, random.Next(3, 40), roll, k))],
            _ => [],
        };
        return new CuttingProblem
        {
            Items = [.. Enumerable.Range(0, random.Next(3, 25)).Select(k => new CuttingItem(
                $"{k}", random.Next(roll / 20 + 1, roll * random.Next(3, 9) / 10),
                random.Next(1, 25),
                kind == 4 && random.Next(5) > 0 ? $"plane {random.Next(4)}" : null))],
            Stock = [.. more, Stock("new", roll, null, roll)],
            MinUsefulOffcutNm = roll / random.Next(2, 12),
        };
    }
}
