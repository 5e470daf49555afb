using System.Globalization;
using System.Text;
using SkiaSharp;

namespace PostFrame.Documents.Drawing;

/// <summary>
/// The one typeface on paper, carried inside the library, with measuring, cleaning and fitting.
/// </summary>
internal static class Lettering
{
    /// <summary>
    /// Height of a capital letter ÷ letter size. Source: OS/2 table of the font file.
    /// </summary>
    public const double CapHeight = 1409.0 / 2048;

    /// <summary>Printed where the typeface has no shape for a character.</summary>
    private const char NoShape = '□';

    /// <summary>No honest name is longer; a hostile one must not cost time.</summary>
    private const int LongestName = 300;

    /// <summary>For texts of several lines.</summary>
    public const int LongestText = 4000;

    private static readonly SKTypeface Regular = Load("LiberationSans-Regular.ttf");
    private static readonly SKTypeface Bold = Load("LiberationSans-Bold.ttf");
    private static readonly SKFont RegularRule = Rule(Regular);
    private static readonly SKFont BoldRule = Rule(Bold);

    public static SKFont Font(Words words) =>
        new(words.Bold ? Bold : Regular, (float)words.Size, (float)words.ScaleX)
        {
            Subpixel = true,
            Hinting = SKFontHinting.None,
            LinearMetrics = true,
        };

    /// <summary>Advance width [pt] of clean text at a letter size [pt].</summary>
    public static double Width(string text, double size, bool bold)
    {
        var rule = bold ? BoldRule : RegularRule;
        lock (rule)
        {
            return rule.MeasureText(text) * size / RuleSize;
        }
    }

    /// <summary>
    /// Text as it may be printed: one line, no control, format (direction override, zero width),
    /// private or broken characters, and a box for whatever the typeface lacks.
    /// </summary>
    public static string Clean(string? text, int longest = LongestName)
    {
        var clean = new StringBuilder();
        foreach (var rune in Composed(text ?? "").EnumerateRunes())
        {
            if (clean.Length >= longest)
            {
                break;
            }

            Append(clean, rune);
        }

        return clean.ToString().Trim();
    }

    /// <summary>
    /// The text and letter size that keep within a width: shrunk as far as the smallest size, then
    /// cut with an ellipsis.
    /// </summary>
    public static (string Text, double Size) Fit(
        string text, double widthPt, double size, double smallest, bool bold = false)
    {
        var natural = Width(text, size, bold);
        if (natural <= widthPt)
        {
            return (text, size);
        }

        var shrunk = Math.Max(smallest, size * widthPt / natural * 0.999);
        if (Width(text, shrunk, bold) <= widthPt)
        {
            return (text, shrunk);
        }

        return (Shortened(text, widthPt, shrunk, bold), shrunk);
    }

    /// <summary>
    /// The longest beginning that fits with its ellipsis; nothing if not one letter.
    /// </summary>
    private static string Shortened(string text, double widthPt, double size, bool bold)
    {
        var (keep, tooLong) = (0, text.Length);
        while (tooLong - keep > 1)
        {
            var middle = (keep + tooLong) / 2;
            var fits = Width(text[..middle].TrimEnd() + "…", size, bold) <= widthPt;
            (keep, tooLong) = fits ? (middle, tooLong) : (keep, middle);
        }

        return keep == 0 ? "" : text[..keep].TrimEnd() + "…";
    }

    /// <summary>Lines no wider than the width, broken at spaces; a longer word is fitted.</summary>
    public static IReadOnlyList<string> Wrap(
        string text, double widthPt, double size, bool bold = false)
    {
        var lines = new List<string>();
        var line = "";
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            var longer = line.Length == 0 ? word : $"{line} {word}";
            if (line.Length > 0 && Width(longer, size, bold) > widthPt)
            {
                lines.Add(line);
                longer = word;
            }

            line = Fit(longer, widthPt, size, size, bold).Text;
        }

        if (line.Length > 0)
        {
            lines.Add(line);
        }

        return lines;
    }

    private const float RuleSize = 1000;

    private static SKFont Rule(SKTypeface face) => new(face, RuleSize)
    {
        Subpixel = true,
        Hinting = SKFontHinting.None,
        LinearMetrics = true,
    };

    private static SKTypeface Load(string name)
    {
        using var stream = typeof(Lettering).Assembly.GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"The typeface {name} is not in the library.");
        using var data = SKData.Create(stream);
        return SKTypeface.FromData(data)
            ?? throw new InvalidOperationException($"The typeface {name} cannot be read.");
    }

    /// <summary>Accents joined to their letters; a broken surrogate cannot be normalised.</summary>
    private static string Composed(string text)
    {
        var whole = new StringBuilder(text.Length);
        foreach (var rune in text.EnumerateRunes())
        {
            whole.Append(rune.ToString());
        }

        return whole.ToString().Normalize(NormalizationForm.FormC);
    }

    private static void Append(StringBuilder clean, Rune rune)
    {
        switch (Rune.GetUnicodeCategory(rune))
        {
            case UnicodeCategory.Format:
            case UnicodeCategory.NonSpacingMark:
            case UnicodeCategory.EnclosingMark:
                return;
            case UnicodeCategory.Control:
            case UnicodeCategory.SpaceSeparator:
            case UnicodeCategory.LineSeparator:
            case UnicodeCategory.ParagraphSeparator:
                if (clean.Length > 0 && clean[^1] != ' ')
                {
                    clean.Append(' ');
                }

                return;
            default:
                clean.Append(HasShape(rune) ? rune.ToString() : NoShape.ToString());
                return;
        }
    }

    private static bool HasShape(Rune rune)
    {
        lock (RegularRule)
        {
            return RegularRule.GetGlyph(rune.Value) != 0;
        }
    }
}
