using System.Text.Json;
using System.Text.Json.Nodes;

namespace PostFrame.SizingApi.Comparisons;

/// <summary>
/// The example comparisons of <c>contracts/examples</c>, carried in the assembly.
/// </summary>
internal static class ComparisonExamples
{
    private const string Root = "comparisons/";
    private const string Ending = ".comparison.json";

    /// <summary>Id (file name without ending) and request, in file order.</summary>
    public static IReadOnlyList<(string Id, JsonNode Request)> All { get; } =
    [
        .. typeof(ComparisonExamples).Assembly.GetManifestResourceNames()
            .Where(name => name.StartsWith(Root, StringComparison.Ordinal))
            .Order(StringComparer.Ordinal)
            .Select(name => (name[Root.Length..^Ending.Length], Read(name))),
    ];

    /// <summary>The examples with a title each, for the comparison page.</summary>
    public static byte[] AsJson() => JsonSerializer.SerializeToUtf8Bytes(new JsonArray([
        .. All.Select(JsonNode (example) => new JsonObject
        {
            ["id"] = example.Id,
            ["title"] = example.Id[(example.Id.IndexOf('-') + 1)..].Replace('-', ' '),
            ["request"] = example.Request.DeepClone(),
        }),
    ]));

    private static JsonNode Read(string name)
    {
        using var stream = typeof(ComparisonExamples).Assembly.GetManifestResourceStream(name)!;
        return JsonNode.Parse(stream)!;
    }
}
