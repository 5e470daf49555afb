using System.Globalization;
using System.Text.RegularExpressions;
using PostFrame.Engine.Quantities;

namespace PostFrame.Problems;

/// <summary>
/// Roof slopes as people write them: <c>4:12</c>, <c>4/12</c>, <c>4 in 12</c>, <c>4 1/2:12</c>,
/// <c>18.5 deg</c>, <c>33 %</c>. A bare number could be any of the three and is refused.
/// </summary>
public static partial class SlopeText
{
    /// <summary>How a slope may be written, for messages.</summary>
    public const string Forms = "4:12, 18.5 deg or 33 %";

    private const int LongestText = 24;

    /// <summary>The slope, or null when the text is none.</summary>
    public static Slope? Read(string text)
    {
        var plain = text.Trim().ToLowerInvariant();
        if (plain.Length > LongestText)
        {
            return null;
        }

        if (Ratio().Match(plain) is { Success: true } ratio)
        {
            return FractionOf(ratio) is { } rise ? Slope.FromRisePer12(Sign(ratio) * rise) : null;
        }

        if (Percent().Match(plain) is { Success: true } percent)
        {
            return Slope.FromPercent(Sign(percent) * Number(percent.Groups["number"]));
        }

        if (Degrees().Match(plain) is { Success: true } degrees
            && Number(degrees.Groups["number"]) is < 90 and var angle)
        {
            return Slope.FromDegrees(Sign(degrees) * angle);
        }

        return null;
    }

    /// <summary>True for a slope but for having more than nine decimals.</summary>
    public static bool IsTooFine(string text) =>
        Decimals.Cut(text) is var shorter && shorter != text && Read(shorter) is not null;

    private static double? FractionOf(Match match)
    {
        var rise = Number(match.Groups["number"]);
        if (!match.Groups["over"].Success)
        {
            return rise;
        }

        var under = Number(match.Groups["under"]);
        return under == 0 ? null : rise + (Number(match.Groups["over"]) / under);
    }

    private static int Sign(Match match) => match.Groups["minus"].Success ? -1 : 1;

    private static double Number(Group group) =>
        double.Parse(group.Value, CultureInfo.InvariantCulture);

    [GeneratedRegex(
        @"^(?<minus>-)?(?<number>[0-9]{1,4}(\.[0-9]{1,9})?)"
        + @"([ -](?<over>[0-9]{1,2})/(?<under>[0-9]{1,2}))?"
        + @" ?(:|/|in) ?12$")]
    private static partial Regex Ratio();

    [GeneratedRegex(@"^(?<minus>-)?(?<number>[0-9]{1,4}(\.[0-9]{1,9})?) ?(%|percent)$")]
    private static partial Regex Percent();

    [GeneratedRegex(@"^(?<minus>-)?(?<number>[0-9]{1,3}(\.[0-9]{1,9})?) ?(deg|degrees?|°)$")]
    private static partial Regex Degrees();
}
