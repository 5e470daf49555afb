using System.Globalization;
using System.Text;

namespace PostFrame.Documents.Drawing;

/// <summary>
/// Text as it may be printed: one line, no control, format (direction override, zero width) or
/// broken characters; what the typeface lacks is said in brackets and never drawn as a box.
/// </summary>
internal sealed class PrintableText(Func<Rune, bool> hasShape, int longest)
{
    private readonly StringBuilder clean = new();
    private readonly List<Rune> missing = [];
    private bool isSpaceOpen;

    /// <summary>Whether letters had to be left out.</summary>
    public bool Lacks { get; private set; }

    public string Of(string? text)
    {
        foreach (var rune in Accents.Joined(text ?? "").EnumerateRunes())
        {
            if (clean.Length + missing.Count >= longest)
            {
                break;
            }

            Take(rune);
        }

        SayMissing();
        return clean.ToString().Trim();
    }

    private void Take(Rune rune)
    {
        switch (Rune.GetUnicodeCategory(rune))
        {
            case UnicodeCategory.Format:
            case UnicodeCategory.NonSpacingMark:
            case UnicodeCategory.SpacingCombiningMark when !hasShape(rune):
            case UnicodeCategory.EnclosingMark:
                return;
            case UnicodeCategory.Control:
            case UnicodeCategory.SpaceSeparator:
            case UnicodeCategory.LineSeparator:
            case UnicodeCategory.ParagraphSeparator:
                isSpaceOpen = true;
                return;
            default:
                Print(rune);
                return;
        }
    }

    private void Print(Rune rune)
    {
        if (hasShape(rune))
        {
            SayMissing();
            Space();
            clean.Append(rune.ToString());
            return;
        }

        Lacks = true;
        if (missing.Count == 0)
        {
            Space();
        }

        missing.Add(rune);
        isSpaceOpen = false;
    }

    /// <summary>A name of several words is said as one run of letters.</summary>
    private void SayMissing()
    {
        if (missing.Count == 0)
        {
            return;
        }

        if (clean.Length > 0 && clean[^1] != ' ')
        {
            clean.Append(' ');
        }

        clean.Append(Unprintable.Said(missing));
        missing.Clear();
        isSpaceOpen = true;
    }

    private void Space()
    {
        if (isSpaceOpen && clean.Length > 0 && clean[^1] != ' ')
        {
            clean.Append(' ');
        }

        isSpaceOpen = false;
    }
}
