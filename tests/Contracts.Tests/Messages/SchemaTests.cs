using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;

namespace PostFrame.ContractsTests.Messages;

/// <summary>Schemas, examples and invalid examples hold each other.</summary>
public sealed class SchemaTests
{
    public static TheoryData<string> Messages => new(MessageFile.Names);

    public static TheoryData<string, int> InvalidExamples
    {
        get
        {
            var rows = new TheoryData<string, int>();
            foreach (var name in MessageFile.Names)
            {
                for (var n = 0; n < MessageFile.Of(name).Invalid.Count; n++)
                {
                    rows.Add(name, n);
                }
            }

            return rows;
        }
    }

    [Fact]
    public void The_pipeline_has_exactly_these_messages() => Assert.Equal(
        [
            "cutting-planned.v1", "cutting-rejected.v1", "labels-failed.v1", "labels-printed.v1",
            "order-confirmed.v1",
        ],
        MessageFile.Names);

    [Theory]
    [MemberData(nameof(Messages))]
    public void The_schema_is_a_valid_schema_of_draft_2020_12(string name)
    {
        var message = MessageFile.Of(name);

        Assert.Equal(
            "https://json-schema.org/draft/2020-12/schema", (string)message.Schema["$schema"]!);
        Assert.True(MetaSchemas.Draft202012.Evaluate(message.Schema).IsValid);
    }

    [Theory]
    [MemberData(nameof(Messages))]
    public void The_identity_is_the_name_everywhere(string name)
    {
        var message = MessageFile.Of(name);

        Assert.Equal("urn:message:" + name, (string)message.Schema["$id"]!);
        Assert.Equal(name, (string)message.Schema["properties"]!["type"]!["const"]!);
        Assert.Equal(name, (string)message.Example["type"]!);
        Assert.Equal(
            $"{message.Example["data"]!["orderNumber"]}/{message.Example["data"]!["revision"]}",
            (string)message.Example["subject"]!);
    }

    [Theory]
    [MemberData(nameof(Messages))]
    public void The_example_is_valid_and_has_no_member_the_schema_does_not_name(string name) =>
        Assert.Empty(MessageFile.Of(name).StrictObjections(MessageFile.Of(name).Example));

    [Theory]
    [MemberData(nameof(Messages))]
    public void A_member_of_a_later_version_does_not_make_a_message_invalid(string name)
    {
        var message = MessageFile.Of(name);
        message.Example["trace"] = "later";
        message.Example["data"]!["colour"] = "later";

        Assert.Empty(message.Objections(message.Example));
        Assert.NotEmpty(message.StrictObjections(message.Example));
    }

    [Theory]
    [MemberData(nameof(InvalidExamples))]
    public void An_invalid_example_fails_at_its_place_and_nowhere_else(string name, int number)
    {
        var message = MessageFile.Of(name);
        var invalid = message.Invalid[number]!;
        var broken = Patched(message.Example, invalid["patch"]!.AsArray());

        Assert.Equal([(string)invalid["failsAt"]!], message.Objections(broken));
        Assert.NotEmpty((string)invalid["why"]!);
    }

    [Theory]
    [MemberData(nameof(Messages))]
    public void Every_required_member_has_been_shown_to_be_required(string name)
    {
        var message = MessageFile.Of(name);
        foreach (var member in message.Schema["required"]!.AsArray())
        {
            var broken = message.Example.DeepClone().AsObject();
            broken.Remove((string)member!);
            Assert.NotEmpty(message.Objections(broken));
        }
    }

    /// <summary>The two operations of RFC 6902 that the examples use.</summary>
    private static JsonNode Patched(JsonNode example, JsonArray patch)
    {
        var root = example.DeepClone();
        foreach (var step in patch)
        {
            var path = ((string)step!["path"]!).Split('/')[1..];
            var parent = path[..^1].Aggregate(root, (node, key) => Child(node, key)!);
            switch ((string)step["op"]!)
            {
                case "remove":
                    Assert.True(parent.AsObject().Remove(path[^1]));
                    break;
                case "replace":
                    parent.AsObject()[path[^1]] = step["value"]?.DeepClone();
                    break;
                case var other:
                    throw new JsonException($"no operation {other} in invalid examples");
            }
        }

        return root;
    }

    private static JsonNode? Child(JsonNode node, string key) =>
        node is JsonArray list ? list[int.Parse(key)] : node[key];
}
