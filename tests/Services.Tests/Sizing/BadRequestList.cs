using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using Xunit;

namespace PostFrame.ServicesTests.Sizing;

/// <summary>
/// Requests that must be refused, from the lists beside this file. Each is a raw body, or the
/// example of the overhead door with members set or removed, or a piece of its text swapped.
/// </summary>
internal static class BadRequestList
{
    private const string Base = "w2-overhead-door";

    private static readonly JsonSerializerOptions Plain =
        new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public static TheoryData<string, string, string, string, int> From(string file)
    {
        var rows = new TheoryData<string, string, string, string, int>();
        foreach (var node in JsonNode.Parse(TestFiles.Read(file))!.AsArray())
        {
            var entry = node!.AsObject();
            rows.Add(
                entry["case"]!.GetValue<string>(), BodyOf(entry),
                entry["pointer"]!.GetValue<string>(), entry["rule"]!.GetValue<string>(),
                entry["status"]?.GetValue<int>() ?? 422);
        }

        return rows;
    }

    private static string BodyOf(JsonObject entry)
    {
        if (entry["raw"] is { } raw)
        {
            return raw.GetValue<string>();
        }

        var request = JsonNode.Parse(TestFiles.Example(entry["base"]?.GetValue<string>() ?? Base))!;
        foreach (var (pointer, value) in entry["set"]?.AsObject() ?? [])
        {
            Set(request, pointer, value?.DeepClone());
        }

        foreach (var pointer in entry["remove"]?.AsArray() ?? [])
        {
            Remove(request, pointer!.GetValue<string>());
        }

        var text = request.ToJsonString(Plain);
        return entry["swap"] is { } swap ? Swapped(text, swap.AsArray()) : text;
    }

    private static string Swapped(string text, JsonArray swap)
    {
        var from = swap[0]!.GetValue<string>();
        Assert.Contains(from, text);
        return text.Replace(from, swap[1]!.GetValue<string>());
    }

    private static void Set(JsonNode request, string pointer, JsonNode? value)
    {
        var (parent, name) = Parent(request, pointer);
        if (parent is not JsonArray list)
        {
            parent[name] = value;
        }
        else if (int.Parse(name) is var index && index < list.Count)
        {
            list[index] = value;
        }
        else
        {
            list.Add(value);
        }
    }

    private static void Remove(JsonNode request, string pointer)
    {
        var (parent, name) = Parent(request, pointer);
        Assert.True(parent.AsObject().Remove(name));
    }

    private static (JsonNode Parent, string Name) Parent(JsonNode node, string pointer)
    {
        var steps = pointer.Split('/')[1..]
            .Select(step => step.Replace("~1", "/").Replace("~0", "~")).ToArray();
        foreach (var step in steps[..^1])
        {
            node = node is JsonArray list
                ? list[int.Parse(step)]!
                : node[step] ??= new JsonObject();
        }

        return (node, steps[^1]);
    }
}
