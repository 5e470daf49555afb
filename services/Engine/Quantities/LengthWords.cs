using System.Globalization;

namespace PostFrame.Engine.Quantities;

/// <summary>Lengths in words, for derivations and messages, in the job's own units.</summary>
internal static class LengthWords
{
    /// <summary>"391.473 in", "5 1/2 in" or "6,511.7 mm".</summary>
    public static string Say(this Length length, bool metric) => metric
        ? string.Create(CultureInfo.InvariantCulture, $"{length.TotalMillimetres:#,0.#} mm")
        : $"{Sign(length)}{InInches(InchesOf(length))} in";

    /// <summary>The number alone, in decimals: a value of its own beside its unit.</summary>
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

    /// <summary>"5 1/2", "1/16" where a tape measure shows it, to 1/64; else "6.333".</summary>
    private static string InInches(decimal inches)
    {
        if (inches * 64 % 1 != 0)
            return string.Create(CultureInfo.InvariantCulture, $"{inches:#,0.###}");
        var whole = decimal.Floor(inches);
        var (rest, under) = ((int)((inches - whole) * 64), 64);
        for (; rest > 0 && rest % 2 == 0; rest /= 2) under /= 2;
        var number = string.Create(CultureInfo.InvariantCulture, $"{whole:#,0}");
        return rest == 0 ? number : whole == 0 ? $"{rest}/{under}" : $"{number} {rest}/{under}";
    }

    /// <summary>"30 ft", "10 ft 11 5/16 in" or "4.2 m": as on a tape measure.</summary>
    public static string SayRounded(this Length length, bool metric)
    {
        if (metric) return length.SayLong(true);
        return Sign(length) + InFeet(Math.Round(InchesOf(length) * 16) / 16);
    }

    /// <summary>The same, with "about" where the tape does not show it: "about 1/8 in".</summary>
    public static string SayAbout(this Length length, bool metric)
    {
        var onTape = length.SayRounded(metric);
        return onTape == length.SayLong(metric) ? onTape : $"about {onTape}";
    }

    /// <summary>"30 ft", "10 ft 6 in" or "4.2 m": sizes of buildings and pieces.</summary>
    public static string SayLong(this Length length, bool metric)
    {
        if (metric && length.Nanometres is > -1_000_000_000 and < 1_000_000_000)
            return length.Say(metric);
        if (metric)
            return string.Create(
                CultureInfo.InvariantCulture, $"{length.TotalMetres:0.###} m");
        var inches = InchesOf(length);
        return Sign(length) + InFeet(inches * 64 % 1 == 0 ? inches : Math.Round(inches, 3));
    }

    private static string InFeet(decimal inches)
    {
        var (feet, rest) = (decimal.Floor(inches / 12), inches % 12);
        return feet == 0 ? $"{InInches(rest)} in"
            : rest == 0 ? string.Create(CultureInfo.InvariantCulture, $"{feet} ft")
            : string.Create(CultureInfo.InvariantCulture, $"{feet} ft {InInches(rest)} in");
    }

    private static decimal InchesOf(Length length) =>
        Math.Abs((decimal)length.Nanometres) / Length.NanometresPerInch;

    private static string Sign(Length length) => length < Length.Zero ? "-" : "";
}
