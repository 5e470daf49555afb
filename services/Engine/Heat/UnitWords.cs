using System.Globalization;
using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.Heat;

/// <summary>Quantities in the words of the reader's units.</summary>
public sealed class UnitWords(bool isMetric)
{
    private const double WPerM2PerBtu = 3.154591;

    /// <summary>Inches, °F and R-values.</summary>
    public static UnitWords Us { get; } = new(false);

    /// <summary>Millimetres, °C and m²·K/W.</summary>
    public static UnitWords Metric { get; } = new(true);

    /// <summary>True for metric words.</summary>
    public bool IsMetric => isMetric;

    /// <summary>A temperature to a tenth: "55 °F", "12.8 °C".</summary>
    public string Of(Temperature at) => $"{Tenths(Axis(at))} {Degrees}";

    /// <summary>A resistance: "R-10.0", "R 1.76 m²·K/W".</summary>
    public string Of(ThermalResistance r) => isMetric
        ? FormattableString.Invariant($"R {r.TotalSi:0.00} m²·K/W")
        : FormattableString.Invariant($"R-{r.TotalRValue:0.0}");

    /// <summary>A claimed R [h·ft²·°F/Btu] as it was made, with its RSI if metric.</summary>
    public string Claimed(double rValue) =>
        FormattableString.Invariant($"R-{rValue:0.##}")
        + (isMetric
            ? FormattableString.Invariant(
                $" (RSI {ThermalResistance.FromRValue(rValue).TotalSi:0.00})")
            : "");

    /// <summary>A U-factor to three decimals, without its unit.</summary>
    public string Of(ThermalTransmittance u) =>
        (isMetric ? u.TotalSi : u.TotalUFactor).ToString("0.000", CultureInfo.InvariantCulture);

    /// <summary>Unit of U-factors.</summary>
    public string UUnit => isMetric ? "W/(m²·K)" : "Btu/(h·ft²·°F)";

    /// <summary>A temperature difference [K] in whole degrees: "4 K", "7 °F".</summary>
    public string Difference(double kelvins) => isMetric
        ? FormattableString.Invariant($"{kelvins:0} K")
        : FormattableString.Invariant($"{kelvins * 1.8:0} °F");

    /// <summary>A heat flow [Btu/(h·ft²)] as printed in a US table.</summary>
    public string Flow(double btuPerHFt2) => isMetric
        ? FormattableString.Invariant($"{btuPerHFt2 * WPerM2PerBtu:0.0} W/m²")
        : FormattableString.Invariant($"{btuPerHFt2:0.0} Btu/(h·ft²)");

    /// <summary>A thickness [mm]: "89 mm", "3.5 in".</summary>
    public string Thickness(double mm) => $"{Number(mm)} {LengthUnit}";

    /// <summary>A thickness [mm] as a number of <see cref="LengthUnit"/>.</summary>
    public string Number(double mm) => isMetric
        ? mm.ToString("0.##", CultureInfo.InvariantCulture)
        : (mm / 25.4).ToString("0.###", CultureInfo.InvariantCulture);

    /// <summary>The most [mm] that may be asked for, rounded inwards so that it is taken.</summary>
    public double Most(double mm) => isMetric
        ? Math.Floor(mm * 100 + 1e-6) / 100
        : Math.Floor(mm / 25.4 * 1000 + 1e-6) / 1000 * 25.4;

    /// <summary>Unit of thicknesses.</summary>
    public string LengthUnit => isMetric ? "mm" : "in";

    /// <summary>A number for a temperature axis.</summary>
    public double Axis(Temperature at) => isMetric ? at.TotalCelsius : at.TotalFahrenheit;

    /// <summary>Unit of temperatures.</summary>
    public string Degrees => isMetric ? "°C" : "°F";

    /// <summary>A number for a resistance axis.</summary>
    public double Axis(ThermalResistance r) => isMetric ? r.TotalSi : r.TotalRValue;

    /// <summary>Unit of resistances.</summary>
    public string RUnit => isMetric ? "m²·K/W" : "h·ft²·°F/Btu";

    /// <summary>Digits of resistances on an axis.</summary>
    public string RFormat => isMetric ? "0.00" : "0.0";

    /// <summary>A price per covered area.</summary>
    public string Price(double perFt2) => isMetric
        ? FormattableString.Invariant($"{perFt2 / 0.09290304:0.00} per m²")
        : FormattableString.Invariant($"{perFt2:0.00} per ft²");

    private static string Tenths(double value)
    {
        var rounded = Math.Round(value, 1, MidpointRounding.AwayFromZero);
        return (rounded == 0 ? 0 : rounded).ToString("0.#", CultureInfo.InvariantCulture);
    }
}
