using PostFrame.Engine.Quantities;

namespace PostFrame.SizingApi.Comparisons;

/// <summary>Quantities in the words of the reader's units.</summary>
internal sealed class UnitWords(bool isMetric)
{
    public bool IsMetric => isMetric;

    public string Of(Temperature at) => isMetric
        ? FormattableString.Invariant($"{WriteHeat.Rounded(at.TotalCelsius, 1):0.#} °C")
        : FormattableString.Invariant($"{WriteHeat.Rounded(at.TotalFahrenheit, 1):0.#} °F");

    public string Of(ThermalResistance r) => isMetric
        ? FormattableString.Invariant($"R {r.TotalSi:0.00} m²·K/W")
        : FormattableString.Invariant($"R-{r.TotalRValue:0.0}");

    /// <summary>A number for a temperature axis.</summary>
    public double Axis(Temperature at) => isMetric ? at.TotalCelsius : at.TotalFahrenheit;

    public string Degrees => isMetric ? "°C" : "°F";

    /// <summary>A number for a resistance axis.</summary>
    public double Axis(ThermalResistance r) => isMetric ? r.TotalSi : r.TotalRValue;

    public string RUnit => isMetric ? "m²·K/W" : "h·ft²·°F/Btu";

    public string RFormat => isMetric ? "0.00" : "0.0";

    /// <summary>A price per covered area.</summary>
    public string Price(double perFt2) => isMetric
        ? FormattableString.Invariant($"{perFt2 / 0.09290304:0.00} per m²")
        : FormattableString.Invariant($"{perFt2:0.00} per ft²");
}
