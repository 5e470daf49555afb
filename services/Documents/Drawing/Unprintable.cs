using System.Globalization;
using System.Text;

namespace PostFrame.Documents.Drawing;

/// <summary>
/// What stands on paper for letters the typeface has no shape for: how many of what, in brackets,
/// such as "[4 Chinese characters]". A reader sees that something is missing and where to look.
/// </summary>
/// <remarks>Source: ranges of the Unicode Standard's blocks, from memory.</remarks>
internal static class Unprintable
{
    /// <summary>First and last code point, what one is called and what several are.</summary>
    private static readonly (int First, int Last, string One, string Several)[] Scripts =
    [
        (0x0530, 0x058F, "Armenian letter", "Armenian letters"),
        (0x0600, 0x06FF, "Arabic letter", "Arabic letters"),
        (0x0750, 0x077F, "Arabic letter", "Arabic letters"),
        (0x08A0, 0x08FF, "Arabic letter", "Arabic letters"),
        (0xFB50, 0xFDFF, "Arabic letter", "Arabic letters"),
        (0xFE70, 0xFEFE, "Arabic letter", "Arabic letters"),
        (0x0900, 0x0DFF, "Indic letter", "Indic letters"),
        (0x0E00, 0x0E7F, "Thai letter", "Thai letters"),
        (0x0E80, 0x0EFF, "Lao letter", "Lao letters"),
        (0x1000, 0x109F, "Burmese letter", "Burmese letters"),
        (0x10A0, 0x10FF, "Georgian letter", "Georgian letters"),
        (0x1200, 0x139F, "Ethiopic letter", "Ethiopic letters"),
        (0x1780, 0x17FF, "Khmer letter", "Khmer letters"),
        (0x1100, 0x11FF, "Korean letter", "Korean letters"),
        (0x3130, 0x318F, "Korean letter", "Korean letters"),
        (0xAC00, 0xD7AF, "Korean letter", "Korean letters"),
        (0x3040, 0x30FF, "Japanese letter", "Japanese letters"),
        (0x3400, 0x9FFF, "Chinese character", "Chinese characters"),
        (0xF900, 0xFAFF, "Chinese character", "Chinese characters"),
        (0x20000, 0x3FFFF, "Chinese character", "Chinese characters"),
        (0x2600, 0x27BF, "picture", "pictures"),
        (0x1F000, 0x1FAFF, "picture", "pictures"),
    ];

    private static readonly (int First, int Last, string One, string Several) Other =
        (0, 0, "sign", "signs");

    /// <summary>What several letters in a row are called; one entry for each script.</summary>
    public static string Said(IReadOnlyList<Rune> runes)
    {
        var said = new StringBuilder();
        for (var first = 0; first < runes.Count;)
        {
            var script = ScriptOf(runes[first]);
            var count = runes.Skip(first).TakeWhile(rune => ScriptOf(rune) == script).Count();
            said.Append(said.Length == 0 ? "[" : ", ").Append(string.Create(
                CultureInfo.InvariantCulture,
                $"{count} {(count == 1 ? script.One : script.Several)}"));
            first += count;
        }

        return said.Append(']').ToString();
    }

    private static (int First, int Last, string One, string Several) ScriptOf(Rune rune)
    {
        var found = Array.Find(
            Scripts, script => rune.Value >= script.First && rune.Value <= script.Last);
        return found.One is null
            ? Other
            : Array.Find(Scripts, script => script.One == found.One);
    }
}
