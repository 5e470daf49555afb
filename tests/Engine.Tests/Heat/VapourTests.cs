using PostFrame.Engine.Heat;
using PostFrame.Engine.Quantities;
using Xunit;

namespace PostFrame.EngineTests.Heat;

public sealed class VapourTests
{
    public static TheoryData<double, double, double> Saturation()
    {
        var data = new TheoryData<double, double, double>();
        foreach (var row in ReferenceTable.Rows("saturation"))
            data.Add(row.Number("celsius"), row.Number("pascal"), row.Number("tolerance_pascal"));
        return data;
    }

    public static TheoryData<double, double, double> DewPoints()
    {
        var data = new TheoryData<double, double, double>();
        foreach (var row in ReferenceTable.Rows("dew-point"))
            data.Add(row.Number("dry_bulb_f"), row.Number("rh_pct"), row.Number("dew_point_c"));
        return data;
    }

    [Theory]
    [MemberData(nameof(Saturation))]
    public void Air_saturates_at_the_tabulated_pressure(
        double celsius, double pascal, double tolerance) =>
        Assert.Equal(pascal, Vapour.Saturation(Temperature.FromCelsius(celsius)), tolerance);

    [Theory]
    [MemberData(nameof(DewPoints))]
    public void Air_reaches_its_dew_point_at_the_tabulated_temperature(
        double dryBulbF, double rhPct, double dewC)
    {
        var pressure =
            Vapour.Saturation(Temperature.FromFahrenheit(dryBulbF)) * rhPct / 100;
        Assert.Equal(dewC, Vapour.DewPoint(pressure).TotalCelsius, 0.1);
    }

    [Fact]
    public void Dew_point_undoes_saturation_on_both_sides_of_freezing()
    {
        for (var t = -50.0; t <= 60; t += 0.5)
        {
            var back = Vapour.DewPoint(Vapour.Saturation(Temperature.FromCelsius(t)));
            Assert.Equal(t, back.TotalCelsius, 1e-6);
        }
    }

    // thermal.md section 1: 1 perm is 3.496 m, 0.1 perm 34.96, 0.02 perm 174.8, 10 perm 0.350 (C).
    [Theory]
    [InlineData(1, 3.496)]
    [InlineData(0.1, 34.96)]
    [InlineData(0.02, 174.8)]
    [InlineData(10, 0.350)]
    public void A_permeance_is_an_equivalent_thickness_of_still_air(double perm, double sd)
    {
        Assert.Equal(sd, Vapour.SdOfPerm(perm), 0.002 * sd);
        Assert.Equal(perm, Vapour.PermOfSd(Vapour.SdOfPerm(perm)), 1e-9);
    }

    // IRC/IBC vapour retarder classes (read, R).
    [Theory]
    [InlineData(0.1, RetarderClass.I)]
    [InlineData(0.11, RetarderClass.II)]
    [InlineData(1.0, RetarderClass.II)]
    [InlineData(1.3, RetarderClass.III)]
    [InlineData(10, RetarderClass.III)]
    [InlineData(34, RetarderClass.None)]
    public void A_permeance_falls_in_its_retarder_class(double perm, RetarderClass expected) =>
        Assert.Equal(expected, Vapour.ClassOf(perm));

    // Stoichiometry: complete combustion of propane gives 1.63 kg water per kg (R as chemistry);
    // 100 000 Btu/h is 29.307 kW, at 50.35 MJ/kg 2.0955 kg/h of propane.
    [Fact]
    public void A_burner_without_a_flue_gives_its_water_to_the_room() =>
        Assert.Equal(
            2.0955 * 1.634,
            IndoorMoisture.BurnerWaterKgPerHour(BurnerFuel.Propane, 29_307),
            0.005);

    // Gas law by hand: 1 kg/h into 1000 m³ at one change an hour is 0.001 kg/m³ more, at 293.15 K
    // 0.001 · 461.5 · 293.15 = 135.3 Pa.
    [Fact]
    public void Water_given_off_raises_the_pressure_until_ventilation_balances_it() =>
        Assert.Equal(
            135.3,
            IndoorMoisture.ExcessOfWaterPa(1, 1, 1000, Temperature.FromCelsius(20)),
            0.05);
}
