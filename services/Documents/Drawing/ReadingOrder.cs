using System.Text;

namespace PostFrame.Documents.Drawing;

/// <summary>
/// The order in which letters stand on paper: Hebrew, the one right-to-left script the typeface
/// has, is turned; a browser turns it itself.
/// </summary>
/// <remarks>
/// Source: the idea of the Unicode bidirectional algorithm (UAX 9), from memory, in the simple case
/// of one line that reads left to right: runs of right-to-left letters are turned, with what stands
/// between two of them, and the numbers inside are turned back.
/// </remarks>
internal static class ReadingOrder
{
    public static string OnPaper(string text)
    {
        if (!text.EnumerateRunes().Any(IsRightToLeft))
        {
            return text;
        }

        Rune[] runes = [.. text.EnumerateRunes()];
        for (var first = 0; first < runes.Length; first++)
        {
            if (!IsRightToLeft(runes[first]))
            {
                continue;
            }

            var last = first;
            for (var i = first + 1; i < runes.Length && !IsLeftToRight(runes[i]); i++)
            {
                last = IsRightToLeft(runes[i]) ? i : last;
            }

            Turn(runes, first, last);
            first = last;
        }

        return string.Concat(runes.Select(rune => rune.ToString()));
    }

    private static void Turn(Rune[] runes, int first, int last)
    {
        Array.Reverse(runes, first, last - first + 1);
        for (var i = first; i <= last; i++)
        {
            runes[i] = Mirrored(runes[i]);
            var end = i;
            while (end < last && Rune.IsDigit(runes[i]) && Rune.IsDigit(runes[end + 1]))
            {
                end++;
            }

            Array.Reverse(runes, i, end - i + 1);
            i = end;
        }
    }

    private static bool IsRightToLeft(Rune rune) =>
        rune.Value is (>= 0x05BE and <= 0x05F4) or (>= 0xFB1D and <= 0xFB4F);

    private static bool IsLeftToRight(Rune rune) => Rune.IsLetter(rune) && !IsRightToLeft(rune);

    private static Rune Mirrored(Rune rune) => rune.Value switch
    {
        '(' => new(')'),
        ')' => new('('),
        '[' => new(']'),
        ']' => new('['),
        '<' => new('>'),
        '>' => new('<'),
        _ => rune,
    };
}
