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
}
