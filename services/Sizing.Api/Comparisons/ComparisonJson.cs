using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace PostFrame.SizingApi.Comparisons;

[JsonSerializable(typeof(ComparisonBody))]
internal sealed partial class ComparisonJson : JsonSerializerContext
{
    /// <summary>Small names, blanks left out, marks such as ° and ″ as they are.</summary>
    internal static readonly ComparisonJson Wire = new(new JsonSerializerOptions
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    });
}
