using PostFrame.Engine.Heat;
using PostFrame.Engine.Quantities;
using Xunit;

namespace PostFrame.EngineTests.Heat;

public sealed class HeatingTests
{
    private const double WPerBtuPerHour = 0.29307107;

    // thermal.md section 9 (R inputs, C): 75 000 Btu/h at 70 °F, 6000 HDD, η 0.85, gas: UA 1071.4
    // Btu/h·°F, 1815.1 therm. 0.1 %.
    [Fact]
    public void The_handbook_house_burns_the_gas_of_the_worked_example()
    {
        var lossWPerK = 75_000.0 / 70 * WPerBtuPerHour * 1.8;
        var year = HeatingYear.Of(lossWPerK, 6000 / 1.8, HeatingFuel.NaturalGas, 0.85);
        Assert.Equal(1815.1, year.FuelUnits, 1.8);
        Assert.Equal("therm", year.Unit);
    }

    // 675 Btu/h·°F, 5000 HDD, oil 138 690 Btu/gal at 78 %: 81.0 MMBtu, 748.8 gal (R, C). 0.1 %.
    [Fact]
    public void The_oil_house_burns_the_gallons_of_the_worked_example()
    {
        var year = HeatingYear.Of(
            675 * WPerBtuPerHour * 1.8, 5000 / 1.8, HeatingFuel.HeatingOil, 0.78);
        Assert.Equal(748.8, year.FuelUnits, 0.75);
        Assert.Equal(81.0e6 * WPerBtuPerHour / 1000, year.HeatKWh, 25.0);
    }

    // 2400 ft² roof, 6000 HDD, propane at 92 %: R 3.88 → 1059, R 12.37 → 333, R 10 → 411 gal (C,
    // with 91 333 Btu/gal). 0.2 %.
    [Theory]
    [InlineData(3.88, 1059, 89.0)]
    [InlineData(12.37, 333, 27.9)]
    [InlineData(10, 411, 34.6)]
    public void A_roof_burns_propane_by_its_winter_assembly_R(
        double r, double gallons, double millionBtu)
    {
        var roof = BuildingLoss.Of(
            [new("roof", 2400 * 0.09290304, ThermalResistance.FromRValue(r).ToTransmittance())], 0);
        var year = HeatingYear.Of(roof.TotalWPerK, 6000 / 1.8, HeatingFuel.Propane, 0.92);
        Assert.Equal(gallons, year.FuelUnits, 0.002 * gallons + 0.5);
        Assert.Equal(millionBtu, year.HeatKWh / WPerBtuPerHour / 1000, 0.1);
    }

    // A heat pump buys a kilowatt-hour and brings in COP of them; nothing else gives more heat than
    // it bought. 10 000 kWh at a COP of 2.5: 4000 kWh.
    [Fact]
    public void A_heat_pump_buys_less_than_the_heat_it_brings()
    {
        var pump = HeatingYear.Of(100, 10_000 / 2.4, HeatingFuel.HeatPump, 2.5);
        Assert.Equal((10_000, 4000, "kWh"), (
            Math.Round(pump.HeatKWh, 6), Math.Round(pump.FuelUnits, 6), pump.Unit));
        foreach (var fuel in Enum.GetValues<HeatingFuel>().Except([HeatingFuel.HeatPump]))
            Assert.Contains("0.1 to 1", Assert.Throws<ArgumentOutOfRangeException>(
                () => HeatingYear.Of(100, 3000, fuel, 1.01)).Message);
        Assert.Contains("1 to 6", Assert.Throws<ArgumentOutOfRangeException>(
            () => HeatingYear.Of(100, 3000, HeatingFuel.HeatPump, 0.9)).Message);
    }

    // ASHRAE HoF 2021 (SI) ch. 27 Ex. 6 (R): U of the field 0.287, linear transmittance 0.544
    // W/(m·K) over 15.2 m, 41 m²: U 0.49.
    [Fact]
    public void An_edge_adds_as_in_chapter_27_example_6()
    {
        var loss = BuildingLoss.Of(
            [new("wall", 41, ThermalTransmittance.FromSi(0.287))], 0, 15.2, 0.544);
        Assert.Equal(0.49, loss.TotalWPerK / 41, 0.005);
        Assert.Equal(0.489, loss.TotalWPerK / 41, 0.001);
    }

    // thermal.md section 9 (C): from half the loss goes, from a sixth.
    [Fact]
    public void The_second_ten_save_a_third_of_what_the_first_did()
    {
        double Loss(double r) => BuildingLoss.Of(
            [new("roof", 100, ThermalResistance.FromRValue(r).ToTransmittance())], 0).TotalWPerK;
        Assert.Equal(1 / 2.0, (Loss(10) - Loss(20)) / Loss(10), 1e-9);
        Assert.Equal(1 / 6.0, (Loss(20) - Loss(30)) / Loss(10), 1e-9);
    }

    // HoF 2021 (read): 1.08 Btu/h per CFM and °F; uninsulated slab edge 0.81 Btu/h·ft·°F.
    [Fact]
    public void Air_and_slab_edge_add_as_the_handbook_factors_say()
    {
        var loss = BuildingLoss.Of([], 100 * 1.699, 100 * 0.3048);
        Assert.Equal(108, loss.AirWPerK / WPerBtuPerHour / 1.8, 1.2);
        Assert.Equal(81, loss.SlabEdgeWPerK / WPerBtuPerHour / 1.8, 0.5);
        Assert.Equal(
            loss.TotalWPerK * 30,
            loss.DesignLoadW(Temperature.FromCelsius(20), Temperature.FromCelsius(-10)),
            1e-9);
    }

    // Cedar Rapids TMY3 (computed from it): 6851, 5636, 4576, 3629 °F·d.
    [Theory]
    [InlineData(65, 6851)]
    [InlineData(60, 5636)]
    [InlineData(55, 4576)]
    [InlineData(57.5, 5106)]
    [InlineData(50, 3629)]
    public void Degree_days_follow_the_buildings_own_balance_point(double balanceF, double hdd) =>
        Assert.Equal(
            hdd / 1.8,
            new DegreeDayTable(6851, 5636, 4576, 3629).ToBalancePointK(balanceF),
            0.01);

    [Fact]
    public void A_balance_point_beyond_the_table_is_refused_with_the_range() => Assert.Contains(
        "50 to 65",
        Assert.Throws<ArgumentOutOfRangeException>(
            () => new DegreeDayTable(6851, 5636, 4576, 3629).ToBalancePointK(45)).Message);

    [Fact]
    public void An_unheated_building_saves_nothing_and_says_so()
    {
        var payback = Payback.Of(1000, 500, heated: false);
        Assert.Null(payback.Years);
        Assert.Equal(0, payback.YearlySaving);
        Assert.Contains("Nothing heats this building", payback.Text);
    }

    [Theory]
    [InlineData(1000, 250, 4.0)]
    [InlineData(0, 250, 0.0)]
    [InlineData(1000, 0, null)]
    [InlineData(1000, -10, null)]
    public void Payback_is_the_extra_price_over_the_yearly_saving(
        double extra, double saving, double? years) =>
        Assert.Equal(years, Payback.Of(extra, saving, heated: true).Years);
}
