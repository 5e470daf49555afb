using System.Text;

namespace PostFrame.Documents.Drawing;

/// <summary>
/// Joins a Latin letter and the accent typed after it, and narrows full-width letters. The process
/// runs without the tables of a culture library, so those of common names are kept here.
/// </summary>
/// <remarks>Source: canonical decompositions of the Unicode Standard, from memory.</remarks>
internal static class Accents
{
    /// <summary>By accent: letter and joined letter in turn.</summary>
    private static readonly Dictionary<int, string> Pairs = new()
    {
        [0x0300] = "AÀEÈIÌOÒUÙaàeèiìoòuù",
        [0x0301] = "AÁCĆEÉIÍLĹNŃOÓRŔSŚUÚYÝZŹaácćeéiílĺnńoórŕsśuúyýzź",
        [0x0302] = "AÂCĈEÊGĜHĤIÎJĴOÔSŜUÛWŴYŶaâcĉeêgĝhĥiîjĵoôsŝuûwŵyŷ",
        [0x0303] = "AÃIĨNÑOÕUŨaãiĩnñoõuũ",
        [0x0304] = "AĀEĒIĪOŌUŪaāeēiīoōuū",
        [0x0306] = "AĂGĞaăgğ",
        [0x0307] = "CĊEĖGĠIİZŻcċeėgġzż",
        [0x0308] = "AÄEËIÏOÖUÜYŸaäeëiïoöuüyÿ",
        [0x030A] = "AÅUŮaåuů",
        [0x030B] = "OŐUŰoőuű",
        [0x030C] = "CČDĎEĚNŇRŘSŠTŤZŽcčdďeěnňrřsštťzž",
        [0x0327] = "CÇSŞTŢcçsştţ",
        [0x0328] = "AĄEĘIĮUŲaąeęiįuų",
    };

    private const int FirstWide = 0xFF01;
    private const int LastWide = 0xFF5E;
    private const int WideAbovePlain = 0xFEE0;

    public static string Joined(string text)
    {
        var joined = new StringBuilder(text.Length);
        foreach (var rune in text.EnumerateRunes())
        {
            var accented = joined.Length == 0 ? -1 : PairOf(rune, joined[^1]);
            if (accented >= 0)
            {
                joined[^1] = Pairs[rune.Value][accented + 1];
            }
            else
            {
                joined.Append(rune.Value is >= FirstWide and <= LastWide
                    ? ((char)(rune.Value - WideAbovePlain)).ToString()
                    : rune.ToString());
            }
        }

        return joined.ToString();
    }

    private static int PairOf(Rune accent, char letter)
    {
        if (!Pairs.TryGetValue(accent.Value, out var pairs))
        {
            return -1;
        }

        var at = pairs.IndexOf(letter, StringComparison.Ordinal);
        return at % 2 == 0 ? at : -1;
    }
}
