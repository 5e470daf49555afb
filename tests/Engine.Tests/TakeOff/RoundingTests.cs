using PostFrame.Engine;
using PostFrame.Engine.Buildings;
using PostFrame.Engine.Quantities;
using Xunit;
using static PostFrame.EngineTests.TakeOff.Ask;

namespace PostFrame.EngineTests.TakeOff;

/// <summary>Source: takeoff.md 2.8: round once, up; within 1/16 in above a step is that step.
/// </summary>
public sealed class RoundingTests
{
    private const long Sixteenth = 1_587_500;

    public static TheoryData<long, long> StepsNm()
    {
        var data = new TheoryData<long, long>();
        foreach (var inches in new[] { 0.25, 0.5, 1, 2, 3, 6, 12, 24 })
            data.Add(In(inches).Nanometres, Sixteenth);
        foreach (var mm in new[] { 10.0, 25, 50, 100, 250 })
            data.Add(Mm(mm).Nanometres, Mm(1.5).Nanometres);
        return data;
    }

    [Theory, MemberData(nameof(StepsNm))]
    public void A_sixteenth_below_at_and_above_a_step_is_that_step_and_a_hair_more_is_the_next(
        long stepNm, long toleranceNm)
    {
        var (step, tolerance) =
            (Length.FromNanometres(stepNm), Length.FromNanometres(toleranceNm));
        foreach (var count in new[] { 1L, 2, 7, 53, 400 })
        {
            var on = step * count;
            foreach (var offset in new[] { -toleranceNm, 0, toleranceNm })
                Assert.Equal(on, (on + Length.FromNanometres(offset)).RoundedUpTo(step, tolerance));
            var above = on + Length.FromNanometres(toleranceNm + 1);
            Assert.Equal(step * (count + 1), above.RoundedUpTo(step, tolerance));
        }
    }

    [Theory, MemberData(nameof(StepsNm))]
    public void A_wall_a_sixteenth_about_a_step_is_cut_to_it(long stepNm, long toleranceNm)
    {
        var metric = stepNm % Sixteenth != 0;
        var step = Length.FromNanometres(stepNm);
        var on = step * ((In(126).Nanometres / stepNm) + 1);
        foreach (var (offset, steps) in new[]
        {
            (-toleranceNm, 0), (0L, 0), (toleranceNm, 0), (toleranceNm + 1, 1),
        })
        {
            var allowances = metric ? Mm(150) : In(6);
            var job = Job(360, 480, 0, Gable(4), Cover(48, "sidewallA")) with { Metric = metric };
            var piece = job.With(b => b with
            {
                EaveHeight = on - allowances + Length.FromNanometres(offset),
            }).WithPractice(_ => new() { RoundUpTo = step }).Sized().PieceAt("SA-01");
            Assert.Equal(on + step * steps, piece.Cut);
        }
    }

    /// <summary>
    /// 154 in at 1:12, then 8:12: at 227 in the roof is 154/12 + 73·8/12 = 61.5 in above the eave
    /// of 166.75 in. The break's own height, 12.8333… in, is no whole number of nanometres; the sum
    /// is. Strips cover 46 in from 3 in before the corner: the fifth ends at 227 in. From a stem
    /// wall of 25.6875 in it is 228.25 − 25.6875 + 6 = 208.5625 in, 1/16 in above a step.
    /// </summary>
    [Theory]
    [InlineData(25.6875, 208.5)]
    [InlineData(25.6874, 208.75)]
    public void An_endwall_strip_exactly_a_sixteenth_above_a_step_is_that_step(
        double stemWall, double cut)
    {
        RoofInput roof = new()
        {
            Form = RoofForm.DoublePitch,
            BrokenSide = BrokenSide.A,
            LowerSlope = Pitch(1),
            LowerRun = In(154),
            UpperSlope = Pitch(8),
            EaveHeightB = In(166.75),
        };
        var piece = Job(519.9375, 480, 166.75, roof,
            Cover(48, "endwall1") with { Product = "bubble-foil" })
            .With(b => b with { StemWallHeight = In(stemWall) })
            .WithPractice(_ => new() { RoundUpTo = In(0.25), CornerWrap = In(3) })
            .Sized().PieceAt("E1-05");
        Assert.Equal((In(227), In(cut)), (piece.To, piece.Cut));
    }

    [Theory]
    [InlineData(318.0000000001, 318)]
    [InlineData(174.03125, 174)]
    [InlineData(174.0626, 180)]
    [InlineData(391.4733, 396)]
    [InlineData(264.9822, 270)]
    public void The_worked_lengths_of_2_8_and_7_round_up_to_6_in(double exact, double cut) =>
        Assert.Equal(In(cut), In(exact).RoundedUpTo(In(6), In(0.0625)));

    [Fact]
    public void At_1_in_rounding_the_ridge_strip_of_2_7_is_not_4_in_short_at_the_peak()
    {
        var piece = WorkedJobs.W1.WithPractice(_ => new() { RoundUpTo = In(1) })
            .Sized().PieceAt("E1-04");
        Assert.Equal(In(186), piece.Cut);
    }

    [Fact]
    public void A_metric_job_is_computed_in_millimetres_and_never_through_inches()
    {
        var piece = WorkedJobs.W8.Sized().PieceAt("SA-01");
        Assert.Equal(4_350_000_000, piece.Exact.Nanometres);
        Assert.Equal(4_400_000_000, piece.Cut.Nanometres);
    }
}
