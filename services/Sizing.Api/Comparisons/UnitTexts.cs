using System.Globalization;
using System.Text.RegularExpressions;
using PostFrame.Engine.Heat;
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
        Read(place, name, "temperature", TemperatureForms, leastF, mostF,
            new(["F"], "°F"), new(["C"], "°C", 1.8, 32)) is { } f
            ? Temperature.FromFahrenheit(f)
            : null;

    /// <summary>The units a temperature that was read is written in.</summary>
    public static UnitWords TemperatureWords(this RequestObject place, string name) =>
        place.OptionalText(name, 40)?.Contains('C', StringComparison.Ordinal) ?? false
            ? UnitWords.Metric
            : UnitWords.Us;

    public static Area? OptionalArea(this RequestObject place, string name) =>
        Read(place, name, "area", AreaForms, 1, 1e6,
            new(["ft2", "ft²", "sqft"], "ft2"), new(["m2", "m²"], "m2", 1 / 0.09290304)) is { } ft2
            ? Area.FromSquareFeet(ft2)
            : null;

    /// <summary>A volume [m³].</summary>
    public static double? OptionalVolumeM3(this RequestObject place, string name) =>
        Read(place, name, "volume", VolumeForms, 1, 1e6,
            new(["ft3", "ft³"], "ft3", 0.028316846592), new(["m3", "m³"], "m3"));

    /// <summary>A heat output [W].</summary>
    public static double? OptionalPowerW(this RequestObject place, string name) =>
        Read(place, name, "power", PowerForms, 0, 1e6,
            new(["Btu/h"], "Btu/h", 0.29307107), new(["kW"], "kW", 1000), new(["W"], "W"));

    /// <summary>Degree days [K·d]; the scale has no offset here.</summary>
    public static double? OptionalDegreeDaysK(this RequestObject place, string name) =>
        Read(place, name, "degree-days", DegreeDayForms, 0, 12_000,
            new(["F·d", "Fd"], "°F·d", 1 / 1.8), new(["K·d", "C·d", "Kd"], "K·d"));

    /// <summary>A length [mm] within bounds, told in the unit it was written in.</summary>
    public static double? Mm(
        this RequestObject place, string name, double least, double most, string what) =>
        Within(place, name, place.Length(name), least, most, what);

    /// <summary>The same where it may be left out.</summary>
    public static double? OptionalMm(
        this RequestObject place, string name, double least, double most, string what) =>
        Within(place, name, place.OptionalLength(name), least, most, what);

    private static double? Within(
        RequestObject place, string name, Length? length, double least, double most,
        string what)
    {
        if (length?.TotalMillimetres is not { } mm) return null;
        if (mm >= least && mm <= most) return mm;
        place.OutsideMm(name, mm, least, most, what);
        return null;
    }

    /// <summary>Notes a length outside its bounds, in the unit it was written in.</summary>
    public static void OutsideMm(
        this RequestObject place, string name, double mm, double least, double most, string what)
    {
        var (size, unit) = place.IsMetric(name) ? (1.0, "mm") : (25.4, "in");
        // Rounded inwards, so that a bound taken at its word is taken.
        var (low, high) = (
            Math.Ceiling(least / size * 1000) / 1000, Math.Floor(most / size * 1000) / 1000);
        place.Wrong(
            name, mm < least ? "at-least" : "at-most",
            FormattableString.Invariant($"{mm / size:0.###} {unit}"),
            FormattableString.Invariant($"{what} must be {low:0.###} to {high:0.###} {unit}."),
            FormattableString.Invariant($"{(mm < least ? low : high):0.###}"), unit);
    }

    private static double? Read(
        RequestObject place, string name, string what, string forms, double least, double most,
        params ReadOnlySpan<Unit> units)
    {
        if (place.OptionalText(name, 40) is not { } text) return null;
        var match = NumberAndUnit().Match(text);
        var written = match.Groups["unit"].Value.Replace(" ", "", StringComparison.Ordinal);
        foreach (var unit in units)
        {
            if (match.Success && unit.Words.Contains(written))
                return Within(place, name, text, least, most, unit, double.Parse(
                    match.Groups["number"].Value, CultureInfo.InvariantCulture));
        }
        place.Wrong(
            name, match.Success || !double.TryParse(text, CultureInfo.InvariantCulture, out _)
                ? $"{what}-format"
                : "unit-missing",
            text, $"Write it with its unit, like {forms}.", forms);
        return null;
    }

    private static double? Within(
        RequestObject place, string name, string text, double least, double most, Unit unit,
        double number)
    {
        var value = number * unit.Times + unit.Plus;
        if (value >= least && value <= most) return value;
        var (rule, bound, word) =
            value < least ? ("at-least", least, "at least") : ("at-most", most, "at most");
        var shown = Math.Round((bound - unit.Plus) / unit.Times, 3)
            .ToString("0.###", CultureInfo.InvariantCulture);
        place.Wrong(name, rule, text, $"This must be {word} {shown} {unit.Shown}.", shown,
            unit.Shown);
        return null;
    }

    /// <summary>A unit as it may be written, and what turns it into the one read in.</summary>
    private sealed record Unit(
        string[] Words, string Shown, double Times = 1, double Plus = 0);

    [GeneratedRegex(
        @"^\s*(?<number>-?[0-9]+(\.[0-9]+)?)\s*°?\s*(?<unit>[^\d°][^°]{0,12}?)\s*$")]
    private static partial Regex NumberAndUnit();
}
