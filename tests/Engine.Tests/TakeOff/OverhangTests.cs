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
