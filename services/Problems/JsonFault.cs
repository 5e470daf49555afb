using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Unicode;

namespace PostFrame.Problems;

/// <summary>
/// Why a body cannot be read at all, and where: not UTF-8, not JSON, too deep, or a text that is
/// no Unicode. Found by one pass over the tokens that knows its place.
/// </summary>
internal sealed record JsonFault(ProblemKind Kind, string Detail, Mistakes Mistakes)
{
    public const int DeepestLevel = 32;

    public static JsonFault? In(ReadOnlySpan<byte> json)
    {
        if (json.IsEmpty)
        {
            return NotJson("", "", "The body is empty; send a JSON object.");
        }

        if (!Utf8.IsValid(json))
        {
            return NotJson("", "", "The body is not UTF-8 text.");
        }

        var reader = new Utf8JsonReader(json, new JsonReaderOptions { MaxDepth = 1000 });
        var place = new Place();
        try
        {
            while (reader.Read())
            {
                if (place.Enter(ref reader) is { } fault)
                {
                    return fault;
                }
            }

            return null;
        }
        catch (JsonException stop)
        {
            return StoppedAt(json, place.Pointer, stop);
        }
    }

    private static JsonFault StoppedAt(ReadOnlySpan<byte> json, string pointer, JsonException stop)
    {
        var line = (int)(stop.LineNumber ?? 0);
        var lineStart = 0;
        for (var n = 0; n < line; n++)
        {
            lineStart += json[lineStart..].IndexOf((byte)'\n') + 1;
        }

        var at = Math.Min(json.Length, lineStart + (int)(stop.BytePositionInLine ?? 0));
        var found = FoundAt(json, lineStart, at);
        var where = string.Create(
            CultureInfo.InvariantCulture, $"line {line + 1}, column {at - lineStart + 1}");
        var message = found.Contains("NaN") || found.Contains("Infinity")
            ? $"At {where}: {found} is not JSON; every number must be finite."
            : found.Length == 0
                ? $"The body ends at {where} before the JSON is complete."
                : $"The body stops being JSON at {where}.";
        return NotJson(pointer, found, message);
    }

    /// <summary>The word the parser stopped in, or the next few characters.</summary>
    private static string FoundAt(ReadOnlySpan<byte> json, int lineStart, int at)
    {
        var start = at;
        while (start > lineStart && IsWord(json[start - 1]))
        {
            start--;
        }

        var end = at;
        while (end < json.Length && end < at + 20 && IsWord(json[end]))
        {
            end++;
        }

        if (start == end)
        {
            end = Math.Min(json.Length, at + 1);
        }

        var text = Encoding.UTF8.GetString(json[start..end]);
        return Mistakes.Shortened(text.Replace("\uFFFD", ""));
    }

    private static bool IsWord(byte b) =>
        b is (byte)'-' or (byte)'+' or (byte)'.' || char.IsAsciiLetterOrDigit((char)b);

    private static JsonFault NotJson(string pointer, string found, string message)
    {
        var mistakes = new Mistakes();
        mistakes.Add(pointer, "json", found, message);
        return new JsonFault(ProblemKind.MalformedJson, message, mistakes);
    }

    private static JsonFault Refused(
        string pointer, string rule, string found, string message, string? limit, string? unit)
    {
        var mistakes = new Mistakes();
        mistakes.Add(pointer, rule, found, message, limit, unit);
        return new JsonFault(ProblemKind.InvalidRequest, message, mistakes);
    }

    /// <summary>Where in the document the reader stands.</summary>
    private sealed class Place
    {
        private readonly List<Level> _levels = [];

        public string Pointer
        {
            get
            {
                var pointer = new StringBuilder();
                foreach (var level in _levels)
                {
                    if (level.IsArray)
                    {
                        pointer.Append('/').Append(Math.Max(0, level.Index));
                    }
                    else if (level.Name is not null)
                    {
                        pointer.Append('/').Append(JsonPointer.Escaped(level.Name));
                    }
                }

                return pointer.ToString();
            }
        }

        public JsonFault? Enter(ref Utf8JsonReader reader)
        {
            switch (reader.TokenType)
            {
                case JsonTokenType.PropertyName:
                    _levels[^1].Name = null;
                    var broken = TextOf(ref reader, out var name);
                    _levels[^1].Name = name;
                    return broken;
                case JsonTokenType.EndObject or JsonTokenType.EndArray:
                    _levels.RemoveAt(_levels.Count - 1);
                    return null;
            }

            Count();
            if (reader.TokenType is JsonTokenType.StartObject or JsonTokenType.StartArray)
            {
                return Deeper(reader.TokenType is JsonTokenType.StartArray);
            }

            return reader.TokenType is JsonTokenType.String ? TextOf(ref reader, out _) : null;
        }

        private void Count()
        {
            if (_levels.Count > 0 && _levels[^1].IsArray)
            {
                _levels[^1].Index++;
            }
        }

        private JsonFault? Deeper(bool isArray)
        {
            if (_levels.Count == DeepestLevel)
            {
                return Refused(
                    Pointer, "depth", "", $"The JSON is nested deeper than {DeepestLevel} levels.",
                    DeepestLevel.ToString(CultureInfo.InvariantCulture), "levels");
            }

            _levels.Add(new Level { IsArray = isArray, Index = -1 });
            return null;
        }

        private JsonFault? TextOf(ref Utf8JsonReader reader, out string text)
        {
            text = "";
            if (!reader.ValueIsEscaped && reader.TokenType is JsonTokenType.String)
            {
                return null;
            }

            try
            {
                text = reader.GetString()!;
                return null;
            }
            catch (InvalidOperationException)
            {
                return Refused(
                    Pointer, "unicode", "", "An escaped surrogate stands alone; this is no text.",
                    null, null);
            }
        }
    }

    private sealed class Level
    {
        public required bool IsArray { get; init; }

        public int Index { get; set; }

        /// <summary>The member last named, or null before the first.</summary>
        public string? Name { get; set; }
    }
}
