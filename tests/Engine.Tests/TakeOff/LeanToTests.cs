using PostFrame.Engine;
using PostFrame.Engine.Buildings;
using PostFrame.Engine.TakeOff;
using Xunit;
using static PostFrame.EngineTests.TakeOff.Ask;

namespace PostFrame.EngineTests.TakeOff;

/// <summary>Source: takeoff.md 2.3, lean-tos and runs.</summary>
public sealed class LeanToTests
{
    private static SizingInput With(LeanToInside inside, double drop, params string[] planes) =>
        Job(384, 576, 168, Gable(4), Cover(48, planes)).With(b => b with
        {
            LeanTos =
            [
                new()
                {
                    Side = BuildingSide.A, Width = In(144), Slope = Pitch(2), Drop = In(drop),
                    Inside = inside,
                },
            ],
        });

    [Fact]
    public void The_dropped_lean_to_is_the_worked_one()
    {
        var result = With(
            LeanToInside.Open, 12, "leanRoofA", "leanSidewallA", "leanEndwallA1").Sized();
        Assert.Equal(132 + 6, result.PieceAt("LSA-01").Exact.TotalInches, 1e-6);
        Assert.Equal(145.986 + 12, result.PieceAt("LRA-01").Exact.TotalInches, 0.0006);
        Assert.Equal(156, result.PieceAt("LEA1-03").Top.TotalInches, 1e-6);
    }

    [Fact]
    public void The_band_left_above_it_is_one_strip_along_the_wall()
    {
        var piece = Assert.Single(With(LeanToInside.Open, 12, "sidewallA").Sized().Pieces);
        Assert.Equal(PieceLay.Across, piece.Lay);
        Assert.Equal(In(576), piece.Exact);
        Assert.Equal((In(156), In(168)), (piece.Bottom, piece.Top));
    }

    [Fact]
    public void A_band_that_a_roll_does_not_span_with_its_folds_hangs_upright()
    {
        var result = With(LeanToInside.Open, 48, "sidewallA").Sized();
        Assert.All(result.Pieces, p => Assert.Equal(PieceLay.Upright, p.Lay));
        Assert.All(result.Pieces, p => Assert.Equal(In(48 + 6), p.Exact));
    }

    [Fact]
    public void A_band_longer_than_a_roll_is_made_in_lapped_parts_that_fit_it()
    {
        var result = With(LeanToInside.Open, 12, "sidewallA")
            .With(b => b with { Length = In(2400) }).Sized();
        Assert.Equal(3, result.Pieces.Count);
        Assert.All(result.Pieces, p => Assert.True(p.Cut <= In(1194)));
        Assert.Equal(2400 + 2 * 6, result.Pieces.Sum(p => p.Exact.TotalInches), 1e-6);
    }

    [Fact]
    public void A_step_makes_separate_runs_so_that_no_lean_to_strip_takes_the_main_eave()
    {
        var result = With(LeanToInside.Open, 12, "endwall1", "leanEndwallA1").Sized();
        Assert.Equal(In(0), result.PieceAt("E1-01").From);
        Assert.Equal(168 + 16, result.PieceAt("E1-01").Top.TotalInches, 1e-6);
        Assert.Equal(3, result.Pieces.Count(p => p.Plane == "leanEndwallA1"));
    }

    [Theory]
    [InlineData(LeanToInside.Open, 0, false)]
    [InlineData(LeanToInside.Open, 12, true)]
    [InlineData(LeanToInside.Cold, 0, true)]
    [InlineData(LeanToInside.Separate, 0, true)]
    public void The_wall_between_is_there_unless_a_flush_lean_to_is_open(
        LeanToInside inside, double drop, bool wall)
    {
        var outcome = Sizing.Size(With(inside, drop, "sidewallA"));
        Assert.Equal(wall, outcome.Result is not null);
        if (!wall)
            Assert.Contains(outcome.Violations, v =>
                v.Path == "/insulation/0/planes/0" && v.Rule == "no-such-plane");
    }

    [Fact]
    public void A_cold_lean_to_leaves_the_main_sidewall_at_its_full_height()
    {
        var result = With(LeanToInside.Cold, 12, "sidewallA").Sized();
        Assert.All(result.Pieces, p => Assert.Equal(In(168 + 6), p.Exact));
    }

    [Fact]
    public void What_lies_inside_is_asked_and_never_guessed()
    {
        var job = With(LeanToInside.Cold, 0, "sidewallA").With(b => b with
        {
            LeanTos = [b.LeanTos![0] with { Inside = null }],
        });
        Assert.Contains(job.Refused(), v =>
            v.Path == "/building/leanTos/0/inside" && v.Rule == "missing");
    }

    /// <summary>A flush open lean-to along the last 32 ft of 48.</summary>
    private static SizingInput SetBack(params string[] planes) =>
        With(LeanToInside.Open, 0, planes).With(b => b with
        {
            LeanTos = [b.LeanTos![0] with { FromEndwall1 = In(192) }],
        });

    [Fact]
    public void A_set_back_lean_to_leaves_the_sidewall_beside_it()
    {
        var result = SetBack("sidewallA", "leanRoofA", "leanSidewallA").Sized();
        Assert.Equal(4, result.PlaneAt("sidewallA").Strips);
        Assert.Equal(192 * 168 / 144.0, result.PlaneAt("sidewallA").Net.TotalSquareFeet, 1e-6);
        Assert.Equal((8, 8), (
            result.PlaneAt("leanRoofA").Strips, result.PlaneAt("leanSidewallA").Strips));
    }

    [Fact]
    public void Only_the_endwall_it_reaches_is_one_run_with_it()
    {
        var result = SetBack("endwall1", "endwall2", "leanEndwallA1").Sized();
        Assert.Equal(In(384), result.PlaneAt("endwall1").Run);
        Assert.Equal(In(384 + 144), result.PlaneAt("endwall2").Run);
        Assert.Equal(3, result.PlaneAt("leanEndwallA1").Strips);
        Assert.Contains(SetBack("leanEndwallA2").Refused(), v => v.Rule == "no-such-plane");
    }

    [Fact]
    public void No_opening_fits_where_the_open_lean_to_left_no_wall()
    {
        var job = SetBack("sidewallA").WithOpenings(
            Opening("sidewallA", OpeningKind.WalkDoor, 36, 80, 20),
            Opening("sidewallA", OpeningKind.WalkDoor, 36, 80, 170));
        Assert.Equal(["/building/openings/1/fromStart"], job.Refused().Select(v => v.Path));
    }

    [Fact]
    public void Above_a_set_back_dropped_lean_to_the_band_is_a_plane_of_its_own()
    {
        var result = With(LeanToInside.Open, 12, "sidewallA", "sidewallABand").With(b => b with
        {
            LeanTos = [b.LeanTos![0] with { Length = In(384) }],
        }).Sized();
        Assert.Equal((In(0), In(384)), (
            result.PieceAt("SAB-01").From, result.PieceAt("SAB-01").To));
        Assert.Equal(4, result.PlaneAt("sidewallA").Strips);
        Assert.Equal(In(384), result.PieceAt("SA-01").From);
    }

    [Fact]
    public void A_lean_to_beyond_the_building_is_refused()
    {
        var job = With(LeanToInside.Open, 0, "leanRoofA").With(b => b with
        {
            LeanTos = [b.LeanTos![0] with { FromEndwall1 = In(300), Length = In(300) }],
        });
        Assert.Equal("/building/leanTos/0/length", Assert.Single(job.Refused()).Path);
    }

    [Theory]
    [InlineData(240, 1, 48)]
    [InlineData(240, 2, 336)]
    [InlineData(100, 2, 384)]
    public void A_partition_ends_the_lean_to_at_its_own_place(
        double partition, int insulated, double covered)
    {
        var result = SetBack("leanRoofA").With(b => b with
        {
            Partition = new() { FromEndwall1 = In(partition), InsulatedEndwall = insulated },
        }).Sized();
        Assert.Equal(In(covered), result.PlaneAt("leanRoofA").Run);
    }
}
