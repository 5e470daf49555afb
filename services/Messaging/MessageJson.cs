using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace PostFrame.Messaging;

/// <summary>
/// How messages are written: camelCase members, instants as UTC with milliseconds.
/// </summary>
public static class MessageJson
{
    /// <summary>For bodies in the outbox, and for tests that hold a record against its
    /// schema.</summary>
    public static readonly JsonSerializerOptions Options = Adapt(new(JsonSerializerDefaults.Web)
    {
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
    });

    internal static JsonSerializerOptions Adapt(JsonSerializerOptions options)
    {
        options.DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull;
        options.Converters.Insert(0, new Instant());
        return options;
    }

    private sealed class Instant : JsonConverter<DateTimeOffset>
    {
        private const string Form = "yyyy-MM-dd'T'HH:mm:ss.fff'Z'";

        public override DateTimeOffset Read(
            ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            reader.GetDateTimeOffset();

        public override void Write(
            Utf8JsonWriter writer, DateTimeOffset value, JsonSerializerOptions options) =>
            writer.WriteStringValue(
                value.UtcDateTime.ToString(Form, CultureInfo.InvariantCulture));
    }
}
