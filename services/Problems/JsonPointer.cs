using System.Globalization;
using System.Text.Json;

namespace PostFrame.Problems;

/// <summary>JSON Pointer (RFC 6901): <c>~</c> is <c>~0</c>, <c>/</c> is <c>~1</c>.</summary>
internal static class JsonPointer
{
    private const int LongestName = 200;

    public static string Of(string parent, string name) => parent + "/" + Escaped(name);

    public static string Of(string parent, int index) =>
        parent + "/" + index.ToString(CultureInfo.InvariantCulture);

    /// <summary>What a pointer leads to; null where it leads nowhere.</summary>
    public static JsonElement? Find(JsonDocument? document, string pointer)
    {
        if (document?.RootElement is not { } place)
        {
            return null;
        }

        foreach (var step in pointer.Split('/').Skip(1))
        {
            var name = step.Replace("~1", "/").Replace("~0", "~");
            if (place.ValueKind == JsonValueKind.Object
                && place.TryGetProperty(name, out var member))
            {
                place = member;
            }
            else if (place.ValueKind == JsonValueKind.Array
                && int.TryParse(name, NumberStyles.None, CultureInfo.InvariantCulture, out var n)
                && n < place.GetArrayLength())
            {
                place = place[n];
            }
            else
            {
                return null;
            }
        }

        return place;
    }

    public static string Escaped(string name)
    {
        var kept = name.Length > LongestName ? name[..LongestName] + "…" : name;
        return kept.Replace("~", "~0").Replace("/", "~1");
    }
}
