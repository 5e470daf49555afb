namespace PostFrame.Engine.Heat;

/// <summary>A year's heating of a building or a part of one.</summary>
/// <param name="HeatKWh">Heat lost over the year [kWh].</param>
/// <param name="Fuel">What is bought.</param>
/// <param name="FuelUnits">How much of it.</param>
/// <param name="Unit">In which unit.</param>
/// <param name="KWhPerUnit">Heating value of a unit [kWh].</param>
public sealed record HeatingYear(
    double HeatKWh, HeatingFuel Fuel, double FuelUnits, string Unit, double KWhPerUnit)
{
    /// <summary>Btu to watt-hours.</summary>
    private const double WhPerBtu = 0.29307107;

    /// <summary>
    /// Fuel = 24·UA·HDD/(η·HV), with degree days to the building's own balance point.
    /// Source: ASHRAE HoF degree-day method; heating values: gas 100 000 Btu/therm, propane 91 330
    /// and No. 2 oil 138 690 Btu/gal (read), electricity 3412 Btu/kWh.
    /// </summary>
    /// <param name="lossWPerK">Loss [W/K], 0 to 10⁹.</param>
    /// <param name="degreeDaysK">Heating degree days to the balance point [K·d], 0 to 20
    /// 000.</param>
    /// <param name="fuel">What is bought.</param>
    /// <param name="efficiency">
    /// Seasonal efficiency, 0.1 to 1; of a heat pump its seasonal COP, 1 to 6.
    /// </param>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    public static HeatingYear Of(
        double lossWPerK, double degreeDaysK, HeatingFuel fuel, double efficiency)
    {
        Limits.Check(lossWPerK, 0, 1e9, "W/K", nameof(lossWPerK));
        Limits.Check(degreeDaysK, 0, 20_000, "K·d", nameof(degreeDaysK));
        var (least, most) = EfficiencyOf(fuel);
        Limits.Check(efficiency, least, most, "(share, or COP)", nameof(efficiency));
        var (whPerUnit, unit) = fuel switch
        {
            HeatingFuel.NaturalGas => (100_000 * WhPerBtu, "therm"),
            HeatingFuel.Propane => (91_330 * WhPerBtu, "gal"),
            HeatingFuel.HeatingOil => (138_690 * WhPerBtu, "gal"),
            HeatingFuel.Electricity or HeatingFuel.HeatPump => (1000.0, "kWh"),
            _ => throw new ArgumentOutOfRangeException(nameof(fuel), fuel, "Unknown fuel."),
        };
        var heatWh = 24 * lossWPerK * degreeDaysK;
        return new HeatingYear(heatWh / 1000, fuel, heatWh / (efficiency * whPerUnit), unit,
            whPerUnit / 1000);
    }

    /// <summary>
    /// The least and the most a fuel's efficiency can be: no more heat than was bought, but for a
    /// heat pump, which brings in heat from outdoors (COP 1 to 6, common practice, no source).
    /// </summary>
    public static (double Least, double Most) EfficiencyOf(HeatingFuel fuel) =>
        fuel == HeatingFuel.HeatPump ? (1, 6) : (0.1, 1);
}
