using PostFrame.Engine;
using PostFrame.Engine.Buildings;
using PostFrame.Engine.Quantities;
using PostFrame.Engine.TakeOff;
using Xunit;
using static PostFrame.EngineTests.TakeOff.Ask;

namespace PostFrame.EngineTests.TakeOff;

/// <summary>Source: takeoff.md 4.3 to 4.6.</summary>
public sealed class ConsumptionTests
{
    private static Accessory Item(string id) =>
        Assert.Single(WorkedJobs.W1.Sized().Accessories, a => a.Id == id);

    [Fact]
    public void Lap_tape_of_W1_is_the_worked_706_65_ft_on_four_rolls()
    {
        var tape = Item("lapTape");
        Assert.Equal(8076 / 12.0 * 1.05, tape.Needed, 0.005);
        Assert.Equal((706.65, 4), (tape.Needed, tape.Quantity));
    }

    /// <summary>
    /// W1, a panel of 24 in on slope A: 2 × (24 + 189.7367) = 427.473 in; on both, made over the
    /// ridge, 2 × (24 + 379.4733) = 806.947 in.
    /// </summary>
    [Theory]
    [InlineData("roofA", 427.473)]
    [InlineData("roof", 806.947)]
    public void Tape_goes_once_round_a_panel_that_is_cut_out_on_its_own_slope(
        string plane, double inches) =>
        Assert.Equal(inches / 12, CutOutTape(WorkedJobs.W1, plane), 0.006);

    [Fact]
    public void A_panel_beside_a_part_length_vent_is_taped_once()
    {
        var vented = WorkedJobs.W1.With(b => b with
        {
            Roof = b.Roof! with
            {
                Ridge = RidgeKind.Vented,
                VentFrom = In(10),
                VentTo = In(90),
            },
        });
        Assert.Equal(427.473 / 12, CutOutTape(vented, "roofA"), 0.006);
    }

    [Fact]
    public void A_panel_is_drawn_and_taped_on_both_pieces_of_a_broken_slope()
    {
        // W4: 2 × (24 + 139.9428) + 2 × (24 + 160.9969) = 697.879 in.
        var split = WorkedJobs.W4 with
        {
            Insulation =
            [
                Roof(60, RoofLayout.EaveToRidge) with { BreakLayout = BreakLayout.Split },
            ],
        };
        Assert.Equal(697.879 / 12, CutOutTape(split, "roofA"), 0.006);
    }

    private static double CutOutTape(SizingInput job, string plane) => Assert.Single(
        job.With(b => b with
        {
            Openings = [],
            Roof = b.Roof! with
            {
                TranslucentPanels = [new() { Plane = plane, FromStart = In(200), Width = In(24) }],
            },
        }).Sized().Accessories, a => a.Id == "cutOutTape").Needed;

    [Fact]
    public void Double_faced_tape_runs_twice_along_every_slope_and_wall() =>
        Assert.Equal(2 * 2 * 40 + 2 * (30 + 40 + 30 + 40), Item("doubleFacedTape").Needed, 0.005);

    [Fact]
    public void Staples_are_150_per_100_ft_of_joint() =>
        Assert.Equal((int)Math.Ceiling(673 * 1.5), Item("staples").Quantity);

    [Fact]
    public void Cap_nails_stand_every_12_in_at_top_and_base_and_24_in_at_girts()
    {
        // Perimeter 140 ft; girts at 24 in up to 10 ft: rows at 2, 4, 6 and 8 ft.
        Assert.Equal(2 * 140 + 4 * 140 / 2, Item("capNails").Quantity);
    }

    [Fact]
    public void A_33_ft_piece_of_3_in_blanket_coils_to_22_5_in()
    {
        var packing = WorkedJobs.W1.Sized().Packing!;
        Assert.Equal(22.5, packing.Bags[0].CoilDiameter.TotalInches, 0.05);
    }

    [Fact]
    public void A_piece_weighs_its_facing_width_times_its_length()
    {
        // 51 in of facing × 33 ft × 0.16 lb/ft².
        var weight = WorkedJobs.W1.Sized().PieceAt("R-01").Weight;
        Assert.Equal(51 / 12.0 * 33 * 0.16, weight.TotalPounds, 1e-9);
    }

    [Fact]
    public void Bags_hold_every_piece_once_and_share_only_wall_pieces_within_their_limits()
    {
        var result = WorkedJobs.W1.Sized();
        var bags = result.Packing!.Bags;
        Assert.Equal(result.Pieces.Select(p => p.Mark), bags.SelectMany(b => b.Marks));
        Assert.All(bags.Where(b => b.Marks.Count > 1), b =>
        {
            Assert.True(b.Weight.TotalPounds <= 40 && b.CoilDiameter <= In(30));
            Assert.Single(b.Marks.Select(m => m.Split('-')[0]).Distinct());
            Assert.DoesNotContain(b.Marks, m => m.StartsWith('R'));
        });
    }

    [Theory]
    [InlineData("W1")]
    [InlineData("W2")]
    [InlineData("W4")]
    [InlineData("W5")]
    public void A_pallet_takes_roughly_8_to_16_pieces(string job)
    {
        var result = WorkedJobs.Get(job).Sized();
        Assert.InRange(result.Pieces.Count / (double)result.Packing!.Pallets.Count, 8, 16);
    }

    [Theory]
    [InlineData("W1")]
    [InlineData("W2")]
    [InlineData("W4")]
    [InlineData("W8")]
    public void Every_bag_is_on_one_pallet_in_order_and_its_weight_is_told(string job)
    {
        var result = WorkedJobs.Get(job).Sized();
        var packing = result.Packing!;
        Assert.Equal(packing.Pallets.Count, packing.Pallets[^1].Number);
        Assert.Equal(
            packing.Bags.Select(b => b.Number), packing.Pallets.SelectMany(p => p.Bags));
        Assert.Equal(
            result.Totals.Weight.TotalPounds, packing.Pallets.Sum(p => p.Weight.TotalPounds),
            1e-6);
        Assert.All(packing.Pallets, p => Assert.Equal(
            packing.Bags.Where(b => p.Bags.Contains(b.Number)).Sum(b => b.Weight.TotalPounds),
            p.Weight.TotalPounds, 1e-6));
    }

    [Fact]
    public void Coils_of_48_in_stand_four_to_a_pallet_layer_and_wider_ones_lie_side_by_side()
    {
        // takeoff.md 4.6; W1's 22.5 in coils of 48 in stand two layers high in 96 in: eight.
        Assert.Equal(8, WorkedJobs.W1.Sized().Packing!.Pallets[0].Bags.Count);
        // W4's 60 in coils of 318 in are 20.1 in thick: two abreast, four layers high: eight.
        Assert.Equal(8, WorkedJobs.W4.Sized().Packing!.Pallets[0].Bags.Count);
    }

    [Fact]
    public void Spray_foam_batts_and_board_are_taken_off_by_net_area()
    {
        var job = Job(360, 480, 120, Gable(4),
            Roof(48, RoofLayout.OverRidge),
            new InsulationInput
            {
                Planes = ["sidewallA"],
                Product = "spray-foam-closed",
                Thickness = In(2),
            },
            new InsulationInput { Planes = ["sidewallB"], Product = "batt-3-5-unfaced" },
            new InsulationInput { Planes = ["endwall1"], Product = "board-2-xps" });
        var goods = job.Sized().AreaGoods;
        // 40 × 10 ft: 800 board feet; 400 ft² at 88 a bag: 5; 375 ft² in 32 ft² sheets: 12.
        Assert.Equal([("batt-3-5-unfaced", 5, "bags"), ("board-2-xps", 12, "sheets"),
            ("spray-foam-closed", 800, "board feet")],
            goods.Select(g => (g.Product, g.Quantity, g.Unit)));
    }

    [Fact]
    public void Prices_come_from_the_shops_list_and_gaps_are_named_not_filled()
    {
        var list = new PriceList
        {
            Id = "demo",
            Version = "1",
            Currency = "USD",
            Note = "made up",
            UnitPrices = new Dictionary<string, decimal>
            {
                ["blanket-3-white"] = 0.50m,
                ["lapTape"] = 20m,
            },
            PerPiece = 2m,
        };
        var price = (WorkedJobs.W1 with { Prices = list }).Sized().Price!;
        Assert.Equal(3032 * 0.50m + 4 * 20m + 46 * 2m, price.Total);
        Assert.Contains(price.NotPriced, n => n.StartsWith("staples", StringComparison.Ordinal));
    }
}
