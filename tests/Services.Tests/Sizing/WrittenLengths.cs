using PostFrame.Problems;
using Xunit;

namespace PostFrame.ServicesTests.Sizing;

/// <summary>
/// The international inch is exactly 25.4 mm and the foot exactly 304.8 mm (NIST SP 811, 2008
/// edition, appendix B.8), so every expected value here is exact.
/// </summary>
public sealed class WrittenLengths
{
    [Theory]
    [InlineData("10 ft", 3_048_000_000)]
    [InlineData("10'", 3_048_000_000)]
    [InlineData("10 feet", 3_048_000_000)]
    [InlineData("1 foot", 304_800_000)]
    [InlineData("126 in", 3_200_400_000)]
    [InlineData("126\"", 3_200_400_000)]
    [InlineData("126″", 3_200_400_000)]
    [InlineData("126''", 3_200_400_000)]
    [InlineData("12' 6 1/2\"", 3_822_700_000)]
    [InlineData("12'-6 1/2\"", 3_822_700_000)]
    [InlineData("12' - 6-1/2\"", 3_822_700_000)]
    [InlineData("12ft6.5in", 3_822_700_000)]
    [InlineData("12 ft 6½ in", 3_822_700_000)]
    [InlineData("12' 6", 3_810_000_000)]
    [InlineData("1/64 in", 396_875)]
    [InlineData("63/64\"", 25_003_125)]
    [InlineData("12.5 FT", 3_810_000_000)]
    [InlineData(".5 in", 12_700_000)]
    [InlineData("4.2 m", 4_200_000_000)]
    [InlineData("420 cm", 4_200_000_000)]
    [InlineData("4200 mm", 4_200_000_000)]
    [InlineData("4200mm", 4_200_000_000)]
    [InlineData("4.2 metres", 4_200_000_000)]
    [InlineData("5 millimeters", 5_000_000)]
    [InlineData("-3 ft", -914_400_000)]
    [InlineData("0 in", 0)]
    public void Are_read_to_the_exact_nanometre(string text, long nanometres)
    {
        var reading = LengthText.Read(text);

        Assert.Null(reading.Rule);
        Assert.Equal(nanometres, reading.Length.Nanometres);
    }

    [Theory]
    [InlineData("4.2 m", true)]
    [InlineData("4.2 ft", false)]
    public void Remember_whether_they_were_metric(string text, bool isMetric) =>
        Assert.Equal(isMetric, LengthText.Read(text).IsMetric);

    [Theory]
    [InlineData("10", "unit-missing")]
    [InlineData("12 1/2", "unit-missing")]
    [InlineData("", "length-format")]
    [InlineData("ten feet", "length-format")]
    [InlineData("10 yd", "length-format")]
    [InlineData("１０ ft", "length-format")]
    [InlineData("٣ ft", "length-format")]
    [InlineData("٣", "length-format")]
    [InlineData("4,2 m", "length-format")]
    [InlineData("1e3 mm", "length-format")]
    [InlineData("NaN ft", "length-format")]
    [InlineData("Infinity m", "length-format")]
    [InlineData("6 5/4 in", "length-format")]
    [InlineData("6 1/0 in", "length-format")]
    [InlineData("6 1/100 in", "length-format")]
    [InlineData("6.5 1/2 in", "length-format")]
    [InlineData("10.5' 6\"", "length-format")]
    [InlineData("12' 14\"", "inches-after-feet")]
    [InlineData("999999999 m", "length-too-large")]
    [InlineData("10 ft 3 m", "length-format")]
    [InlineData("4 m 20 cm", "length-format")]
    [InlineData("99999999999999999999 ft", "length-format")]
    [InlineData("4.1234567891 m", "too-fine")]
    [InlineData("10' 6.12345678912\"", "too-fine")]
    [InlineData("4.123456789123456789123456789123456789123 m", "too-fine")]
    [InlineData("4.1234567891", "unit-missing")]
    public void Are_refused_by_rule_rather_than_guessed(string text, string rule) =>
        Assert.Equal(rule, LengthText.Read(text).Rule);

    [Theory]
    [InlineData("4:12", 4)]
    [InlineData("4/12", 4)]
    [InlineData("4 in 12", 4)]
    [InlineData("4 1/2:12", 4.5)]
    [InlineData("0.25:12", 0.25)]
    [InlineData("25 %", 3)]
    [InlineData("100%", 12)]
    [InlineData("33.3333333%", 3.999999996)]
    [InlineData("45 deg", 12)]
    [InlineData("45°", 12)]
    [InlineData("-4:12", -4)]
    public void Slopes_are_read_as_rise_per_twelve(string text, double rise) =>
        Assert.Equal(rise, SlopeText.Read(text)!.Value.RisePer12, 1e-12);

    /// <summary>tan 15° = 2 − √3, exactly.</summary>
    [Fact]
    public void Fifteen_degrees_is_its_closed_form() =>
        Assert.Equal(
            12 * (2 - Math.Sqrt(3)), SlopeText.Read("15 deg")!.Value.RisePer12, 1e-12);

    [Theory]
    [InlineData("4.123456789:12", false)]
    [InlineData("4.1234567891:12", true)]
    [InlineData("18.4349488229 deg", true)]
    [InlineData("33.33333333333333333333333333333 %", true)]
    [InlineData("4.1234567891", false)]
    [InlineData("steep.1234567891", false)]
    public void Slopes_finer_than_nine_decimals_are_told_as_that(string text, bool tooFine) =>
        Assert.Equal(tooFine, SlopeText.IsTooFine(text));

    [Theory]
    [InlineData("4")]
    [InlineData("4:10")]
    [InlineData("90 deg")]
    [InlineData("4 1/0:12")]
    [InlineData("steep")]
    [InlineData("1e2 %")]
    public void Slopes_that_could_mean_two_things_are_refused(string text) =>
        Assert.Null(SlopeText.Read(text));
}
