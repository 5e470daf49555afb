using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.Heat;

/// <summary>How much more vapour the room air holds than the air outdoors.</summary>
public static class IndoorMoisture
{
    private const double WaterVapourGasConstant = 461.5;

    /// <summary>
    /// Excess vapour pressure [Pa] at 0 °C outdoors and below. The five steps are the humidity
    /// class limits of ISO 13788:2012 Annex A (from memory); which use falls in which is our
    /// assumption, to be replaced by a measured load.
    /// </summary>
    public static double ColdExcessPa(IndoorUse use) => use switch
    {
        IndoorUse.DryStorage => 270,
        IndoorUse.Workshop => 540,
        IndoorUse.Dwelling => 810,
        IndoorUse.Livestock => 1080,
        IndoorUse.WashBay => 1360,
        _ => throw new ArgumentOutOfRangeException(nameof(use), use, "Unknown use."),
    };

    /// <summary>
    /// Excess [Pa] at an outdoor mean: the full value up to 0 °C, falling in a line to nothing at
    /// 20 °C, where doors and windows stand open. Source: ISO 13788:2012 Annex A (from memory).
    /// </summary>
    public static double ExcessPa(double coldExcessPa, Temperature outdoors)
    {
        Limits.Check(coldExcessPa, 0, 4000, "Pa", nameof(coldExcessPa));
        return coldExcessPa * Math.Clamp(1 - outdoors.TotalCelsius / 20, 0, 1);
    }

    /// <summary>
    /// Excess [Pa] that a water source keeps up: Δp = G·Rv·T/(n·V). Source: ISO 13788:2012 clause 4
    /// (Δv = G/(n·V)) and the gas law, Rv 461.5 J/(kg·K).
    /// </summary>
    /// <param name="waterKgPerHour">Water given off [kg/h], 0 to 1000.</param>
    /// <param name="airChangesPerHour">Air changes [1/h], 0.01 to 50.</param>
    /// <param name="volumeM3">Air volume [m³], 1 to 10⁶.</param>
    /// <param name="room">Room air.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    public static double ExcessOfWaterPa(
        double waterKgPerHour, double airChangesPerHour, double volumeM3, Temperature room)
    {
        Limits.Check(waterKgPerHour, 0, 1000, "kg/h", nameof(waterKgPerHour));
        Limits.Check(airChangesPerHour, 0.01, 50, "1/h", nameof(airChangesPerHour));
        Limits.Check(volumeM3, 1, 1e6, "m³", nameof(volumeM3));
        return waterKgPerHour * WaterVapourGasConstant * room.TotalKelvin
            / (airChangesPerHour * volumeM3);
    }

    /// <summary>
    /// Water a burner without a flue gives to the room [kg/h] for its heat input [W, higher
    /// heating value], from the chemistry of complete combustion.
    /// </summary>
    /// <remarks>
    /// Grams of water per megajoule: methane 36.03 g from 16.04 g at 55.5 MJ/kg; propane 72.06 g
    /// from 44.10 g at 50.35 MJ/kg; kerosene as C₁₂H₂₆ 234.2 g from 170.3 g at 46.2 MJ/kg. Heating
    /// values from memory.
    /// </remarks>
    public static double BurnerWaterKgPerHour(BurnerFuel fuel, double inputW)
    {
        Limits.Check(inputW, 0, 1e6, "W", nameof(inputW));
        var gramsPerMegajoule = fuel switch
        {
            BurnerFuel.NaturalGas => 36.03 / 16.04 * 1000 / 55.5,
            BurnerFuel.Propane => 72.06 / 44.10 * 1000 / 50.35,
            BurnerFuel.Kerosene => 234.2 / 170.3 * 1000 / 46.2,
            _ => throw new ArgumentOutOfRangeException(nameof(fuel), fuel, "Unknown fuel."),
        };
        return gramsPerMegajoule / 1000 * inputW * 3600 / 1e6;
    }
}
