using PostFrame.Engine.Heat;
using Xunit;

namespace PostFrame.EngineTests.Heat;

/// <summary>
/// The own part of the ASHRAE basis: hc between and beyond the printed conditions follows one curve
/// Nu(Ra) per direction. Each of the 84 printed sets (ASHRAE HoF 2021 (SI) ch. 26 Table 3) is left
/// out in turn and told from all others; what comes out is held against the printed set.
/// </summary>
public sealed class ConvectionCurveTests
{
    /// <summary>What the curve is off by at most so far beyond what it was made from.</summary>
    private const double MostBeyond = 0.065;

    private static readonly double[] Emittances = [0.03, 0.05, 0.2, 0.5, 0.82];

    public static TheoryData<string, double, int> Sets()
    {
        var data = new TheoryData<string, double, int>();
        foreach (var row in AshraeConvection.Printed)
            for (var i = 0; i < AshraeConvection.Conditions.Length; i++)
                data.Add(row.Flow.ToString(), row.ThicknessMm, i);
        return data;
    }

    [Fact]
    public void All_84_printed_sets_are_left_out_in_turn() => Assert.Equal(84, Sets().Count);

    [Theory]
    [MemberData(nameof(Sets))]
    public void A_printed_set_left_out_is_told_from_the_others_within_three_and_a_half_percent(
        string direction, double thicknessMm, int left)
    {
        var flow = Enum.Parse<HeatFlow>(direction);
        var row = AshraeConvection.Printed.Single(
            r => r.Flow == flow && r.ThicknessMm == thicknessMm);
        var others = AshraeConvection.Knots(row).Where((_, i) => i != left);
        var pooled = AshraeConvection.Printed
            .Where(r => r.Flow == flow && r.ThicknessMm != thicknessMm)
            .SelectMany(AshraeConvection.Knots).Concat(others);
        var (mean, difference) = AshraeConvection.Conditions[left];
        var told = NusseltCurve.Through(thicknessMm, others).At(
                Air.Rayleigh(thicknessMm, mean, difference), NusseltCurve.Through(0, pooled))
            * Air.Conductivity(mean) / (thicknessMm / 1000);
        foreach (var emittance in Emittances)
        {
            var radiation = emittance * 0.227 * Math.Pow((mean + 273) / 100, 3);
            var (printed, predicted) = (1 / (row.Hc[left] + radiation), 1 / (told + radiation));
            Assert.InRange(predicted / printed, 1 - 0.035, 1 + 0.035);
        }
    }

    // A harder question, as an answer beyond the table is asked: both sets of the larger
    // differences are left out and told from the two at 5.6 K, three to nine times further in
    // Rayleigh number, with the shape that the other thicknesses have there.
    [Theory]
    [MemberData(nameof(Rows))]
    public void The_larger_differences_are_told_from_the_smaller_ones(
        string direction, double thicknessMm)
    {
        var flow = Enum.Parse<HeatFlow>(direction);
        var row = AshraeConvection.Printed.Single(
            r => r.Flow == flow && r.ThicknessMm == thicknessMm);
        var small = AshraeConvection.Knots(row).Take(2).ToList();
        var pooled = AshraeConvection.Printed
            .Where(r => r.Flow == flow && r.ThicknessMm != thicknessMm)
            .SelectMany(AshraeConvection.Knots).Concat(small);
        for (var left = 2; left < 4; left++)
        {
            var (mean, difference) = AshraeConvection.Conditions[left];
            var told = NusseltCurve.Through(thicknessMm, small).At(
                    Air.Rayleigh(thicknessMm, mean, difference), NusseltCurve.Through(0, pooled))
                * Air.Conductivity(mean) / (thicknessMm / 1000);
            foreach (var emittance in Emittances)
            {
                var radiation = emittance * 0.227 * Math.Pow((mean + 273) / 100, 3);
                var ratio = (row.Hc[left] + radiation) / (told + radiation);
                Assert.InRange(ratio, 1 - MostBeyond, 1 + MostBeyond);
            }
        }
    }

    public static TheoryData<string, double> Rows()
    {
        var data = new TheoryData<string, double>();
        foreach (var row in AshraeConvection.Printed)
            data.Add(row.Flow.ToString(), row.ThicknessMm);
        return data;
    }

    // Beyond the printed conditions: the convection of air does not fall as the difference grows,
    // and is at least the conduction of still air (Nu 1), however small the difference.
    [Theory]
    [InlineData(HeatFlow.Up)]
    [InlineData(HeatFlow.Horizontal)]
    [InlineData(HeatFlow.Down)]
    public void Beyond_the_table_convection_grows_with_the_difference_from_still_air(HeatFlow flow)
    {
        foreach (var mm in (double[])[13, 20, 30, 40, 65, 90, 120, 143])
            foreach (var mean in (double[])[-40, -10, 10, 50])
            {
                var still = Air.Conductivity(mean) / (mm / 1000);
                var last = 0.0;
                foreach (var difference in (double[])[0.1, 1, 3, 5.6, 10, 16.7, 25, 40, 60])
                {
                    var hc = AshraeConvection.Coefficient(flow, mm, mean, difference);
                    Assert.True(hc >= 0.999 * still, $"{mm} mm, {mean} °C, {difference} K");
                    Assert.True(hc >= 0.98 * last, $"{mm} mm, {mean} °C, {difference} K");
                    last = hc;
                }
            }
    }
}
