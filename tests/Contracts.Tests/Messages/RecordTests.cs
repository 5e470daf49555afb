using System.Reflection;
using System.Text.Json;
using System.Text.Json.Nodes;
using MassTransit;
using PostFrame.Messaging;

namespace PostFrame.ContractsTests.Messages;

/// <summary>Each service keeps records of its own; the files bind them.</summary>
public sealed class RecordTests
{
    public static TheoryData<string> Records =>
        new(PipelineRecord.All.Select(record => record.Operation));

    public static TheoryData<string> Readers => new(
        PipelineRecord.All.Where(r => r.Action == "reads").Select(r => r.Operation));

    public static TheoryData<string> Producers => new(
        PipelineRecord.All.Where(r => r.Action == "announces").Select(r => r.Operation));

    [Theory]
    [MemberData(nameof(Records))]
    public void The_exchange_is_called_as_the_message(string operation)
    {
        var record = Find(operation);

        Assert.Equal(
            record.Message, record.Type.GetCustomAttribute<EntityNameAttribute>()?.EntityName);
        Assert.Contains(record.Message, MessageFile.Names);
    }

    [Theory]
    [MemberData(nameof(Records))]
    public void The_record_reads_the_example(string operation) =>
        Assert.NotNull(Read(Find(operation), MessageFile.Of(Find(operation).Message).Example));

    [Theory]
    [MemberData(nameof(Readers))]
    public void A_reader_ignores_members_it_does_not_know(string operation)
    {
        var example = MessageFile.Of(Find(operation).Message).Example;
        WithUnknownMembers(example);

        Assert.NotNull(Read(Find(operation), example));
    }

    [Theory]
    [MemberData(nameof(Readers))]
    public void A_reader_needs_no_member_the_schema_does_not_promise(string operation)
    {
        var message = MessageFile.Of(Find(operation).Message);
        OnlyRequired(message.Example, message.Schema, message.Schema);

        Assert.NotNull(Read(Find(operation), message.Example));
    }

    [Theory]
    [MemberData(nameof(Readers))]
    public void A_reader_does_not_take_a_message_without_its_data(string operation)
    {
        var example = MessageFile.Of(Find(operation).Message).Example;
        example.Remove("data");

        Assert.Throws<JsonException>(() => Read(Find(operation), example));
    }

    [Theory]
    [MemberData(nameof(Producers))]
    public void What_a_producer_writes_is_what_the_schema_names(string operation)
    {
        var message = MessageFile.Of(Find(operation).Message);
        var record = Read(Find(operation), message.Example);

        var written = JsonSerializer.SerializeToNode(
            record, Find(operation).Type, MessageJson.Options)!;

        Assert.Empty(message.StrictObjections(written));
        Assert.True(
            JsonNode.DeepEquals(message.Example, written),
            "Written and read again the example is not the same:\n" + written.ToJsonString());
    }

    private static PipelineRecord Find(string operation) =>
        PipelineRecord.All.Single(record => record.Operation == operation);

    private static object? Read(PipelineRecord record, JsonNode message) =>
        message.Deserialize(record.Type, MessageJson.Options);

    private static void WithUnknownMembers(JsonNode? node)
    {
        if (node is JsonObject place)
        {
            place.Select(member => member.Value).ToList().ForEach(WithUnknownMembers);
            place["unknownHere"] = new JsonObject { ["a"] = 1 };
        }
        else if (node is JsonArray list)
        {
            list.ToList().ForEach(WithUnknownMembers);
        }
    }

    /// <summary>Takes away every member that the schema does not require.</summary>
    private static void OnlyRequired(JsonNode? node, JsonNode schema, JsonNode root)
    {
        var place = schema["$ref"] is { } reference
            ? root["$defs"]![((string)reference!).Split('/')[^1]]!
            : schema;
        if (node is JsonObject members && place["properties"] is JsonObject properties)
        {
            var required = place["required"]!.AsArray().Select(name => (string)name!).ToHashSet();
            foreach (var name in members.Select(member => member.Key).ToList())
            {
                if (required.Contains(name))
                {
                    OnlyRequired(members[name], properties[name]!, root);
                }
                else
                {
                    members.Remove(name);
                }
            }
        }
        else if (node is JsonArray list)
        {
            list.ToList().ForEach(item => OnlyRequired(item, place["items"]!, root));
        }
    }
}
