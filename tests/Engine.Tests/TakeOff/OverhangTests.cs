using PostFrame.Engine;
using PostFrame.Engine.Buildings;
using PostFrame.Engine.Quantities;
using PostFrame.Engine.TakeOff;
using Xunit;
using static PostFrame.EngineTests.TakeOff.Ask;

namespace PostFrame.EngineTests.TakeOff;

/// <summary>
/// Overhangs are covered only when asked, to the fascia: o·k more along the slope for each eave
/// (takeoff.md 2.4), and the rake's overhang more at each end of the run.
/// </summary>
public sealed class OverhangTests
{
    /// <summary>√160/12, the slope factor of 4:12 (takeoff.md 2.1).</summary>
    private const double K = 1.0540925533894598;

    private static readonly RoofInput Covered = Gable(4) with
    {
        EaveOverhang = In(18),
        RakeOverhang = In(12),
        CoverOverhangs = true,
    };

    private static SizingInput Barn(RoofInput roof, params InsulationInput[] lines) =>
        Job(360, 480, 120, roof, lines);

    [Fact]
    public void Overhangs_are_left_bare_unless_asked()
    {
        var plane = Barn(Covered with { CoverOverhangs = false },
            Roof(48, RoofLayout.EaveToRidge)).Sized().PlaneAt("roofA");
        Assert.Equal((In(480), 10), (plane.Run, plane.Strips));
        Assert.Equal(480 * 180 * K / 144, plane.Net.TotalSquareFeet, 1e-6);
    }

    [Fact]
    public void Covered_overhangs_belong_to_the_plane_with_its_run_its_area_and_its_outline()
    {
        var result = Barn(Covered, Roof(48, RoofLayout.EaveToRidge)).Sized();
        var plane = result.PlaneAt("roofA");
        Assert.Equal((In(504), 11, In(24)), (plane.Run, plane.Strips, plane.Surplus));
        Assert.Equal(504 * (180 + 18) * K / 144, plane.Net.TotalSquareFeet, 1e-6);
        Assert.Equal((In(0), In(504)),
            (plane.Outline.Min(p => p.Across), plane.Outline.Max(p => p.Across)));
        Assert.Equal(198 * K, plane.Outline.Max(p => p.Up.TotalInches), 1e-6);
        Assert.Equal(2 * 504 * 198 * K / 144, result.Totals.Net.TotalSquareFeet, 1e-6);
        Assert.Equal(
            result.Totals.Gross.TotalSquareFeet / result.Totals.Net.TotalSquareFeet,
            result.Totals.GrossToNet, 1e-9);
    }

    [Theory]
    [InlineData(RoofLayout.EaveToRidge, "RA-01", 1)]
    [InlineData(RoofLayout.OverRidge, "R-01", 2)]
    public void A_piece_counts_each_overhang_once(RoofLayout layout, string mark, int eaves)
    {
        var piece = Barn(Covered, Roof(48, layout)).Sized().PieceAt(mark);
        Assert.Equal(eaves * (180 + 18) * K + 12, piece.Exact.TotalInches, 1e-6);
        var over = piece.Why.Where(w => w.Term == "eaveOverhang").ToArray();
        Assert.Equal(eaves, over.Length);
        Assert.All(over, w => Assert.Equal(18 * K, w.Value.TotalInches, 1e-6));
        Assert.All(over, w => Assert.Equal("asked", w.Mark));
    }

    [Fact]
    public void A_single_slope_has_an_overhang_at_its_low_and_at_its_high_eave()
    {
        var roof = Covered with { Form = RoofForm.Monoslope, Slope = Pitch(2) };
        var result = Barn(roof, Cover(48, "roof")).Sized();
        var k = Math.Sqrt(148) / 12;
        Assert.Equal((360 + 36) * k + 12, result.PieceAt("R-01").Exact.TotalInches, 1e-6);
        Assert.Equal(504 * 396 * k / 144, result.PlaneAt("roof").Net.TotalSquareFeet, 1e-6);
    }

    [Fact]
    public void Made_in_two_at_the_break_only_the_lower_part_reaches_the_fascia()
    {
        var job = WorkedJobs.W4 with
        {
            Insulation =
            [
                Roof(60, RoofLayout.EaveToRidge) with { BreakLayout = BreakLayout.Split },
            ],
        };
        var result = job.With(b => b with
        {
            Roof = b.Roof! with { EaveOverhang = In(12), CoverOverhangs = true },
        }).Sized();
        // W4: S1 = 72·√544/12 and 12 in of overhang on the same slope; S2 as without.
        Assert.Equal(84 * Math.Sqrt(544) / 12 + 12,
            result.PieceAt("RA1-01").Exact.TotalInches, 1e-6);
        Assert.Equal(160.9969 + 12, result.PieceAt("RA2-01").Exact.TotalInches, 1e-4);
        Assert.Equal(84 * Math.Sqrt(544) / 12,
            result.PlaneAt("roofA1").Outline.Max(p => p.Up.TotalInches), 1e-6);
    }

    [Theory]
    [InlineData("spray-foam-closed", 2.0)]
    [InlineData("board-2-xps", 1.0 / 32)]
    [InlineData("batt-3-5-unfaced", 1.0 / 88)]
    public void Goods_bought_by_area_reach_over_the_covered_overhangs(string product, double each)
    {
        var goods = Assert.Single(Barn(Covered, new InsulationInput
        {
            Planes = ["roof"],
            Product = product,
            Thickness = product == "spray-foam-closed" ? In(2) : null,
        }).Sized().AreaGoods);
        var net = 2 * 504 * 198 * K / 144;
        Assert.Equal(net, goods.Net.TotalSquareFeet, 1e-6);
        Assert.Equal(Math.Ceiling(net * each), goods.Quantity);
    }

    [Fact]
    public void The_break_and_the_vent_move_up_and_along_with_the_overhang()
    {
        var job = WorkedJobs.W4.With(b => b with
        {
            Roof = b.Roof! with
            {
                EaveOverhang = In(12),
                RakeOverhang = In(24),
                CoverOverhangs = true,
                Ridge = RidgeKind.Vented,
                VentFrom = In(100),
                VentTo = In(200),
            },
        });
        var lines = job.Sized().PlaneAt("roofA").Lines;
        var rest = Assert.Single(lines, l => l.Kind == "break");
        Assert.Equal(84 * Math.Sqrt(544) / 12, rest.Up.TotalInches, 1e-6);
        Assert.Equal((In(0), In(648)), (rest.From, rest.To));
        var vent = Assert.Single(lines, l => l.Kind == "ridgeVent");
        Assert.Equal((In(124), In(224)), (vent.From, vent.To));
        // Strip 3 (120–180 from the fascia) touches the vent from 124; strip 2 does not.
        Assert.Contains(
            job.Sized().PieceAt("RA-03").Why, w => w.Term == "ventSetback");
        Assert.DoesNotContain(
            job.Sized().PieceAt("RA-02").Why, w => w.Term == "ventSetback");
    }

    [Fact]
    public void A_panel_that_splits_the_run_stays_at_its_place_on_the_building()
    {
        var roof = Covered with
        {
            TranslucentPanels =
            [
                new()
                {
                    FromStart = In(200), Width = In(36),
                    Treatment = TranslucentTreatment.SplitRun,
                },
            ],
        };
        var pieces = Barn(roof, Roof(48, RoofLayout.EaveToRidge)).Sized().Pieces
            .Where(p => p.Plane == "roofA").ToArray();
        Assert.Equal(In(212), pieces.Where(p => p.From < In(212)).Max(p => p.To));
        Assert.Equal(In(248), pieces.Where(p => p.From >= In(212)).Min(p => p.From));
        Assert.Equal(In(504), pieces.Max(p => p.To));
    }

    [Fact]
    public void At_a_partition_the_roof_ends_with_half_a_lap_and_no_overhang()
    {
        var plane = Barn(Covered, Roof(48, RoofLayout.EaveToRidge)).With(b => b with
        {
            Partition = new() { FromEndwall1 = In(240) },
        }).Sized().PlaneAt("roofA");
        Assert.Equal(In(12 + 240), plane.Run);
        Assert.Equal(In(6 * 48 - 12 - 240 - 1.5), plane.Surplus);
    }

    [Fact]
    public void A_flush_lean_to_carries_the_roof_on_so_that_the_eave_there_has_no_overhang()
    {
        var result = WorkedJobs.W5.With(b => b with
        {
            LeanTos = [b.LeanTos![0]],
            Roof = Covered,
        }) with
        {
            Insulation = [Roof(48, RoofLayout.EaveToRidge, "roof", "leanRoofA")],
        };
        var sized = result.Sized();
        Assert.Equal(192 * K + 12, sized.PieceAt("RA-01").Exact.TotalInches, 1e-6);
        Assert.Equal((192 + 18) * K + 12, sized.PieceAt("RB-01").Exact.TotalInches, 1e-6);
        Assert.Equal((144 + 18) * Math.Sqrt(148) / 12 + 12,
            sized.PieceAt("LRA-01").Exact.TotalInches, 1e-6);
        Assert.Equal(In(576 + 24), sized.PlaneAt("leanRoofA").Run);
    }

    /// <summary>
    /// A flush lean-to from 120 to 360 in of 480: 132 to 372 in on a roof that starts 12 in before
    /// endwall 1. Strips 4 to 7 (144 to 336 in) lie all at it; 3 and 8 on both sides of its ends.
    /// </summary>
    private static SizingInput BesideLeanTo(RoofLayout layout, BuildingSide side = BuildingSide.A)
        => Barn(Covered, Roof(48, layout)).With(b => b with
        {
            LeanTos =
            [
                new()
                {
                    Side = side, Width = In(144), Slope = Pitch(2), Inside = LeanToInside.Cold,
                    FromEndwall1 = In(120), Length = In(240),
                },
            ],
        });

    [Theory]
    [InlineData(RoofLayout.EaveToRidge, BuildingSide.A, "RA", 1)]
    [InlineData(RoofLayout.EaveToRidge, BuildingSide.B, "RB", 1)]
    [InlineData(RoofLayout.OverRidge, BuildingSide.A, "R", 2)]
    [InlineData(RoofLayout.OverRidge, BuildingSide.B, "R", 2)]
    public void Where_a_flush_lean_to_carries_the_roof_on_no_strip_has_the_overhang(
        RoofLayout layout, BuildingSide side, string code, int eaves)
    {
        var pieces = BesideLeanTo(layout, side).Sized().Pieces
            .Where(p => p.Mark.StartsWith($"{code}-", StringComparison.Ordinal)).ToArray();
        Assert.Equal(11, pieces.Length);
        Assert.All(pieces, p => Assert.Equal(
            (eaves * 198 - (p.Strip is >= 4 and <= 7 ? 18 : 0)) * K + 12,
            p.Exact.TotalInches, 1e-6));
        Assert.All(pieces, p => Assert.Equal(p.Exact.TotalInches,
            p.Why.TakeWhile(w => w.Term != "exact").Sum(w => w.Value.TotalInches), 1e-6));
        Assert.Contains("the lean-to carries the roof on", pieces[3].Why.First(
            w => w.Term == "eaveOverhang" && w.Value == In(0)).Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(RoofLayout.EaveToRidge, "roofA", 1)]
    [InlineData(RoofLayout.OverRidge, "roof", 2)]
    public void The_plane_and_its_outline_step_back_at_the_lean_to(
        RoofLayout layout, string id, int eaves)
    {
        var plane = BesideLeanTo(layout).Sized().PlaneAt(id);
        var net = 504 * eaves * 198 * K - 240 * 18 * K;
        Assert.Equal(net / 144, plane.Net.TotalSquareFeet, 1e-6);
        (double X, double Y)[] corners = [.. plane.Outline.Select(
            p => (p.Across.TotalInches, p.Up.TotalInches))];
        Assert.Equal(8, corners.Length);
        Assert.Equal(net, AreaOf(plane.Outline), 1e-3);
        Assert.Contains(corners, c => Math.Abs(c.X - 132) + Math.Abs(c.Y - 18 * K) < 1e-6);
        Assert.Contains(corners, c => Math.Abs(c.X - 372) + Math.Abs(c.Y) < 1e-6);
    }

    [Fact]
    public void Strips_on_both_sides_of_the_lean_tos_end_are_told_to_be_cut_on_site()
    {
        var told = Assert.Single(BesideLeanTo(RoofLayout.EaveToRidge).Sized().Warnings,
            w => w.Id == "overhang-beside-lean-to");
        Assert.Equal("roofA", told.Plane);
        Assert.StartsWith("2 strips of Roof slope A, such as strip 3,", told.Text,
            StringComparison.Ordinal);
        // 18·k = 18.974 in, to the sixteenth of a tape measure.
        Assert.Contains("cut 1 ft 7 in off", told.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_panel_that_splits_the_run_beside_the_lean_to_leaves_its_gap_in_the_outline()
    {
        // 24 in of panel at 200 in, within the lean-to's stretch: 24 × 180·k less.
        var plane = BesideLeanTo(RoofLayout.EaveToRidge).With(b => b with
        {
            Roof = b.Roof! with
            {
                TranslucentPanels =
                [
                    new()
                    {
                        FromStart = In(200), Width = In(24),
                        Treatment = TranslucentTreatment.SplitRun,
                    },
                ],
            },
        }).Sized().PlaneAt("roofA");
        var net = 504 * 198 * K - 240 * 18 * K - 24 * 180 * K;
        Assert.Equal(net / 144, plane.Net.TotalSquareFeet, 1e-6);
        Assert.Equal(net, AreaOf(plane.Outline), 1e-3);
        Assert.All(plane.Outline.Zip([.. plane.Outline.Skip(1), plane.Outline[0]]),
            side => Assert.True(side.First.Across == side.Second.Across
                || side.First.Up == side.Second.Up, $"{side} is not square"));
    }

    [Fact]
    public void Strips_over_the_ridge_beside_a_part_length_vent_keep_their_feet_on_the_eave()
    {
        // Strips 3 and 4 (96 to 192 in) are pairs; the lean-to's stretch starts at 132 in, within
        // the gap they leave, so the line that joins the two parts steps there and nowhere else.
        var plane = BesideLeanTo(RoofLayout.OverRidge).With(b => b with
        {
            Roof = b.Roof! with
            {
                Ridge = RidgeKind.Vented,
                VentFrom = In(90),
                VentTo = In(170),
            },
        }).Sized().PlaneAt("roof");
        Assert.Equal(
            504 * 396 * K - 240 * 18 * K - (96 * 396 * K - 60 * 18 * K), AreaOf(plane.Outline),
            1e-3);
        Assert.All(plane.Outline.Zip([.. plane.Outline.Skip(1), plane.Outline[0]]),
            side => Assert.True(side.First.Across == side.Second.Across
                || side.First.Up == side.Second.Up, $"{side} is not square"));
    }

    private static double AreaOf(IReadOnlyList<PlanePoint> outline)
    {
        (double X, double Y)[] corners = [.. outline.Select(
            p => (p.Across.TotalInches, p.Up.TotalInches))];
        return corners.Zip([.. corners.Skip(1), corners[0]],
            (a, b) => a.X * b.Y - b.X * a.Y).Sum() / 2;
    }

    [Fact]
    public void A_translucent_panel_is_drawn_at_its_place_from_endwall_1_not_from_the_fascia()
    {
        var roof = Covered with
        {
            TranslucentPanels = [new() { FromStart = In(200), Width = In(24) }],
        };
        var panel = Assert.Single(
            Barn(roof, Roof(48, RoofLayout.EaveToRidge)).Sized().PlaneAt("roofA").Panels);
        Assert.Equal((In(212), In(236)), (panel.From, panel.To));
    }

    [Fact]
    public void A_lean_to_below_the_eave_leaves_the_overhang_above_it()
    {
        var job = BesideLeanTo(RoofLayout.EaveToRidge);
        var result = job.With(b => b with
        {
            LeanTos = [b.LeanTos![0] with { Drop = In(24) }],
        }).Sized();
        Assert.All(result.Pieces.Where(p => p.Plane == "roofA"),
            p => Assert.Equal(198 * K + 12, p.Exact.TotalInches, 1e-6));
        Assert.DoesNotContain(result.Warnings, w => w.Id == "overhang-beside-lean-to");
    }

    [Fact]
    public void At_an_endwall_the_lean_to_takes_the_corner_of_the_overhang_with_it()
    {
        // From endwall 1 to 240 in: 0 to 252 in of the roof, so strips 1 to 5 (240 in) are short.
        var plane = BesideLeanTo(RoofLayout.EaveToRidge).With(b => b with
        {
            LeanTos = [b.LeanTos![0] with { FromEndwall1 = null }],
        }).Sized();
        Assert.Equal([1, 2, 3, 4, 5], plane.Pieces
            .Where(p => p.Plane == "roofA" && p.Exact.TotalInches < 180 * K + 12.001)
            .Select(p => p.Strip));
        Assert.Equal(6, plane.PlaneAt("roofA").Outline.Count);
    }

    [Fact]
    public void Whether_a_piece_over_the_ridge_is_too_long_counts_its_overhangs()
    {
        // 45 ft is the longest run over the ridge: 500·k + 12 = 539.05 in, and 36·k more is over.
        var roof = Gable(4) with { EaveOverhang = In(18) };
        Assert.Contains(Job(500, 480, 120, roof, Roof(48, RoofLayout.Auto)).Sized().Planes,
            p => p.Plane == "roof");
        Assert.Contains(Job(500, 480, 120, roof with { CoverOverhangs = true },
            Roof(48, RoofLayout.Auto)).Sized().Planes, p => p.Plane == "roofA");
    }

    [Fact]
    public void To_cover_overhangs_without_saying_how_far_they_reach_is_refused()
    {
        var violation = Assert.Single(Barn(
            Gable(4) with { CoverOverhangs = true }, Cover(48, "roofA")).Refused());
        Assert.Equal(("/building/roof/coverOverhangs", "no-overhang"),
            (violation.Path, violation.Rule));
    }
}
