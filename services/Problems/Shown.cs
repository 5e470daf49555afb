using System.Globalization;
using System.Text.Json;

namespace PostFrame.Problems;

/// <summary>How values appear in messages: short, and without control characters.</summary>
internal static class Shown
{
    public static string Number(double number) => number.ToString(CultureInfo.InvariantCulture);

    public static string Text(string text)
    {
        var shortened = Mistakes.Shortened(text);
        return shortened.Any(char.IsControl)
            ? string.Concat(shortened.Select(c => char.IsControl(c) ? '\uFFFD' : c))
            : shortened;
    }

    public static string Value(JsonElement element) => element.ValueKind switch
    {
        JsonValueKind.Object => "{…}",
        JsonValueKind.Array => "[…]",
        JsonValueKind.String when element.ValueEquals("") => "\"\"",
        JsonValueKind.String => Text(element.GetString()!),
        _ => Mistakes.Shortened(element.GetRawText()),
    };

    public static string Kind(JsonElement element) => element.ValueKind switch
    {
        JsonValueKind.Object => "an object",
        JsonValueKind.Array => "a list",
        JsonValueKind.String => "a text",
        JsonValueKind.Number => "a number",
        JsonValueKind.Null => "null",
        _ => "true or false",
    };

    public static string Listed(ReadOnlySpan<string> words) => string.Join(", ", words!);
}
