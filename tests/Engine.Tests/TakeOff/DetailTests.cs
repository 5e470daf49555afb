using PostFrame.Engine;
using PostFrame.Engine.Buildings;
using PostFrame.Engine.Quantities;
using PostFrame.Engine.TakeOff;
using Xunit;
using static PostFrame.EngineTests.TakeOff.Ask;

namespace PostFrame.EngineTests.TakeOff;

/// <summary>Source: takeoff.md 2.5 and 2.9.</summary>
public sealed class DetailTests
{
    [Fact]
    public void Wall_strips_start_on_a_stem_wall()
    {
        var result = Job(360, 480, 168, Gable(4), Cover(48, "sidewallA", "endwall1"))
            .With(b => b with { StemWallHeight = In(36) }).Sized();
        Assert.Equal(In(168 - 36 + 6), result.PieceAt("SA-01").Exact);
        Assert.Equal(In(168 + 16 - 36 + 6), result.PieceAt("E1-01").Exact);
        Assert.Equal(480 * 132 / 144.0, result.PlaneAt("sidewallA").Net.TotalSquareFeet, 1e-6);
    }

    [Fact]
    public void A_wainscot_raises_the_start_on_the_planes_of_its_line_only()
    {
        var result = Job(360, 480, 168, Gable(4),
            Cover(48, "sidewallA") with { StartHeight = In(96) }, Cover(48, "sidewallB")).Sized();
        Assert.Equal(In(168 - 96 + 6), result.PieceAt("SA-01").Exact);
        Assert.Equal(In(174), result.PieceAt("SB-01").Exact);
    }

    [Fact]
    public void The_gable_alone_is_covered_when_strips_start_at_the_eave()
    {
        var result = Job(360, 480, 120, Gable(4),
            Cover(48, "endwall1") with { StartHeight = In(120) }).Sized();
        Assert.Equal(In(16 + 6), result.PieceAt("E1-01").Exact);
        Assert.Equal(360 * 60 / 2 / 144.0, result.PlaneAt("endwall1").Net.TotalSquareFeet, 1e-6);
    }

    [Theory]
    [InlineData(1, 0, 241.5)]
    [InlineData(2, 240, 480)]
    public void A_partition_ends_roof_and_sidewalls_with_half_a_lap_and_is_one_more_endwall(
        int insulated, double from, double to)
    {
        var result = Job(360, 480, 120, Gable(4),
            Cover(48, "sidewallA", "partition", "endwall1"), Roof(48, RoofLayout.EaveToRidge))
            .With(b => b with
            {
                Partition = new() { FromEndwall1 = In(240), InsulatedEndwall = insulated },
            }).Sized();
        var wall = result.PlaneAt("sidewallA");
        Assert.Equal(6, wall.Strips);
        Assert.Equal(In(6 * 48 - 241.5), wall.Surplus);
        Assert.Equal((In(from), In(to > 241 ? to > 300 ? to : 240 : to)),
            (wall.Joints[0], wall.Joints[^1]));
        Assert.Equal(
            result.Pieces.Where(p => p.Plane == "endwall1").Select(p => p.Cut),
            result.Pieces.Where(p => p.Plane == "partition").Select(p => p.Cut));
    }

    [Fact]
    public void A_panel_that_splits_the_run_leaves_a_gap_between_two_runs()
    {
        var result = Job(360, 480, 120, Gable(4), Roof(48, RoofLayout.EaveToRidge)).With(b =>
            b with
            {
                Roof = b.Roof! with
                {
                    TranslucentPanels =
                    [
                        new()
                        {
                            Plane = "roofA", FromStart = In(200), Width = In(36),
                            Treatment = TranslucentTreatment.SplitRun,
                        },
                    ],
                },
            }).Sized();
        Assert.Equal((5 + 6, 10), (
            result.PlaneAt("roofA").Strips, result.PlaneAt("roofB").Strips));
        Assert.Equal(In(236), result.PieceAt("RA-06").From);
        Assert.DoesNotContain(result.Pieces, p =>
            p.Plane == "roofA" && p.From < In(236) && p.To > In(200));
    }

    [Fact]
    public void A_panel_covered_and_cut_changes_no_piece()
    {
        var panels = WorkedJobs.W7.Sized();
        var none = WorkedJobs.W7.With(b => b with
        {
            Roof = b.Roof! with { TranslucentPanels = null },
        }).Sized();
        Assert.Equal(none.Pieces.Select(p => p.Cut), panels.Pieces.Select(p => p.Cut));
        Assert.Contains(panels.Warnings, w => w.Id == "cut-out-panels");
    }

    [Fact]
    public void Planes_not_named_are_left_out_and_said_so()
    {
        var result = WorkedJobs.W6.Sized();
        Assert.Equal(["roof"], result.Uncovered.Select(p => p.Plane));
        Assert.Contains(result.Warnings, w => w.Id == "planes-left-out");
    }
}
