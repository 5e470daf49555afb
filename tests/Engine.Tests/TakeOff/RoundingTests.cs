using PostFrame.Engine;
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
