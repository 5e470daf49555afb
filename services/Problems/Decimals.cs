using System.Text.RegularExpressions;

namespace PostFrame.Problems;

/// <summary>How many decimals a written size may have: nine reach a nanometre of a metre.
/// </summary>
internal static partial class Decimals
{
    public const string TooFine = "too-fine";

    public const string Most = "9";

    public const string Unit = "decimals";

    public const string Message = "Give at most 9 decimals.";

    private const int LongestText = 200;

    /// <summary>The text with every decimal after the ninth left out.</summary>
    public static string Cut(string text) =>
        text.Length > LongestText ? text : Long().Replace(text, "$1");

    [GeneratedRegex(@"(\.[0-9]{9})[0-9]+")]
    private static partial Regex Long();
}
