using System.Globalization;

namespace PostFrame.Engine.Quantities;

/// <summary>Lengths in words, for derivations and messages, in the job's own units.</summary>
internal static class LengthWords
{
    /// <summary>"391.473 in" or "6,511.7 mm".</summary>
    public static string Say(this Length length, bool metric) => metric
        ? string.Create(CultureInfo.InvariantCulture, $"{length.TotalMillimetres:#,0.#} mm")
        : string.Create(CultureInfo.InvariantCulture, $"{Shown(length):#,0.####} in");

    /// <summary>The number alone, as <see cref="Say"/> has it.</summary>
    public static string Number(this Length length, bool metric) => metric
        ? string.Create(CultureInfo.InvariantCulture, $"{length.TotalMillimetres:0.#}")
        : string.Create(CultureInfo.InvariantCulture, $"{Shown(length):0.####}");

    /// <summary>The unit of <see cref="Number"/>.</summary>
    public static string Unit(bool metric) => metric ? "mm" : "in";

    /// <summary>To a thousandth, but an exact sixteenth of an inch as it is.</summary>
    private static double Shown(Length length) =>
        length.Nanometres % (Length.NanometresPerInch / 16) == 0
            ? length.TotalInches
            : Math.Round(length.TotalInches, 3);

    /// <summary>"30 ft", "10 ft 11 5/16 in" or "4.2 m": as on a tape measure.</summary>
    public static string SayRounded(this Length length, bool metric)
    {
        if (metric) return length.SayLong(true);
        var sixteenths = (long)Math.Round(length.TotalInches * 16);
        var (feet, inches, rest) =
            (sixteenths / 192, sixteenths % 192 / 16, sixteenths % 16);
        var under = 16;
        for (; rest > 0 && rest % 2 == 0; rest /= 2) under /= 2;
        var fraction = rest > 0 ? $"{rest}/{under}" : "";
        string[] words =
        [
            .. feet != 0 ? [$"{feet} ft"] : Array.Empty<string>(),
            .. inches != 0 || rest != 0
                ? [(inches != 0 ? $"{inches} {fraction}".TrimEnd() : fraction) + " in"]
                : Array.Empty<string>(),
        ];
        return words.Length > 0 ? string.Join(" ", words) : "0 in";
    }

    /// <summary>"30 ft", "10 ft 6 in" or "4.2 m": sizes of buildings and pieces.</summary>
    public static string SayLong(this Length length, bool metric)
    {
        if (metric && length.Nanometres is > -1_000_000_000 and < 1_000_000_000)
            return length.Say(metric);
        if (metric)
            return string.Create(
                CultureInfo.InvariantCulture, $"{length.TotalMetres:0.###} m");
        var sign = length < Length.Zero ? "-" : "";
        var inches = Math.Round(Math.Abs(length.TotalInches), 3);
        if (inches < 12)
            return string.Create(CultureInfo.InvariantCulture, $"{sign}{inches:0.###} in");
        var feet = Math.Floor(inches / 12);
        var rest = Math.Round(inches - feet * 12, 3);
        return rest == 0
            ? string.Create(CultureInfo.InvariantCulture, $"{sign}{feet:0} ft")
            : string.Create(CultureInfo.InvariantCulture, $"{sign}{feet:0} ft {rest:0.###} in");
    }
}
