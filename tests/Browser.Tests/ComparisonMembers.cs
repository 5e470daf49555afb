using System.Text.Json;
using System.Text.Json.Nodes;

namespace PostFrame.BrowserTests;

/// <summary>What a comparison request may hold, by the published document.</summary>
internal static class ComparisonMembers
{
    /// <summary>JSON Pointers of every member; item 0 stands for the items of a list.</summary>
    public static IReadOnlyList<string> All()
    {
        var folder = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(folder, "PostFrameServices.sln")))
            folder = Path.GetDirectoryName(folder)!;
        var schemas = JsonNode.Parse(File.ReadAllText(
            Path.Combine(folder, "contracts", "sizing.openapi.json")))!["components"]!["schemas"]!;
        return [.. Members(schemas, "ComparisonRequest", "")];
    }

    private static IEnumerable<string> Members(JsonNode schemas, string name, string path)
    {
        foreach (var (member, form) in schemas[name]!["properties"]!.AsObject())
        {
            if (Reference(form!) is { } other)
            {
                foreach (var inner in Members(schemas, other, $"{path}/{member}"))
                    yield return inner;
            }
            else if (form!["items"] is { } items && Reference(items) is { } item)
            {
                foreach (var inner in Members(schemas, item, $"{path}/{member}/0"))
                    yield return inner;
            }
            else yield return $"{path}/{member}";
        }
    }

    private static string? Reference(JsonNode form) =>
        ((string?)form["$ref"])?.Split('/')[^1];
}
