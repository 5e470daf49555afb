using PostFrame.Engine.Heat;
using PostFrame.Engine.Quantities;
using Xunit;

namespace PostFrame.EngineTests.Heat;

public sealed class CodeTests
{
    private const string Standard = "ASHRAE/IES 90.1";

    // ASHRAE 90.1-2019 Table 5.5-6 as copied in openstudio-standards (BSD-3), read.
    private static readonly EnvelopeMinimum SemiheatedAttic6 = new(
        Standard, "2019", "Table 5.5-6", "6", "semiheated", "roof", "attic and other", "U_max",
        "0.034", true, "openstudio-standards", "");

    [Theory]
    [InlineData(0.033, CodeVerdict.Meets)]
    [InlineData(0.034, CodeVerdict.Meets)]
    [InlineData(0.035, CodeVerdict.Misses)]
    public void A_row_that_was_read_decides_at_its_printed_precision(
        double u, CodeVerdict expected) =>
        Assert.Equal(expected, Of(SemiheatedAttic6, u).Verdict);

    [Theory]
    [InlineData(0.001)]
    [InlineData(0.034)]
    [InlineData(0.5)]
    public void A_row_from_memory_never_says_meets_or_misses_outright(double u)
    {
        var finding = Of(SemiheatedAttic6 with { Read = false }, u);
        Assert.Contains(finding.Verdict, (CodeVerdict[])
            [CodeVerdict.MeetsIfRowIsRight, CodeVerdict.MissesIfRowIsRight]);
        Assert.Contains("from memory", finding.Text);
        Assert.Contains("look it up", finding.Text);
    }

    [Fact]
    public void A_row_of_unsure_edition_is_as_doubtful_as_one_from_memory() => Assert.Equal(
        CodeVerdict.MeetsIfRowIsRight,
        Of(SemiheatedAttic6 with { Edition = "2019 (edition inferred)" }, 0.02).Verdict);

    [Fact]
    public void The_margin_is_the_limit_less_the_assembly() =>
        Assert.Equal(0.004, Of(SemiheatedAttic6, 0.030).MarginU!.Value, 1e-9);

    [Fact]
    public void Every_finding_defers_to_the_official_and_names_exemptions()
    {
        var finding = Of(SemiheatedAttic6, 0.1);
        Assert.Contains("official", finding.Text);
        Assert.Contains(finding.Notes, note => note.Contains("agricultural"));
        Assert.Contains(finding.Notes, note => note.Contains("Semi-heated"));
    }

    [Theory]
    [InlineData("4 except marine", "4A", true)]
    [InlineData("4 except marine", "4C", false)]
    [InlineData("5 and marine 4", "4C", true)]
    [InlineData("5 and marine 4", "5B", true)]
    [InlineData("7", "7", true)]
    [InlineData("6", "7", false)]
    public void A_zone_is_matched_as_the_tables_word_it(string row, string zone, bool held)
    {
        var finding = CodeFinding.Of(
            [SemiheatedAttic6 with { Zone = row }],
            new(Standard, "2019", zone, "semiheated", "roof", "attic and other"),
            ThermalTransmittance.FromUFactor(0.03));
        Assert.Equal(held, finding.Verdict != CodeVerdict.NoRow);
    }

    private static CodeFinding Of(EnvelopeMinimum row, double u) => CodeFinding.Of(
        [row],
        new(Standard, "2019", "6A", "semiheated", "roof", "attic and other"),
        ThermalTransmittance.FromUFactor(u));
}
