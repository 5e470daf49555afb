using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace PostFrame.SizingApi.Sizings;

[JsonSerializable(typeof(TakeOffBody))]
internal sealed partial class SizingJson : JsonSerializerContext
{
    /// <summary>What this service writes: small names, readable marks of feet and inches.</summary>
    internal static readonly SizingJson Wire = new(new JsonSerializerOptions
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    });
}
