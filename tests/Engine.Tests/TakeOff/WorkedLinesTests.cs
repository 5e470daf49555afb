using PostFrame.Engine;
using PostFrame.Engine.Buildings;
using PostFrame.Engine.Quantities;
using PostFrame.Engine.TakeOff;
using Xunit;
using static PostFrame.EngineTests.TakeOff.Ask;

namespace PostFrame.EngineTests.TakeOff;

/// <summary>
/// Worked lines of takeoff.md section 2 that no other test of this folder holds, each with its
/// section number.
/// </summary>
public sealed class WorkedLinesTests
{
    private static SizingInput Barn(RoofInput roof, params string[] planes) =>
        Job(360, 480, 120, roof, Cover(48, planes));

    [Fact]
    public void A_rounded_slope_factor_would_cross_a_rounding_step_2_1()
    {
        // 6:12 over 60 ft: 720·√1.25 = 804.984 in, 720·1.118 = 804.96. A job whose exact length
        // is a sixteenth and a hair above a step is cut a step longer than the rounded k has it.
        var allowances = 6 - (720 * Math.Sqrt(1.25) - 804) + 0.07;
        var piece = Job(1440, 480, 120, Gable(6), Roof(48, RoofLayout.EaveToRidge))
            .WithPractice(p => p with { EaveTuck = In(allowances), RidgeLap = In(0) })
            .Sized().PieceAt("RA-01");
        Assert.Equal(In(816), piece.Cut);
        Assert.Equal(In(810), In(720 * 1.118 + allowances).RoundedUpTo(In(6), In(0.0625)));
    }

    [Theory]
    [InlineData(0, 360)]
    [InlineData(1.5, 363)]
    public void Flush_girts_add_nothing_to_the_width_outside_the_posts_2_2(
        double girts, double width)
    {
        var job = Barn(Gable(4), Walls).With(b => b with
        {
            WidthBasis = WidthBasis.OutsideOfPosts,
            GirtThickness = In(girts),
        });
        Assert.Equal(In(width), job.Sized().Building.Width);
    }

    [Fact]
    public void Bypass_girts_lengthen_the_slope_by_1_58_in_inside_the_eave_allowance_2_2()
    {
        var more = S(363) - S(360);
        Assert.Equal(1.58, more, 0.005);
        Assert.True(more < 6);

        static double S(double width) =>
            Job(width, 480, 120, Gable(4), Roof(48, RoofLayout.EaveToRidge))
                .Sized().PieceAt("RA-01").Exact.TotalInches - 12;
    }

    [Fact]
    public void Recessed_purlins_make_every_wall_piece_6_in_shorter_2_2()
    {
        var (onTop, recessed) = (Cuts(5.5), Cuts(0));
        Assert.Equal(onTop.Select(c => c - In(6)), recessed);

        static Length[] Cuts(double purlin) => [.. Barn(Gable(4), "sidewallA", "sidewallB")
            .With(b => b with
            {
                EaveHeightDatum = EaveHeightDatum.Bearing,
                HeelHeight = In(6),
                PurlinDepth = In(purlin),
                GirtThickness = In(1.5),
            }).Sized().Pieces.Select(p => p.Cut)];
    }

    [Fact]
    public void A_slope_in_degrees_in_percent_or_in_12_is_one_slope_2_2()
    {
        // x = 12·tan θ and x = 12·p/100: 4:12 is atan(1/3) and 33⅓ %.
        var x = Exact(Pitch(4));
        Assert.Equal(x, Exact(Slope.FromDegrees(Math.Atan(1 / 3.0) * 180 / Math.PI)), 1e-6);
        Assert.Equal(x, Exact(Slope.FromPercent(100 / 3.0)), 1e-6);

        static double Exact(Slope slope) => Barn(
            new() { Form = RoofForm.Gable, Slope = slope }, "endwall1")
            .Sized().PieceAt("E1-03").Exact.TotalInches;
    }

    public static TheoryData<string> Forms => ["gable", "offset ridge", "monoslope", "gambrel",
        "half octagon", "double pitch", "flush lean-to on side B"];

    [Theory, MemberData(nameof(Forms))]
    public void The_profile_points_are_those_of_the_table_of_forms_2_3(string form)
    {
        var (job, points) = Table(form);
        var profile = job.Sized().Building.Profile;
        Assert.Equal(points.Length, profile.Count);
        foreach (var (expected, actual) in points.Zip(profile))
        {
            Assert.Equal(expected.U, actual.Across.TotalInches, 0.0005);
            Assert.Equal(expected.Z, actual.Up.TotalInches, 0.0005);
        }
    }

    private static (SizingInput Job, (double U, double Z)[] Points) Table(string form)
    {
        const double h = 120, b = 360;
        return form switch
        {
            "gable" => (Barn(Gable(5), Walls), [(0, h), (b / 2, h + b * 5 / 24), (b, h)]),
            "offset ridge" => (Barn(new()
            {
                Form = RoofForm.OffsetRidge,
                RidgeFromSidewallA = In(100),
                SlopeA = Pitch(6),
                SlopeB = Pitch(3),
            }, Walls), [(0, h), (100, h + 50), (b, h + 50 - 260 * 3 / 12.0)]),
            "monoslope" => (Barn(new() { Form = RoofForm.Monoslope, Slope = Pitch(3) }, Walls),
                [(0, h), (b, h + b * 3 / 12)]),
            "gambrel" => (Barn(new()
            {
                Form = RoofForm.Gambrel,
                LowerSlope = Pitch(18),
                LowerRun = In(60),
                UpperSlope = Pitch(5),
            }, Walls), [(0, h), (60, h + 90), (180, h + 140), (300, h + 90), (b, h)]),
            "half octagon" => (Barn(
                new() { Form = RoofForm.Gambrel, HalfOctagon = true }, Walls),
                [(0, h), (0.146447 * b, h + 0.353553 * b), (b / 2, h + 0.5 * b),
                    (b - 0.146447 * b, h + 0.353553 * b), (b, h)]),
            "double pitch" => (Barn(new()
            {
                Form = RoofForm.DoublePitch,
                LowerSlope = Pitch(2),
                LowerRun = In(120),
                UpperSlope = Pitch(6),
            }, Walls), [(0, h), (120, h + 20), (180, h + 50), (b, h)]),
            _ => (Barn(Gable(4), "sidewallA").With(x => x with
            {
                LeanTos =
                [
                    new()
                    {
                        Side = BuildingSide.B, Width = In(96), Slope = Pitch(2),
                        Inside = LeanToInside.Open,
                    },
                ],
            }), [(0, h), (b / 2, h + b * 4 / 24), (b, h), (b + 96, h - 96 * 2 / 12)]),
        };
    }

    [Fact]
    public void Beside_the_ridge_strip_of_the_worked_offset_ridge_z_is_192_and_202_2_3()
    {
        var pieces = Barn(new()
        {
            Form = RoofForm.OffsetRidge,
            RidgeFromSidewallA = In(120),
            SlopeA = Pitch(9),
            SlopeB = Pitch(4),
        }, "endwall1").Sized();
        Assert.Equal(192, pieces.PieceAt("E1-02").Top.TotalInches, 1e-6);
        Assert.Equal(210, pieces.PieceAt("E1-03").Top.TotalInches, 1e-6);
        Assert.Equal(202, pieces.PieceAt("E1-04").Top.TotalInches, 1e-6);
    }

    [Fact]
    public void The_worked_double_pitch_has_its_break_at_128_and_its_two_lengths_2_3()
    {
        var result = Job(528, 480, 108, new()
        {
            Form = RoofForm.DoublePitch,
            LowerSlope = Pitch(2),
            LowerRun = In(120),
            UpperSlope = Pitch(6),
            RidgeFromSidewallA = In(264),
        }, Cover(48, "roofA", "endwall1")).Sized();
        Assert.Equal(128, result.Building.Profile[1].Up.TotalInches, 1e-6);
        Assert.Equal([121.655, 160.997], result.PieceAt("RA-01").Why
            .Where(w => w.Term == "slopeLength").Select(w => Math.Round(w.Value.TotalInches, 3)));
        Assert.Equal(124, result.PieceAt("E1-02").Top.TotalInches, 1e-6);
    }

    [Theory]
    [InlineData(42, PieceLay.Across)]
    [InlineData(42.0625, PieceLay.Upright)]
    public void A_band_lies_along_the_wall_when_it_and_its_folds_are_no_higher_than_a_roll_2_3(
        double drop, PieceLay lay)
    {
        // The worked band of 12 in needs 12 + 3 + 3 = 18 in; one of 42 in just a 48 in roll.
        var pieces = Job(384, 576, 168, Gable(4), Cover(48, "sidewallA")).With(b => b with
        {
            LeanTos =
            [
                new()
                {
                    Side = BuildingSide.A, Width = In(144), Slope = Pitch(2), Drop = In(drop),
                    Inside = LeanToInside.Open,
                },
            ],
        }).Sized().Pieces;
        Assert.All(pieces, p => Assert.Equal(lay, p.Lay));
    }

    [Fact]
    public void Any_vent_makes_all_positions_pairs_unless_asked_2_4()
    {
        var job = Job(360, 480, 120, Gable(4, RidgeKind.Vented) with
        {
            VentFrom = In(100),
            VentTo = In(192),
        }, Roof(48, RoofLayout.Auto));
        Assert.Equal(["roofA", "roofB"], job.Sized().Planes.Select(p => p.Plane));
    }

    [Theory]
    [InlineData(539.9375, "roof")]
    [InlineData(540.0625, "roofA")]
    public void Runs_over_the_ridge_beyond_45_ft_are_laid_as_pairs_2_4(double exact, string plane)
    {
        // Within the "about 40–50 ft" of 2.4; 540 in is two slopes and two tucks of 6 in.
        var width = (exact - 12) / 1.0540925533894598;
        Assert.Equal(plane, Job(width, 480, 120, Gable(4), Roof(36, RoofLayout.Auto))
            .Sized().Planes[0].Plane);
    }

    [Fact]
    public void Both_edges_of_the_ridge_strip_lie_lower_than_what_it_must_reach_2_7()
    {
        var result = Barn(Gable(4), "endwall1").WithPractice(p => p with { RoundUpTo = In(1) })
            .Sized();
        var byEdges = Math.Max(120 + 144 / 3.0, 120 + (360 - 192) / 3.0) + 6;
        Assert.Equal(182, byEdges);
        Assert.Equal(In(byEdges + 4), result.PieceAt("E1-04").Cut);
    }

    [Theory]
    [InlineData(1200, 11)]
    [InlineData(1219.2, 10)]
    public void A_roll_of_1200_mm_is_not_one_of_48_in_2_8(double widthMm, int strips)
    {
        // 40 ft is 12,192 mm: ten strips of 48 in, but 10.16 of 1,200 mm.
        var job = WorkedJobs.W8.With(b => b with { Length = Mm(12_192) }) with
        {
            Insulation =
            [
                new()
                {
                    Planes = ["sidewallA"], Product = "blanket-3-white", RollWidth = Mm(widthMm),
                },
            ],
        };
        Assert.Equal(strips, job.Sized().PlaneAt("sidewallA").Strips);
    }
}
