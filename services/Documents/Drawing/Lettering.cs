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

    /// <summary>No honest name is longer; a hostile one must not cost time.</summary>
    private const int LongestName = 300;

    /// <summary>For a sheet whose names are not all there.</summary>
    public const string LackRemark =
        "Words in [ ] stand for letters this sheet cannot print; see the name on screen.";

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
    /// Text as it may be printed: one line, nothing that acts, and in brackets what the typeface
    /// lacks.
    /// </summary>
    public static string Clean(string? text, int longest = LongestName) =>
        new PrintableText(HasShape, longest).Of(text);

    /// <summary>Whether part of the text cannot be printed.</summary>
    public static bool Lacks(string? text)
    {
        var printable = new PrintableText(HasShape, LongestName);
        printable.Of(text);
        return printable.Lacks;
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

    private static bool HasShape(Rune rune)
    {
        lock (RegularRule)
        {
            return RegularRule.GetGlyph(rune.Value) != 0;
        }
    }
}
