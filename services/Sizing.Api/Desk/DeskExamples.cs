using System.Text.Json;
using System.Text.Json.Nodes;

namespace PostFrame.SizingApi.Desk;

/// <summary>The example buildings of <c>contracts/examples</c>, carried in the assembly.</summary>
internal static class DeskExamples
{
    private const string Root = "examples/";
    private const string Ending = ".sizing.json";

    /// <summary>Id (file name without ending) and request, in file order.</summary>
    public static IReadOnlyList<(string Id, string Title, JsonNode Request)> All { get; } = Load();

    public static byte[] AsJson()
    {
        var list = new JsonArray();
        foreach (var (id, title, request) in All)
        {
            list.Add(new JsonObject
            {
                ["id"] = id,
                ["title"] = title,
                ["request"] = request.DeepClone(),
            });
        }

        return JsonSerializer.SerializeToUtf8Bytes(list);
    }

    private static List<(string, string, JsonNode)> Load()
    {
        var assembly = typeof(DeskExamples).Assembly;
        var examples = new List<(string, string, JsonNode)>();
        foreach (var name in assembly.GetManifestResourceNames()
            .Where(name => name.StartsWith(Root, StringComparison.Ordinal))
            .Order(StringComparer.Ordinal))
        {
            using var stream = assembly.GetManifestResourceStream(name)!;
            var request = JsonNode.Parse(stream)!;
            examples.Add((
                name[Root.Length..^Ending.Length],
                request["building"]!["name"]!.GetValue<string>(), request));
        }

        return examples;
    }
}
