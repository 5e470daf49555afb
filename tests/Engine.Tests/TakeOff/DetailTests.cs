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

    [Theory]
    [InlineData(1, "endwall2", true)]
    [InlineData(1, "endwall1", false)]
    [InlineData(2, "endwall1", true)]
    [InlineData(2, "endwall2", false)]
    [InlineData(1, "partition", false)]
    public void To_cover_the_endwall_of_the_cold_part_is_told(int insulated, string wall, bool told)
    {
        var warnings = Job(360, 480, 120, Gable(4), Cover(48, wall)).With(b => b with
        {
            Partition = new() { FromEndwall1 = In(240), InsulatedEndwall = insulated },
        }).Sized().Warnings;
        Assert.Equal(told, warnings.Any(w => w.Id == "beyond-partition" && w.Plane == wall));
    }

    [Fact]
    public void An_opening_in_the_cold_part_changes_nothing()
    {
        var job = Job(360, 480, 120, Gable(4), Cover(48, "sidewallA")).With(b => b with
        {
            Partition = new() { FromEndwall1 = In(240) },
        });
        var cold = job.WithOpenings(
            Opening("sidewallA", OpeningKind.OverheadDoor, 120, 96, 300)).Sized();
        Assert.Equal(job.Sized().Pieces.Select(p => p.Cut), cold.Pieces.Select(p => p.Cut));
        Assert.Empty(cold.PlaneAt("sidewallA").Openings);
        Assert.Equal(
            job.Sized().Accessories.Select(a => (a.Id, a.Quantity)),
            cold.Accessories.Select(a => (a.Id, a.Quantity)));
        Assert.DoesNotContain(cold.Warnings, w => w.Id == "opening-saves-nothing");
    }

    [Theory]
    [InlineData(LeanToInside.Open, 12, true)]
    [InlineData(LeanToInside.Separate, 0, true)]
    [InlineData(LeanToInside.Open, 0, false)]
    public void A_partition_crosses_a_lean_to_of_its_own_run_as_well(
        LeanToInside inside, double drop, bool own)
    {
        var job = Job(384, 576, 168, Gable(4), Cover(48, "partition")).With(b => b with
        {
            Partition = new() { FromEndwall1 = In(240) },
            LeanTos =
            [
                new()
                {
                    Side = BuildingSide.A, Width = In(144), Slope = Pitch(2), Drop = In(drop),
                    Inside = inside,
                },
            ],
        });
        Assert.Equal(In(own ? 384 : 384 + 144), job.Sized().PlaneAt("partition").Run);
        var lean = job with { Insulation = [Cover(48, "leanPartitionA", "leanEndwallA1")] };
        Assert.Equal(own, Sizing.Size(lean).Result is not null);
        if (own)
            Assert.Equal(
                Cuts(lean, "leanEndwallA1"), Cuts(lean, "leanPartitionA"));

        static Length[] Cuts(SizingInput job, string plane) =>
            [.. job.Sized().Pieces.Where(p => p.Plane == plane).Select(p => p.Cut)];
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
