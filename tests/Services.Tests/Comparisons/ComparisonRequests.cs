using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace PostFrame.ServicesTests.Comparisons;

/// <summary>Example comparisons, and small changes to them.</summary>
internal static class ComparisonRequests
{
    public const string ShopRoof = "c1-shop-roof";

    public const string DwellingWall = "c2-dwelling-wall";

    public static JsonNode Example(string name) => JsonNode.Parse(File.ReadAllText(Path.Combine(
        Sizing.TestFiles.Root, "contracts", "examples", $"{name}.comparison.json")))!;

    /// <summary>The example with one member set by its JSON Pointer; null removes it.</summary>
    public static JsonNode With(this JsonNode request, string pointer, JsonNode? value)
    {
        var parts = pointer.Split('/')[1..];
        var at = request;
        foreach (var part in parts[..^1])
            at = at is JsonArray list ? list[int.Parse(part)]! : at[part] ??= new JsonObject();
        if (at is JsonArray items) items[int.Parse(parts[^1])] = value;
        else if (value is null) at.AsObject().Remove(parts[^1]);
        else at[parts[^1]] = value;
        return request;
    }

    /// <summary>The answer to a request that is good.</summary>
    public static JsonElement Answer(this JsonNode request)
    {
        var (body, refusal) = SizingApi.Comparisons.Comparisons.Answer(Bytes(request));
        return body is null
            ? throw new InvalidOperationException(Encoding.UTF8.GetString(refusal!.ToBytes("t")))
            : JsonDocument.Parse(body).RootElement;
    }

    public static ReadOnlyMemory<byte> Bytes(JsonNode request) =>
        JsonSerializer.SerializeToUtf8Bytes(request);

    public static JsonElement Line(this JsonElement answer, string id) => answer
        .GetProperty("lines").EnumerateArray().First(l => l.GetProperty("id").GetString() == id);

    public static double Number(this JsonElement at, params ReadOnlySpan<string> path)
    {
        foreach (var name in path) at = at.GetProperty(name);
        return at.GetDouble();
    }

    public static IEnumerable<string> Ids(this JsonElement answer) => answer
        .GetProperty("conclusions").EnumerateArray().Select(c => c.GetProperty("id").GetString()!);
}
