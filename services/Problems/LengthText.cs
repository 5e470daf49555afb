using System.Globalization;
using System.Text.RegularExpressions;

namespace PostFrame.Problems;

/// <summary>
/// Lengths as people write them: <c>10 ft</c>, <c>12' 6 1/2"</c>, <c>126 in</c>, <c>4.2 m</c>,
/// <c>4200 mm</c>. Exact: decimals and fractions are turned into whole nanometres without a
/// binary fraction between. A number without a unit is refused, never guessed.
/// </summary>
public static partial class LengthText
{
    private const decimal NmPerInch = 25_400_000m;
    private const decimal MaxNanometres = 10_000_000_000_000m; // 10 km, far beyond any building
    private const int LongestText = 40;

    /// <summary>How a length may be written, for messages.</summary>
    public const string Forms = "10 ft, 12' 6 1/2\", 126 in, 4.2 m";

    /// <summary>Reads a length, or says which rule it breaks.</summary>
    public static LengthReading Read(string text)
    {
        var plain = Plain(text);
        if (Decimals.Cut(plain) is { } shorter && shorter != plain
            && Read(shorter).Rule is null)
        {
            return LengthReading.Broken(Decimals.TooFine, Decimals.Message, Decimals.Most,
                Decimals.Unit);
        }

        if (plain.Length is 0 or > LongestText)
        {
            return LengthReading.Broken("length-format", $"Write a length like {Forms}.");
        }

        if (Metric().Match(plain) is { Success: true } metric)
        {
            return InMetric(metric);
        }

        if (Imperial().Match(plain) is { Success: true } imperial && imperial.Length > 0)
        {
            return InFeetAndInches(imperial);
        }

        return BareNumber().IsMatch(plain)
            ? LengthReading.Broken(
                "unit-missing", $"Which unit? Write a length like {Forms}.")
            : LengthReading.Broken(
                "length-format", $"Write a length like {Forms}.");
    }

    private static LengthReading InMetric(Match match)
    {
        var perUnit = match.Groups["unit"].Value switch
        {
            "mm" or "milli" => 1_000_000m,
            "cm" or "centi" => 10_000_000m,
            _ => 1_000_000_000m,
        };
        return Signed(match, Number(match.Groups["number"]) * perUnit, isMetric: true);
    }

    private static LengthReading InFeetAndInches(Match match)
    {
        var isBare = HasInches(match) && !match.Groups["mark"].Success;
        if (isBare && match.Groups["foot"].Value != "'")
        {
            return match.Groups["feet"].Success
                ? LengthReading.Broken(
                    "length-format",
                    $"Give the second number a unit too, like 12' 6\" or 12 ft 6 in.")
                : LengthReading.Broken(
                    "unit-missing", $"Which unit? Write a length like {Forms}.");
        }

        if (!TryInches(match, out var inches, out var broken))
        {
            return broken;
        }

        var feet = match.Groups["feet"].Success ? Number(match.Groups["feet"]) : 0;
        if (match.Groups["feet"].Success && HasInches(match))
        {
            if (inches >= 12)
            {
                return LengthReading.Broken(
                    "inches-after-feet", "After feet, inches must be less than 12.", "12", "in");
            }

            if (feet != decimal.Truncate(feet))
            {
                return LengthReading.Broken(
                    "length-format", "Feet before inches must be a whole number.");
            }
        }

        return Signed(match, ((feet * 12) + inches) * NmPerInch, isMetric: false);
    }

    private static bool HasInches(Match match) =>
        match.Groups["inches"].Success || match.Groups["over"].Success;

    private static bool TryInches(Match match, out decimal inches, out LengthReading broken)
    {
        broken = default;
        inches = match.Groups["inches"].Success ? Number(match.Groups["inches"]) : 0;
        if (!match.Groups["over"].Success)
        {
            return true;
        }

        var over = Number(match.Groups["over"]);
        var under = Number(match.Groups["under"]);
        if (under is 0 or > 64 || (match.Groups["inches"].Success && over >= under)
            || inches != decimal.Truncate(inches))
        {
            broken = LengthReading.Broken(
                "length-format",
                "The fraction of an inch must be like 1/2, 3/16 or 5/64.", "64", "denominator");
            return false;
        }

        inches += over / under;
        return true;
    }

    private static LengthReading Signed(Match match, decimal nanometres, bool isMetric)
    {
        if (nanometres > MaxNanometres)
        {
            return LengthReading.Broken(
                "length-too-large", "No building is that large.",
                isMetric ? "10000" : "32808", isMetric ? "m" : "ft");
        }

        var whole = (long)Math.Round(nanometres, MidpointRounding.AwayFromZero);
        return LengthReading.Of(match.Groups["minus"].Success ? -whole : whole, isMetric);
    }

    private static decimal Number(Group group) =>
        decimal.Parse(group.Value, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);

    /// <summary>One spelling: ASCII marks, plain fractions, single blanks, lower case.</summary>
    private static string Plain(string text)
    {
        if (text.Length > 2 * LongestText)
        {
            return text;
        }

        var plain = text.Trim().ToLowerInvariant()
            .Replace("''", "\"").Replace('′', '\'').Replace('’', '\'').Replace('″', '"')
            .Replace('”', '"').Replace('\u2212', '-').Replace('\u00A0', ' ')
            .Replace("½", " 1/2").Replace("¼", " 1/4").Replace("¾", " 3/4").Replace("⅛", " 1/8")
            .Replace("⅜", " 3/8").Replace("⅝", " 5/8").Replace("⅞", " 7/8");
        return Blanks().Replace(plain, " ").Trim();
    }

    [GeneratedRegex(@"\s+")]
    private static partial Regex Blanks();

    [GeneratedRegex(
        @"^(?<minus>-)?(?<number>[0-9]{1,9}(\.[0-9]{1,9})?|\.[0-9]{1,9}) ?"
        + @"((?<unit>mm|cm|m)|(?<unit>milli|centi|)met(er|re)s?)$")]
    private static partial Regex Metric();

    [GeneratedRegex(
        @"^(?<minus>-)?"
        + @"((?<feet>[0-9]{1,9}(\.[0-9]{1,9})?|\.[0-9]{1,9}) ?(?<foot>'|ft\.?|feet|foot) ?-? ?)?"
        + @"(((?<inches>[0-9]{1,9}(\.[0-9]{1,9})?|\.[0-9]{1,9})"
        + @"([ -] ?(?<over>[0-9]{1,4})/(?<under>[0-9]{1,4}))?"
        + @"|(?<over>[0-9]{1,4})/(?<under>[0-9]{1,4})) ?(?<mark>""|in\.?|inches|inch)?)?$")]
    private static partial Regex Imperial();

    [GeneratedRegex(@"^-?[0-9.,/ ]+$")]
    private static partial Regex BareNumber();
}
