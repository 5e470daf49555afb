using PostFrame.Engine.Heat;
using Xunit;

namespace PostFrame.EngineTests.Heat;

public sealed class FilmTests
{
    public static TheoryData<string, string, string, string, double, double, double> Printed()
    {
        var data = new TheoryData<string, string, string, string, double, double, double>();
        foreach (var row in ReferenceTable.Rows("films"))
            data.Add(row["basis"], row["side"], row["flow"], row["season"],
                row.Number("emittance"), row.Number("r_si"), row.Number("tolerance_si"));
        return data;
    }

    [Theory]
    [MemberData(nameof(Printed))]
    public void A_film_resists_as_the_tables_print(
        string basis, string side, string flow, string season, double emittance, double r,
        double tolerance)
    {
        var system = Enum.Parse<CalculationBasis>(basis);
        var film = side == "inside"
            ? Films.Inside(system, Enum.Parse<HeatFlow>(flow), emittance)
            : Films.Outside(system, Enum.Parse<Season>(season));
        Assert.Equal(r, film.TotalSi, tolerance);
    }

    // ISO 6946:2017, basis of Table 7: hce = 4 + 4v, ε 0.9 (from memory, M); mean 0 °C.
    [Theory]
    [InlineData(1, 0.08)]
    [InlineData(2, 0.06)]
    [InlineData(3, 0.05)]
    [InlineData(4, 0.04)]
    [InlineData(5, 0.04)]
    [InlineData(7, 0.03)]
    [InlineData(10, 0.02)]
    public void Wind_thins_the_outside_film(double metresPerSecond, double r) =>
        Assert.Equal(r, Films.OutsideInWind(metresPerSecond, 0.9).TotalSi, 0.005);

    [Theory]
    [InlineData(CalculationBasis.Ashrae)]
    [InlineData(CalculationBasis.Iso6946)]
    public void Lower_emittance_never_weakens_a_film(CalculationBasis basis)
    {
        foreach (var flow in Enum.GetValues<HeatFlow>())
            for (var e = 0.01; e < 0.99; e += 0.01)
                Assert.True(
                    Films.Inside(basis, flow, e).TotalSi
                        >= Films.Inside(basis, flow, e + 0.01).TotalSi - 1e-12,
                    $"{flow} at {e}");
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-0.1)]
    [InlineData(1.2)]
    [InlineData(double.NaN)]
    public void An_impossible_emittance_is_refused_with_the_range(double emittance)
    {
        var refusal = Assert.Throws<ArgumentOutOfRangeException>(
            () => Films.Inside(CalculationBasis.Ashrae, HeatFlow.Up, emittance));
        Assert.Contains("0.01 to 1", refusal.Message);
    }
}
