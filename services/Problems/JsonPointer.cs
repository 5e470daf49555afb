using System.Globalization;

namespace PostFrame.Problems;

/// <summary>JSON Pointer (RFC 6901): <c>~</c> is <c>~0</c>, <c>/</c> is <c>~1</c>.</summary>
internal static class JsonPointer
{
    private const int LongestName = 200;

    public static string Of(string parent, string name) => parent + "/" + Escaped(name);

    public static string Of(string parent, int index) =>
        parent + "/" + index.ToString(CultureInfo.InvariantCulture);

    public static string Escaped(string name)
    {
        var kept = name.Length > LongestName ? name[..LongestName] + "…" : name;
        return kept.Replace("~", "~0").Replace("/", "~1");
    }
}
