using PostFrame.Engine;
using PostFrame.Engine.Buildings;
using PostFrame.Engine.Quantities;
using PostFrame.Engine.TakeOff;
using Xunit;
using static PostFrame.EngineTests.TakeOff.Ask;

namespace PostFrame.EngineTests.TakeOff;

/// <summary>Source: takeoff.md 2.3.</summary>
public sealed class ProfileTests
{
    private static readonly RoofInput Offset = new()
    {
        Form = RoofForm.OffsetRidge,
        RidgeFromSidewallA = In(120),
        SlopeA = Pitch(9),
        SlopeB = Pitch(4),
    };

    private static readonly RoofInput Flared = new()
    {
        Form = RoofForm.DoublePitch,
        LowerSlope = Pitch(2),
        LowerRun = In(120),
        UpperSlope = Pitch(6),
        RidgeFromSidewallA = In(264),
    };

    [Fact]
    public void The_offset_ridge_is_the_worked_one()
    {
        var result = Job(360, 480, 120, Offset, Cover(48, [.. Walls, "roofA", "roofB"]))
            .WithPractice(_ => new() { EaveTuck = In(0), RidgeLap = In(0) }).Sized();
        Assert.Equal(210, result.Building.RidgeHeight.TotalInches, 1e-6);
        Assert.Equal(150, result.PieceAt("RA-01").Exact.TotalInches, 1e-6);
        Assert.Equal(252.982, result.PieceAt("RB-01").Exact.TotalInches, 0.0006);
        Assert.Equal(130, result.PieceAt("SB-01").Exact.TotalInches - 6, 1e-6);
    }

    [Fact]
    public void The_strip_that_holds_the_ridge_is_as_high_as_the_ridge()
    {
        var result = Job(360, 480, 120, Offset, Cover(48, "endwall1")).Sized();
        var strip = result.PieceAt("E1-03");
        Assert.Equal((In(96), In(144)), (strip.From, strip.To));
        Assert.Equal(In(210), strip.Top);
    }

    // By hand, width 360, eave A 120, lower part 2:12 over 96, upper 6:12. Broken on B, ridge at
    // 180: slope A of 3:12 tops out at 165, and 165 − 84/2 − 96/6 = 107. By the ridge height 170:
    // 112. Broken on both, ridge at 200: 120 + 16 + 104/2 = 188, and 188 − 64/2 − 16 = 140.
    [Theory]
    [InlineData(BrokenSide.B, 180, 3.0, null, 107)]
    [InlineData(BrokenSide.B, 180, null, 170.0, 112)]
    [InlineData(BrokenSide.Both, 200, null, null, 140)]
    public void Eave_B_of_a_double_pitch_follows_where_the_rest_tells_it(
        BrokenSide broken, int ridgeAt, double? slopeA, double? ridge, int eaveB)
    {
        var roof = new RoofInput
        {
            Form = RoofForm.DoublePitch,
            BrokenSide = broken,
            LowerSlope = Pitch(2),
            LowerRun = In(96),
            UpperSlope = Pitch(6),
            RidgeFromSidewallA = In(ridgeAt),
            SlopeA = slopeA is { } x ? Pitch(x) : null,
            RidgeHeight = ridge is { } up ? In(up) : null,
        };
        var result = Job(360, 480, 120, roof, Cover(48, Walls)).Sized();
        Assert.Equal(eaveB + 6, result.PieceAt("SB-01").Exact.TotalInches, 1e-6);
        Assert.Equal($"{eaveB}", result.Assumptions.Single(a => a.Id == "eaveHeightB").Value);
    }

    [Fact]
    public void A_ridge_and_an_eave_that_nobody_placed_are_told()
    {
        var told = Job(
            528, 480, 120, Flared with { RidgeFromSidewallA = null }, Cover(48, Walls))
            .Sized().Assumptions.ToDictionary(a => a.Id, a => a.Value);
        Assert.Equal(("264", "120"), (told["ridgeFromSidewallA"], told["eaveHeightB"]));
    }

    [Fact]
    public void Eave_B_and_ridge_place_may_be_left_to_the_rest()
    {
        var byEave = Offset with { SlopeB = null, EaveHeightB = In(130) };
        var byBoth = Offset with { RidgeFromSidewallA = null, EaveHeightB = In(130) };
        var whole = Job(360, 480, 120, Offset, Cover(48, Walls)).Sized();
        foreach (var roof in new[] { byEave, byBoth })
            Assert.Equal(
                whole.Pieces.Select(p => p.Cut),
                Job(360, 480, 120, roof, Cover(48, Walls)).Sized().Pieces.Select(p => p.Cut));
    }

    [Theory]
    [InlineData(130.12, true)]
    [InlineData(130.13, false)]
    public void What_is_told_twice_closes_within_an_eighth_of_an_inch(double eaveB, bool closes)
    {
        var outcome = Sizing.Size(Job(
            360, 480, 120, Offset with { EaveHeightB = In(eaveB) }, Cover(48, Walls)));
        Assert.Equal(closes, outcome.Result is not null);
        if (!closes)
        {
            var violation = Assert.Single(outcome.Violations);
            Assert.Equal("/building/roof/eaveHeightB", violation.Path);
            Assert.Contains(
                "210 in by side A (eave 120 in, 9:12 over 120 in), at 210.13 in by side B "
                + "(eave 130.13 in, 4:12 over 240 in)", violation.Message,
                StringComparison.Ordinal);
        }
    }

    [Fact]
    public void The_flared_double_pitch_is_the_worked_one()
    {
        var result = Job(528, 480, 108, Flared, Cover(48, "roofA", "endwall1")).Sized();
        Assert.Equal(200, result.Building.RidgeHeight.TotalInches, 1e-6);
        Assert.Equal(282.652, result.PieceAt("RA-01").Exact.TotalInches - 12, 0.0006);
        Assert.Equal(140, result.PieceAt("E1-03").Top.TotalInches, 1e-6);
    }

    [Fact]
    public void A_concave_profile_takes_its_highest_point_not_its_middle()
    {
        var result = Job(528, 480, 108, Flared, Cover(72, "endwall1")).Sized();
        Assert.Equal(128 + 0.5 * 24, result.PieceAt("E1-02").Top.TotalInches, 1e-6);
    }

    [Fact]
    public void The_half_octagon_has_four_equal_chords_of_the_stated_length()
    {
        var result = Job(
            400, 480, 120, new() { Form = RoofForm.Gambrel, HalfOctagon = true },
            new InsulationInput
            {
                Planes = ["roof"],
                Product = "blanket-3-white",
                RollWidth = In(48),
                BreakLayout = BreakLayout.Split,
            }).Sized();
        Assert.Equal(["roofA1", "roofA2", "roofB1", "roofB2"], result.Planes.Select(p => p.Plane));
        foreach (var plane in result.Planes)
            Assert.Equal(0.382683 * 400, plane.Outline.Max(p => p.Up.TotalInches), 0.0003);
        Assert.Equal(120 + (0.353553 + 0.146447) * 400, result.Building.RidgeHeight.TotalInches,
            0.001);
    }

    [Theory]
    [InlineData(RoofForm.Gable)]
    [InlineData(RoofForm.OffsetRidge)]
    [InlineData(RoofForm.Gambrel)]
    [InlineData(RoofForm.DoublePitch)]
    public void Every_form_is_the_same_job_as_its_own_profile_point_by_point(RoofForm form)
    {
        var roof = form switch
        {
            RoofForm.Gable => Gable(4),
            RoofForm.OffsetRidge => Offset,
            RoofForm.DoublePitch => Flared,
            _ => WorkedJobs.W4.Building!.Roof!,
        };
        var job = Job(528, 480, 120, roof, Cover(60, Walls),
            Ask.Roof(60, RoofLayout.EaveToRidge));
        var named = job.Sized();
        var points = named.Building.Profile.Select(p =>
            new ProfilePointInput { Across = p.Across, Up = p.Up });
        var drawn = job.With(b => b with
        {
            Roof = new() { Form = RoofForm.Profile, Points = [.. points] },
        }).Sized();
        Assert.Equal(
            named.Pieces.Select(p => (p.Mark, p.Exact, p.Cut)),
            drawn.Pieces.Select(p => (p.Mark, p.Exact, p.Cut)));
    }
}
