using PostFrame.Documents.Drawing;

namespace PostFrame.Documents.BarCodes;

/// <summary>
/// Code 128 of printable ASCII, in code sets B and C. Source: ISO/IEC 15417 as summarised in public
/// tutorials (the standard itself was not read); width patterns checked by decoding.
/// </summary>
internal static class Code128
{
    public const int StartB = 104;
    public const int StartC = 105;
    public const int Fnc1 = 102;
    private const int ToC = 99;
    private const int ToB = 100;
    private const int Stop = 106;
    private const int QuietModules = 10;

    /// <summary>
    /// Symbol values from start to stop with the check value. A number of four or more digits at
    /// the end, or of six inside, is packed in pairs (set C).
    /// </summary>
    /// <exception cref="ArgumentException">No text, or not ASCII 32–126.</exception>
    public static IReadOnlyList<int> Values(string text)
    {
        if (text.Length == 0 || text.Any(c => c is < ' ' or > '~'))
        {
            throw new ArgumentException("Code 128 takes printable ASCII.", nameof(text));
        }

        var values = new List<int>();
        var inC = false;
        for (var i = 0; i < text.Length;)
        {
            var digits = text.Skip(i).TakeWhile(char.IsAsciiDigit).Count();
            if (Packs(digits, i, text.Length))
            {
                Switch(values, ref inC, true);
                for (var pairs = digits / 2; pairs > 0; pairs--, i += 2)
                {
                    values.Add((text[i] - '0') * 10 + text[i + 1] - '0');
                }

                continue;
            }

            Switch(values, ref inC, false);
            values.Add(text[i++] - ' ');
        }

        return Closed(values);
    }

    /// <summary>Appends check value and stop to start and data values.</summary>
    public static IReadOnlyList<int> Closed(IReadOnlyList<int> values)
    {
        var sum = values[0];
        for (var position = 1; position < values.Count; position++)
        {
            sum += position * values[position];
        }

        return [.. values, sum % 103, Stop];
    }

    /// <summary>Width with both quiet zones [modules].</summary>
    public static int Modules(IReadOnlyList<int> values) =>
        (values.Count - 1) * 11 + 13 + 2 * QuietModules;

    /// <summary>
    /// Draws the bars with their quiet zones from the left of the frame, as high as the frame, at a
    /// module width [pt].
    /// </summary>
    public static void Draw(Sketch sketch, Frame frame, IReadOnlyList<int> values, double module)
    {
        var bars = new List<Frame>();
        var at = QuietModules;
        foreach (var value in values)
        {
            for (var i = 0; i < Widths[value].Length; i++)
            {
                var wide = Widths[value][i] - '0';
                if (i % 2 == 0)
                {
                    var left = frame.X + at * module;
                    bars.Add(new Frame(left, frame.Y, wide * module, frame.Height));
                }

                at += wide;
            }
        }

        sketch.Bars(bars);
    }

    private static bool Packs(int digits, int at, int length)
    {
        var atEnd = at + digits == length;
        return digits % 2 == 0 && (digits >= 6 || (digits >= 4 && (at == 0 || atEnd))
            || (digits == 2 && length == 2));
    }

    private static void Switch(List<int> values, ref bool inC, bool toC)
    {
        if (values.Count == 0)
        {
            values.Add(toC ? StartC : StartB);
        }
        else if (inC != toC)
        {
            values.Add(toC ? ToC : ToB);
        }

        inC = toC;
    }

    /// <summary>Bar, space, bar, space, bar, space of each value [modules].</summary>
    internal static readonly string[] Widths = (
        "212222 222122 222221 121223 121322 131222 122213 122312 132212 221213 221312 231212 "
        + "112232 122132 122231 113222 123122 123221 223211 221132 221231 213212 223112 312131 "
        + "311222 321122 321221 312212 322112 322211 212123 212321 232121 111323 131123 131321 "
        + "112313 132113 132311 211313 231113 231311 112133 112331 132131 113123 113321 133121 "
        + "313121 211331 231131 213113 213311 213131 311123 311321 331121 312113 312311 332111 "
        + "314111 221411 431111 111224 111422 121124 121421 141122 141221 112214 112412 122114 "
        + "122411 142112 142211 241211 221114 413111 241112 134111 111242 121142 121241 114212 "
        + "124112 124211 411212 421112 421211 212141 214121 412121 111143 111341 131141 114113 "
        + "114311 411113 411311 113141 114131 311141 411131 211412 211214 211232 2331112")
        .Split(' ');
}
