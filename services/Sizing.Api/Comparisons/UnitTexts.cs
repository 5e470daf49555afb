using System.Globalization;
using System.Text.RegularExpressions;
using PostFrame.Engine.Quantities;
using PostFrame.Problems;

namespace PostFrame.SizingApi.Comparisons;

/// <summary>Quantities of heat as a customer writes them: a number and its unit.</summary>
internal static partial class UnitTexts
{
    private const string TemperatureForms = "\"55 °F\" or \"12.5 °C\"";
    private const string AreaForms = "\"2400 ft2\" or \"223 m2\"";
    private const string VolumeForms = "\"40000 ft3\" or \"1100 m3\"";
    private const string PowerForms = "\"60000 Btu/h\" or \"17.6 kW\"";
    private const string DegreeDayForms = "\"6850 °F·d\" or \"3806 K·d\"";

    public static Temperature? OptionalTemperature(
        this RequestObject place, string name, double leastF, double mostF) =>
        Read(place, name, "temperature", TemperatureForms, (number, unit) => unit switch
        {
            "F" => number,
            "C" => number * 1.8 + 32,
            _ => null,
        }, leastF, mostF, "°F") is { } f ? Temperature.FromFahrenheit(f) : null;

    public static Area? OptionalArea(this RequestObject place, string name) =>
        Read(place, name, "area", AreaForms, (number, unit) => unit switch
        {
            "ft2" or "ft²" or "sqft" => number,
            "m2" or "m²" => Area.FromSquareMetres(number).TotalSquareFeet,
            _ => null,
        }, 1, 1e6, "ft2") is { } ft2 ? Area.FromSquareFeet(ft2) : null;

    /// <summary>A volume [m³].</summary>
    public static double? OptionalVolumeM3(this RequestObject place, string name) =>
        Read(place, name, "volume", VolumeForms, (number, unit) => unit switch
        {
            "ft3" or "ft³" => number * 0.028316846592,
            "m3" or "m³" => number,
            _ => null,
        }, 1, 1e6, "m3");

    /// <summary>A heat output [W].</summary>
    public static double? OptionalPowerW(this RequestObject place, string name) =>
        Read(place, name, "power", PowerForms, (number, unit) => unit switch
        {
            "Btu/h" => number * 0.29307107,
            "kW" => number * 1000,
            "W" => number,
            _ => null,
        }, 0, 1e6, "W");

    /// <summary>Degree days [K·d]; the scale has no offset here.</summary>
    public static double? OptionalDegreeDaysK(this RequestObject place, string name) =>
        Read(place, name, "degree-days", DegreeDayForms, (number, unit) => unit switch
        {
            "F·d" or "Fd" => number / 1.8,
            "K·d" or "C·d" or "Kd" => number,
            _ => null,
        }, 0, 12_000, "K·d");

    private static double? Read(
        RequestObject place, string name, string what, string forms,
        Func<double, string, double?> convert, double least, double most, string unit)
    {
        if (place.OptionalText(name, 40) is not { } text) return null;
        var match = NumberAndUnit().Match(text);
        if (!match.Success
            || convert(
                double.Parse(match.Groups["number"].Value, CultureInfo.InvariantCulture),
                match.Groups["unit"].Value.Replace(" ", "", StringComparison.Ordinal))
                is not { } value)
        {
            place.Wrong(
                name, match.Success || !double.TryParse(text, CultureInfo.InvariantCulture, out _)
                    ? $"{what}-format"
                    : "unit-missing",
                text, $"Write it with its unit, like {forms}.", forms);
            return null;
        }
        if (value >= least && value <= most) return value;
        var (rule, bound, word) =
            value < least ? ("at-least", least, "at least") : ("at-most", most, "at most");
        place.Wrong(
            name, rule, text,
            FormattableString.Invariant($"This must be {word} {bound:0.##} {unit}."),
            bound.ToString("0.##", CultureInfo.InvariantCulture), unit);
        return null;
    }

    [GeneratedRegex(
        @"^\s*(?<number>-?[0-9]{1,7}(\.[0-9]{1,4})?)\s*°?\s*(?<unit>\D[^°]{0,12}?)\s*$")]
    private static partial Regex NumberAndUnit();
}
