using PostFrame.Engine.Heat;
using PostFrame.Engine.Quantities;
using Xunit;

namespace PostFrame.EngineTests.Heat;

public sealed class SolAirTests
{
    // thermal.md section 8 (C from HoF ch. 18, M): 35 °C, 900 W/m², flat: dark 77.8, light 54.4 °C.
    [Theory]
    [InlineData(SurfaceColour.Dark, 77.8)]
    [InlineData(SurfaceColour.Light, 54.4)]
    public void A_roof_in_the_sun_is_as_hot_as_the_handbook_formula_says(
        SurfaceColour colour, double celsius) => Assert.Equal(
            celsius,
            SolAir.Of(Temperature.FromCelsius(35), 900, colour, 4).TotalCelsius,
            0.05);

    // Same, in the handbook's other units: 95 °F, 285 Btu/(h·ft²), dark: 173.5 °F. The IP constants
    // 0.30 and 7 °F are rounded apart from 0.052 and 4 K, hence 2 °F.
    [Fact]
    public void Both_unit_systems_of_the_formula_agree() => Assert.Equal(
        173.5,
        SolAir.Of(Temperature.FromFahrenheit(95), 285 * 3.154591, SurfaceColour.Dark, 4)
            .TotalFahrenheit,
        2.0);

    [Fact]
    public void At_night_a_flat_roof_is_colder_than_the_air() => Assert.Equal(
        -4,
        SolAir.Of(Temperature.FromCelsius(0), 0, SurfaceColour.Dark, SolAir.FlatSkyKelvins)
            .TotalCelsius,
        1e-9);

    [Fact]
    public void Sun_beyond_the_solar_constant_is_refused_with_the_range() => Assert.Contains(
        "0 to 1400 W/m²",
        Assert.Throws<ArgumentOutOfRangeException>(() => SolAir.Of(
            Temperature.FromCelsius(0), 2000, SurfaceColour.Dark, 0)).Message);
}
