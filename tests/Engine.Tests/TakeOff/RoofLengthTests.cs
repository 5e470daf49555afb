using PostFrame.Engine;
using PostFrame.Engine.Buildings;
using PostFrame.Engine.Quantities;
using PostFrame.Engine.TakeOff;
using Xunit;
using static PostFrame.EngineTests.TakeOff.Ask;

namespace PostFrame.EngineTests.TakeOff;

/// <summary>Source: takeoff.md 2.4; S = 180·√160/12 = 189.73666 for the 30 ft gable.</summary>
public sealed class RoofLengthTests
{
    private const double S = 189.7366596101;

    private static SizingInput Of(RoofLayout layout, RidgeKind ridge = RidgeKind.Closed) =>
        Job(360, 480, 120, Gable(4, ridge), Roof(48, layout));

    [Fact]
    public void Eave_to_closed_ridge_adds_tuck_and_lap() =>
        Assert.Equal(S + 6 + 6,
            Of(RoofLayout.EaveToRidge).Sized().PieceAt("RA-01").Exact.TotalInches, 1e-6);

    [Fact]
    public void Eave_to_vented_ridge_adds_tuck_and_fold_less_the_set_back() =>
        Assert.Equal(S + 6 - 2 + 3,
            Of(RoofLayout.EaveToRidge, RidgeKind.Vented).Sized()
                .PieceAt("RA-01").Exact.TotalInches, 1e-6);

    [Fact]
    public void Eave_over_ridge_to_eave_adds_two_tucks() =>
        Assert.Equal(2 * S + 12,
            Of(RoofLayout.OverRidge).Sized().PieceAt("R-01").Exact.TotalInches, 1e-6);

    [Fact]
    public void A_slot_of_total_width_t_sets_back_half_of_it_along_the_slope()
    {
        var job = Of(RoofLayout.EaveToRidge, RidgeKind.Vented).With(b => b with
        {
            Roof = b.Roof! with { VentSlotWidth = In(6) },
        });
        Assert.Equal(S + 6 - 3 * 1.0540925534 + 3,
            job.Sized().PieceAt("RA-01").Exact.TotalInches, 1e-6);
    }

    [Fact]
    public void Overhangs_are_covered_only_when_asked_and_then_along_the_slope()
    {
        var roof = Gable(4) with { EaveOverhang = In(12), RakeOverhang = In(12) };
        var bare = Job(360, 480, 120, roof, Roof(48, RoofLayout.EaveToRidge)).Sized();
        var covered = Job(360, 480, 120, roof with { CoverOverhangs = true },
            Roof(48, RoofLayout.EaveToRidge)).Sized();
        Assert.Equal(S + 12, bare.PieceAt("RA-01").Exact.TotalInches, 1e-6);
        Assert.Equal(S + 12 + 12 * 1.0540925534,
            covered.PieceAt("RA-01").Exact.TotalInches, 1e-6);
        Assert.Equal((10, 11), (bare.PlaneAt("roofA").Strips, covered.PlaneAt("roofA").Strips));
    }

    [Fact]
    public void Two_pieces_per_side_lap_at_the_break_on_both_ends()
    {
        var job = WorkedJobs.W4 with
        {
            Insulation =
            [
                Roof(60, RoofLayout.EaveToRidge) with { BreakLayout = BreakLayout.Split },
            ],
        };
        var result = job.Sized();
        Assert.Equal(139.9428 + 6 + 6, result.PieceAt("RA1-01").Exact.TotalInches, 0.0001);
        Assert.Equal(160.9969 + 6 + 6, result.PieceAt("RA2-01").Exact.TotalInches, 0.0001);
    }

    [Fact]
    public void A_single_slope_that_bends_may_be_made_in_two_as_well()
    {
        RoofInput roof = new()
        {
            Form = RoofForm.Profile,
            Points =
            [
                new() { Across = In(0), Up = In(120) }, new() { Across = In(120), Up = In(140) },
                new() { Across = In(360), Up = In(260) },
            ],
        };
        var result = Job(360, 480, 120, roof,
            Roof(48, RoofLayout.Auto) with { BreakLayout = BreakLayout.Split }).Sized();
        Assert.Equal(120 * 1.0137938 + 12, result.PieceAt("R1-01").Exact.TotalInches, 0.0001);
        Assert.Equal(240 * 1.1180340 + 12, result.PieceAt("R2-01").Exact.TotalInches, 0.0001);
    }

    [Fact]
    public void Drape_lengthens_the_slope_by_its_percentage()
    {
        var piece = Of(RoofLayout.EaveToRidge).WithPractice(p => p with { DrapePercent = 1 })
            .Sized().PieceAt("RA-01");
        Assert.Equal(S * 1.01 + 12, piece.Exact.TotalInches, 1e-6);
    }

    [Theory]
    [InlineData(1.5, "1 1/2", 24, 240, 2.5)]
    [InlineData(3, "3", 60, 60, 0.4)]
    [InlineData(1.5, "1 1/2", 24, 48, 2 * 0.25)]
    public void A_sag_between_purlins_lengthens_each_space_by_8s2_over_3m_2_4(
        double sag, string told, double spacing, double slope, double drape)
    {
        // A slope length of 240 in is 20 ft: ten spaces of 24 in.
        var run = slope / 1.0540925533894598;
        var job = Job(2 * run, 480, 120, Gable(4), Roof(48, RoofLayout.EaveToRidge)).With(b =>
            b with { Framing = new() { PurlinSpacing = In(spacing) } });
        var plain = job.Sized().PieceAt("RA-01").Exact;
        var piece = job.WithPractice(p => p with { DrapeSag = In(sag) }).Sized().PieceAt("RA-01");
        Assert.Equal(drape, (piece.Exact - plain).TotalInches, 1e-6);
        Assert.Contains($"sag {told} in", Assert.Single(
            piece.Why, w => w.Term == "drape").Text, StringComparison.Ordinal);
    }

    [Fact]
    public void The_tuck_absorbs_the_sag_of_a_20_ft_slope_and_a_deeper_one_is_told_2_4()
    {
        var job = Of(RoofLayout.EaveToRidge);
        Assert.DoesNotContain(Warned(1.5), w => w.Id == "much-drape");
        var told = Assert.Single(Warned(3.5), w => w.Id == "much-drape").Text;
        Assert.Contains("comes to about ", told, StringComparison.Ordinal);
        Assert.DoesNotMatch("[0-9][.][0-9]", told);

        IReadOnlyList<Warning> Warned(double sag) =>
            job.WithPractice(p => p with { DrapeSag = In(sag) }).Sized().Warnings;
    }

    /// <summary>takeoff.md 2.4: v = (t/2)·k; at 4:12 half of 4 in is 2.108185 in.</summary>
    [Theory]
    [InlineData(2)]
    [InlineData(2.2)]
    public void A_set_back_that_agrees_with_the_slot_within_an_eighth_is_taken(double setback)
    {
        var result = WithSlot(4, Gable(4, RidgeKind.Vented), setback).Sized();
        Assert.Equal(S + 6 - 2.108185 + 3, result.PieceAt("RA-01").Exact.TotalInches, 1e-5);
        Assert.Equal("4", Assert.Single(
            result.Assumptions, a => a.Id == "ventSlotWidth").Value);
        Assert.DoesNotContain(result.Assumptions, a => a.Id == "ventSetback");
    }

    [Theory]
    [InlineData(1.98)]
    [InlineData(2.24)]
    public void A_set_back_that_disagrees_with_the_slot_is_refused_with_both(double setback)
    {
        var violation = Assert.Single(
            WithSlot(4, Gable(4, RidgeKind.Vented), setback).Refused());
        Assert.Equal(("/practice/ventSetback", "does-not-close", "in"),
            (violation.Path, violation.Rule, violation.Unit));
        Assert.Equal(2.108185, double.Parse(
            violation.Limit!, System.Globalization.CultureInfo.InvariantCulture), 1e-3);
        Assert.Contains("ventSlotWidth 4 in", violation.Message, StringComparison.Ordinal);
        Assert.Contains("1.054093", violation.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void The_slot_is_held_against_the_set_back_on_each_slope_of_the_ridge()
    {
        // Half of 4 in is 2.108 in at 4:12 and 2.5 in at 9:12 (k = 1.25).
        var roof = new RoofInput
        {
            Form = RoofForm.OffsetRidge,
            RidgeFromSidewallA = In(240),
            SlopeA = Pitch(4),
            SlopeB = Pitch(9),
            Ridge = RidgeKind.Vented,
        };
        Assert.Equal("2.5", Assert.Single(WithSlot(4, roof, 2.1).Refused()).Limit);
    }

    private static SizingInput WithSlot(double slot, RoofInput roof, double setback) =>
        Job(360, 480, 120, roof with { VentSlotWidth = In(slot) },
            Roof(48, RoofLayout.EaveToRidge))
            .WithPractice(p => p with { VentSetback = In(setback) });

    [Fact]
    public void No_piece_crosses_a_ridge_that_is_vented_all_along_though_asked_to()
    {
        var result = Of(RoofLayout.OverRidge, RidgeKind.Vented).Sized();
        Assert.DoesNotContain(result.Pieces, p => p.Plane == "roof");
        Assert.Contains(result.Warnings, w => w.Id == "vent-forbids-over-ridge");
    }

    [Fact]
    public void A_vent_on_part_of_the_ridge_makes_pairs_only_where_strips_touch_it()
    {
        var result = Of(RoofLayout.OverRidge, RidgeKind.Vented).With(b => b with
        {
            Roof = b.Roof! with { VentFrom = In(100), VentTo = In(192) },
        }).Sized();
        Assert.Equal([1, 2, 5, 6, 7, 8, 9, 10],
            result.Pieces.Where(p => p.Plane == "roof").Select(p => p.Strip));
        Assert.Equal([3, 4], result.Pieces.Where(p => p.Plane == "roofA").Select(p => p.Strip));
        Assert.Equal(S + 7, result.PieceAt("RB-03").Exact.TotalInches, 1e-6);
    }

    /// <summary>
    /// 186 in of roof with 6 in of wrap at both rakes takes 198 in: four strips of 48 in reach
    /// the endwall, and a fifth holds the last wrap only (plain arithmetic).
    /// </summary>
    [Fact]
    public void A_strip_that_only_wraps_the_rake_beyond_a_part_length_vent_adds_no_run()
    {
        var result = Of(RoofLayout.OverRidge, RidgeKind.Vented).With(b => b with
        {
            Length = In(186),
            Roof = b.Roof! with { VentFrom = In(150), VentTo = In(180) },
        }).WithPractice(p => p with { RakeWrap = In(6) }).Sized();
        Assert.Equal(
            [1, 2, 3, 5], result.Pieces.Where(p => p.Plane == "roof").Select(p => p.Strip));
        Assert.Equal(186 - 48, result.PlaneAt("roof").Run.TotalInches, 1e-6);
        Assert.Equal(48, result.PlaneAt("roofA").Run.TotalInches, 1e-6);
    }

    [Fact]
    public void Pairs_beside_a_part_length_vent_lap_where_the_ridge_is_closed()
    {
        var result = Of(RoofLayout.EaveToRidge, RidgeKind.Vented).With(b => b with
        {
            Roof = b.Roof! with { VentFrom = In(100), VentTo = In(192) },
        }).Sized();
        Assert.Equal(S + 12, result.PieceAt("RA-02").Exact.TotalInches, 1e-6);
        Assert.Equal(S + 7, result.PieceAt("RA-03").Exact.TotalInches, 1e-6);
    }

    [Theory]
    [InlineData(360, RidgeKind.Closed, "blanket-3-white", "roof")]
    [InlineData(528, RidgeKind.Closed, "blanket-3-white", "roofA")]
    [InlineData(360, RidgeKind.Vented, "blanket-3-white", "roofA")]
    [InlineData(480, RidgeKind.Closed, "blanket-6-white", "roofA")]
    public void Left_to_itself_the_layout_follows_vent_run_and_weight(
        double width, RidgeKind ridge, string product, string plane)
    {
        var line = Roof(72, RoofLayout.Auto) with { Product = product };
        var result = Job(width, 480, 120, Gable(4, ridge), line).Sized();
        Assert.Contains(result.Planes, p => p.Plane == plane);
    }

    [Fact]
    public void The_handling_limit_is_held_against_the_piece_as_it_is_cut()
    {
        // 72 in wide, 75 in of facing, 0.30 lb/ft²: 1.875 lb/ft. 450 in of slope and 12 in of
        // tucks weigh 72.2 lb; cut to 480 in by steps of 60 in, 75 lb: at the limit, not over it.
        // With 1 in more of slope it is cut to 480 in still; with 19 in more to 540 in, 84.4 lb.
        var line = Roof(72, RoofLayout.Auto) with { Product = "blanket-6-white" };
        Assert.Equal("roof", Laid(450));
        Assert.Equal("roofA", Laid(469));

        string Laid(double slope) => Job(slope / 1.0540925533894598, 480, 120, Gable(4), line)
            .WithPractice(p => p with { RoundUpTo = In(60) }).Sized().Planes[0].Plane;
    }

    [Fact]
    public void With_widths_to_choose_from_the_heaviest_piece_decides_the_layout()
    {
        var line = Roof(72, RoofLayout.Auto) with
        {
            Product = "blanket-6-white",
            RollWidth = null,
            BestRollWidth = true,
        };
        Assert.Contains(
            Job(480, 480, 120, Gable(4), line).Sized().Planes, p => p.Plane == "roofA");
    }

    [Fact]
    public void A_48_in_strip_of_26_ft_is_an_ordinary_piece_in_the_trade()
    {
        // Common practice, no source: 24 ft wide, 4:12, over the ridge.
        var piece = Job(288, 480, 120, Gable(4), Roof(48, RoofLayout.OverRidge)).Sized()
            .PieceAt("R-01");
        Assert.Equal(In(318), piece.Cut);
        Assert.InRange(piece.Weight.TotalPounds, 10, 50);
    }
}
