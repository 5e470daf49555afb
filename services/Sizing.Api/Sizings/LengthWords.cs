using System.Globalization;
using PostFrame.Engine.Quantities;

namespace PostFrame.SizingApi.Sizings;

/// <summary>Lengths as numbers for the wire and as words for people.</summary>
internal static class LengthWords
{
    /// <summary>Inches to four decimals: finer than a hair, short to read.</summary>
    public static decimal Inches(Length length) => Math.Round(
        length.Nanometres / (decimal)Length.NanometresPerInch, 4, MidpointRounding.AwayFromZero);

    /// <summary>Millimetres, exact to the nanometre.</summary>
    public static decimal Millimetres(Length length) => length.Nanometres / 1_000_000m;

    /// <summary><c>33 ft 0 in</c>, <c>9 ft 3 1/2 in</c>, or <c>6600 mm</c>.</summary>
    public static string Of(Length length, bool metric)
    {
        if (metric)
        {
            return Shown(Math.Round(Millimetres(length), 1)) + " mm";
        }

        var sixtyFourths = (long)Math.Round(
            length.Nanometres * 64 / (decimal)Length.NanometresPerInch);
        var feet = sixtyFourths / (64 * 12);
        var inches = sixtyFourths / 64 % 12;
        var fraction = Fraction(sixtyFourths % 64);
        return $"{Shown(feet)} ft {Shown(inches)}{fraction} in";
    }

    private static string Fraction(long sixtyFourths)
    {
        if (sixtyFourths == 0)
        {
            return "";
        }

        var under = 64L;
        while (sixtyFourths % 2 == 0)
        {
            sixtyFourths /= 2;
            under /= 2;
        }

        return $" {Shown(sixtyFourths)}/{Shown(under)}";
    }

    private static string Shown(decimal number) =>
        number.ToString("0.#", CultureInfo.InvariantCulture);
}
