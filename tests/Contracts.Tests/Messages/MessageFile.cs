using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;
using PostFrame.ContractsTests.Tidy;

namespace PostFrame.ContractsTests.Messages;

/// <summary>One message of <c>contracts/messages</c>: its schema and its examples.</summary>
internal sealed class MessageFile
{
    private static readonly string Folder =
        Path.Combine(SourceTree.Root, "contracts", "messages");

    private readonly JsonSchema _schema;

    private MessageFile(string name)
    {
        Name = name;
        Schema = Read("schema").AsObject();
        Example = Read("example").AsObject();
        Invalid = Read("invalid").AsArray();
        _schema = JsonSchema.FromText(Schema.ToJsonString());
    }

    public static IReadOnlyList<string> Names { get; } =
        [.. Directory.GetFiles(Folder, "*.schema.json")
            .Select(path => Path.GetFileName(path)[..^".schema.json".Length]).Order()];

    public string Name { get; }

    public JsonObject Schema { get; }

    public JsonObject Example { get; }

    /// <summary>Each: why, patch (RFC 6902), and the place the schema must object to.</summary>
    public JsonArray Invalid { get; }

    public static MessageFile Of(string name) => new(name);

    /// <summary>The places the schema objects to; empty when the message is valid.</summary>
    public IReadOnlyList<string> Objections(JsonNode? message) => Objections(_schema, message);

    /// <summary>As above, and every member the schema does not name is objected to.</summary>
    public IReadOnlyList<string> StrictObjections(JsonNode? message) =>
        Objections(JsonSchema.FromText(Closed(Schema.DeepClone())!.ToJsonString()), message);

    private static List<string> Objections(JsonSchema schema, JsonNode? message)
    {
        var result = schema.Evaluate(message, new EvaluationOptions
        {
            OutputFormat = OutputFormat.List,
            RequireFormatValidation = true,
        });
        return [.. result.Details.Where(detail => !detail.IsValid && detail.HasErrors)
            .Select(detail => detail.InstanceLocation.ToString()).Distinct().Order()];
    }

    private static JsonNode? Closed(JsonNode? node)
    {
        if (node is JsonObject place)
        {
            place.Remove("$id");
            if (place["type"]?.GetValueKind() is JsonValueKind.String
                && place["properties"] is not null)
            {
                place["additionalProperties"] = false;
            }

            foreach (var child in place.Select(member => member.Value).ToList())
            {
                Closed(child);
            }
        }
        else if (node is JsonArray list)
        {
            list.ToList().ForEach(child => Closed(child));
        }

        return node;
    }

    private JsonNode Read(string part) =>
        JsonNode.Parse(File.ReadAllText(Path.Combine(Folder, $"{Name}.{part}.json")))!;
}
