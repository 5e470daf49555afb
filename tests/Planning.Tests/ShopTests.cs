using PostFrame.CuttingWorker.Planning;
using PostFrame.CuttingWorker.Plans;
using Xunit;

namespace PostFrame.PlanningTests;

/// <summary>What a shop asks beyond the fewest rolls.</summary>
public sealed class ShopTests
{
    private static readonly PlanLimits Limits = new() { WorkSeconds = 1 };

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public void Left_over_gathers_into_an_offcut_worth_keeping()
    {
        var problem = Problem([("a", 30, 4), ("b", 20, 2)],
            new StockType { Key = "r", LengthNm = 100 })
            with
        { MinUsefulOffcutNm = 40 };
        var plan = CuttingStock.Plan(problem, Limits, Cancel);
        Assert.Empty(PlanCheck.Check(problem, plan));
        Assert.Equal((2, 1), (plan.RollCount, plan.Rolls.Count(r => r.LeavesOffcut)));
    }

    /// <summary>
    /// 6,560 to cut on rolls of 100: 66 rolls and 40 left, which one roll of 35 + 25 leaves in one
    /// place; longest first leaves 5 and 35 on two (worked by hand).
    /// </summary>
    [Fact]
    public void Left_over_gathers_in_a_long_plan_too()
    {
        var problem = Problem([("a", 50, 128), ("b", 35, 2), ("c", 25, 2), ("d", 20, 2)],
            new StockType { Key = "r", LengthNm = 100 })
            with
        { MinUsefulOffcutNm = 40 };
        var plan = CuttingStock.Plan(problem, Limits, Cancel);
        Assert.Empty(PlanCheck.Check(problem, plan));
        Assert.Equal(
            (66, 1), (plan.RollCount, plan.Rolls.Where(r => r.LeavesOffcut).Sum(r => r.Times)));
    }

    /// <summary>Worked by hand: 60 and 58 + 2 leave 40 each.</summary>
    [Fact]
    public void Offcuts_are_of_one_length_where_that_costs_nothing()
    {
        var problem = Problem([("a", 60, 1), ("b", 58, 1), ("c", 2, 1)],
            new StockType { Key = "r", LengthNm = 100 })
            with
        { MinUsefulOffcutNm = 30 };
        var plan = CuttingStock.Plan(problem, Limits, Cancel);
        Assert.Empty(PlanCheck.Check(problem, plan));
        Assert.Equal([40L, 40], plan.Rolls
            .SelectMany(r => Enumerable.Repeat(r.LeftOverNm, r.Times)));
    }

    [Fact]
    public void Pieces_of_one_plane_come_from_one_lot()
    {
        for (var seed = 0; seed < 200; seed++)
        {
            var random = new Random(seed);
            var problem = new CuttingProblem
            {
                Items = [.. Enumerable.Range(0, 8).Select(k => new CuttingItem(
                    $"{k}", random.Next(10, 60), random.Next(1, 4), k < 6 ? $"plane {k % 3}"
                        : null))],
                Stock = [.. Enumerable.Range(0, 3).Select(k => new StockType
                {
                    Key = $"s{k}", LengthNm = 100, Count = k == 0 ? 4 : 9, Lot = $"lot {k}",
                        AgeDays = 9 - k,
                })],
            };
            var plan = CuttingStock.Plan(problem, new() { WorkSeconds = 0.05 }, Cancel);
            Assert.Empty(PlanCheck.Check(problem, plan));
            Assert.Empty(plan.Unmet);
        }
    }

    [Fact]
    public void No_piece_is_cut_over_a_factory_splice()
    {
        var roll = new StockType { Key = "r", LengthNm = 100, EndTrimNm = 5, Cost = 10 };
        var parts = Flaws.SoundParts(roll, [(40, 2), (90, 1)]);
        Assert.Equal([40, 48, 9], parts.Select(p => p.LengthNm));
        Assert.Equal([35, 48, 9], parts.Select(p => p.UsableNm));
        Assert.Equal(10, parts.Sum(p => p.Cost));
        Assert.Throws<ArgumentException>(() => Flaws.SoundParts(roll, [(40, 2), (41, 1)]));
    }

    [Fact]
    public void Planning_more_orders_together_never_goes_below_the_bound_and_all_together_meets_it()
    {
        var random = new Random(5);
        var orders = Enumerable.Range(0, 12).Select(o => new BenchOrder($"o{o:00}", o / 3,
            [.. Enumerable.Range(0, 3)
                .Select(k => new CuttingItem($"{o}-{k}", random.Next(15, 70), 3))]))
            .ToList();
        var stock = new StockType { Key = "r", LengthNm = 150 };
        var table = Pooling.Table(orders, [stock], 30, [1, 3, 12], Limits, Cancel);
        Assert.All(table, row => Assert.True(row.Cost >= row.LowerBoundCost && row.ScrapNm >= 0));
        Assert.Equal(table[2].LowerBoundCost, table[2].Cost);
        Assert.True(table[0].Cost >= table[1].Cost && table[1].Cost >= table[2].Cost);
    }

    [Theory]
    [InlineData(false, false, "100 ft 0 in of roll")]
    [InlineData(true, false,
        "100 ft 0 in of roll, an offcut counted as a thousandth of its length")]
    [InlineData(false, true, "100 ft 0 in of roll, begun rolls not counted")]
    public void A_bound_in_roll_length_says_what_else_there_is_to_cut_from(
        bool offcut, bool begun, string text)
    {
        var roll = new RollAtHand
        {
            Product = "p",
            WidthNm = 1,
            LengthNm = 30_480_000_000,
            EndTrimNm = 0,
        };
        List<RollAtHand> rack = [roll, roll with { LengthNm = 15_240_000_000 }];
        if (offcut)
            rack.Add(roll with { StockId = "S-1", IsOffcut = true });
        if (begun)
            rack.Add(roll with { Begun = 7 });
        Assert.Equal(text, PlanPieces.CostText(rack)(30_480));
    }

    [Fact]
    public void The_reason_for_the_bound_names_lengths_and_rolls()
    {
        var problem = Problem([("a", 396 * 25_400_000L, 10)],
            new StockType { Key = "r", LengthNm = 1194 * 25_400_000L });
        var plan = CuttingStock.Plan(problem, Limits, Cancel);
        Assert.Contains("3,960 in (100,584 mm)", plan.Explanation);
        Assert.Contains("no fewer than 4", plan.Explanation);
    }

    private static CuttingProblem Problem((string Key, long Nm, int Demand)[] items,
        StockType roll) => new()
        {
            Items = [.. items.Select(i => new CuttingItem(i.Key, i.Nm, i.Demand))],
            Stock = [roll],
        };
}
