using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;
using PostFrame.ContractsTests.Tidy;

namespace PostFrame.ContractsTests.Served;

/// <summary>One OpenAPI file of <c>contracts/</c>, to judge requests and answers by.</summary>
internal sealed class ServedDocument
{
    private const string Json = "application/json";

    private readonly JsonObject _document;

    private ServedDocument(JsonObject document) => _document = document;

    public static ServedDocument Of(string name) => new(JsonNode.Parse(File.ReadAllText(
        Path.Combine(SourceTree.Root, "contracts", name + ".openapi.json")))!.AsObject());

    /// <summary>What the document objects to in an answer; empty when it is as promised.</summary>
    public IReadOnlyList<string> AnswerObjections(
        string path, string method, int status, JsonNode? body)
    {
        var content = _document["paths"]?[path]?[method]?["responses"]?[status.ToString()]
            ?["content"]?.AsObject();
        return content is null
            ? [$"{method} {path} promises no {status} with a body"]
            : Objections(content.Single().Value!["schema"]!, body);
    }

    public IReadOnlyList<string> RequestObjections(string path, string method, JsonNode? body) =>
        Objections(
            _document["paths"]![path]![method]!["requestBody"]!["content"]![Json]!["schema"]!,
            body);

    /// <summary>Also objects to members the document does not name.</summary>
    private List<string> Objections(JsonNode schema, JsonNode? body)
    {
        var whole = schema.DeepClone().AsObject();
        whole["$defs"] = _document["components"]!["schemas"]!.DeepClone();
        Close(whole);
        var text = whole.ToJsonString().Replace("#/components/schemas/", "#/$defs/");
        var result = JsonSchema.FromText(text).Evaluate(
            body, new EvaluationOptions { OutputFormat = OutputFormat.List });
        return result.IsValid ? [] : [.. result.Details
            .Where(detail => !detail.IsValid && detail.HasErrors)
            .Select(detail => detail.InstanceLocation + " "
                + string.Join(' ', detail.Errors!.Values)).Distinct()];
    }

    private static void Close(JsonNode? node)
    {
        if (node is JsonObject place)
        {
            if (place["properties"] is JsonObject && place["additionalProperties"] is null
                && place["type"] is not null)
            {
                place["additionalProperties"] = false;
            }

            place.Select(member => member.Value).ToList().ForEach(Close);
        }
        else if (node is JsonArray list && list.Any(item => item is JsonObject))
        {
            list.ToList().ForEach(Close);
        }
    }
}
