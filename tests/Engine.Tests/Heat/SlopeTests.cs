using PostFrame.Engine.Heat;
using PostFrame.Engine.Quantities;
using Xunit;

namespace PostFrame.EngineTests.Heat;

/// <summary>
/// Heat between the printed directions. ASHRAE HoF 2021 (SI) ch. 26 Tables 3 and 10 print flat, 45°
/// and upright; between them a half is worth half of each neighbour's coefficient (own rule), so
/// that a building one inch of pitch steeper is no other building.
/// </summary>
public sealed class SlopeTests
{
    // Table 10, ε 0.90: up 9.26, up at 45° 9.09, sideways 8.29, down at 45° 7.50, down 6.13.
    [Theory]
    [InlineData(0, Season.Winter, 1 / 9.26)]
    [InlineData(22.5, Season.Winter, 1 / 9.175)]
    [InlineData(45, Season.Winter, 1 / 9.09)]
    [InlineData(67.5, Season.Winter, 1 / 8.69)]
    [InlineData(90, Season.Winter, 1 / 8.29)]
    [InlineData(15, Season.Summer, 1 / 6.586667)]
    [InlineData(67.5, Season.Summer, 1 / 7.895)]
    public void A_film_between_two_printed_slopes_lies_straight_between_their_coefficients(
        double slope, Season season, double r) => Assert.Equal(
            r,
            Films.Inside(
                CalculationBasis.Ashrae,
                Films.FlowThrough(CalculationBasis.Ashrae, slope, season), 0.9).TotalSi,
            1e-6);

    // Table 3, 90 mm at 10 °C and 16.7 K, fitted: down 0.439, down at 45° 1.456; radiation
    // 0.05·0.227·2.83³ = 0.2573. At 15° two thirds and one third: 1/(0.778 + 0.2573).
    [Theory]
    [InlineData(0, 1.4363)]
    [InlineData(15, 0.9659)]
    [InlineData(45, 0.5837)]
    public void An_air_space_between_two_printed_slopes_does_so_too(double slope, double r) =>
        Assert.Equal(
            r,
            AirSpaceHeat.Of(
                CalculationBasis.Ashrae,
                Films.FlowThrough(CalculationBasis.Ashrae, slope, Season.Summer), 90, 0.05,
                Temperature.FromCelsius(10), 16.7).R.TotalSi,
            0.001);

    [Theory]
    [InlineData(Season.Winter, 0.05)]
    [InlineData(Season.Winter, 0.9)]
    [InlineData(Season.Summer, 0.05)]
    [InlineData(Season.Summer, 0.9)]
    public void No_half_degree_of_slope_makes_another_building(Season season, double emittance)
    {
        double R(double slope) => Solved(CalculationBasis.Ashrae, slope, season, emittance);
        for (var half = 0; half < 180; half++)
            Assert.InRange(R((half + 1) / 2.0) / R(half / 2.0), 0.95, 1.03);
    }

    // ISO 6946 takes heat within 30° of the horizontal as horizontal: its own step, at 60°.
    [Theory]
    [InlineData(Season.Winter)]
    [InlineData(Season.Summer)]
    public void The_only_step_of_the_iso_basis_is_its_own_at_60_degrees(Season season)
    {
        double R(double slope) => Solved(CalculationBasis.Iso6946, slope, season, 0.05);
        for (var half = 0; half < 180; half++)
            if (half != 120) Assert.Equal(R(half / 2.0), R((half + 1) / 2.0), 1e-9);
        Assert.NotEqual(R(60), R(60.5), 0.01);
    }

    private static double Solved(
        CalculationBasis basis, double slope, Season season, double emittance) =>
        AssemblySolver.Solve(
            new Assembly
            {
                SlopeDegrees = slope,
                RoomEmittance = 0.9,
                Layers =
                [
                    new Layer
                    {
                        Name = "sheet",
                        Clear = new Slab.Solid(ThermalResistance.FromRValue(1.1)),
                    },
                    new Layer
                    {
                        Name = "air space",
                        Clear = new Slab.Air(new AirSpace
                        {
                            ThicknessMm = 90,
                            InnerEmittance = emittance,
                            OuterEmittance = 0.9,
                        }),
                    },
                ],
            },
            new Conditions
            {
                Basis = basis,
                Season = season,
                Room = Temperature.FromCelsius(22),
                Outside = Temperature.FromCelsius(season == Season.Winter ? -10 : 60),
            }).R.TotalSi;
}
