using PostFrame.ContractsTests.Tidy;
using YamlDotNet.Serialization;

namespace PostFrame.ContractsTests.Messages;

/// <summary><c>pipeline.asyncapi.yaml</c> names the messages there are and who does what.</summary>
public sealed class AsyncApiTests
{
    private static readonly Dictionary<object, object> Document = Read();

    [Fact]
    public void It_names_exactly_the_messages_that_have_a_schema()
    {
        Assert.Equal(MessageFile.Names, Keys(Map(Document, "channels")));
        Assert.Equal(MessageFile.Names, Keys(Map(Map(Document, "components"), "messages")));
    }

    [Fact]
    public void Every_message_points_to_its_schema_and_every_channel_to_its_message()
    {
        var messages = Map(Map(Document, "components"), "messages");
        Assert.All(MessageFile.Names, name =>
        {
            Assert.Equal(
                $"messages/{name}.schema.json",
                Map(Map(messages, name), "payload")["$ref"]);
            Assert.Equal(name, Map(Map(Document, "channels"), name)["address"]);
        });
    }

    [Fact]
    public void Its_operations_are_exactly_what_the_services_do() => Assert.Equal(
        PipelineRecord.All.Select(record => record.Operation).Order(StringComparer.Ordinal),
        Keys(Map(Document, "operations")));

    [Fact]
    public void Who_announces_sends_and_who_reads_receives()
    {
        var operations = Map(Document, "operations");
        Assert.All(Keys(operations), name => Assert.Equal(
            name.Contains(".announces.") ? "send" : "receive", Map(operations, name)["action"]));
    }

    [Fact]
    public void Every_message_is_announced_by_the_one_service_its_source_names()
    {
        var announced = PipelineRecord.All.Where(record => record.Action == "announces").ToList();

        Assert.Equal(MessageFile.Names, announced.Select(record => record.Message).Order());
        Assert.All(announced, record => Assert.Equal(
            "/" + record.Service,
            (string)MessageFile.Of(record.Message).Schema["properties"]!["source"]!["const"]!));
    }

    private static Dictionary<object, object> Read() =>
        (Dictionary<object, object>)new DeserializerBuilder().Build().Deserialize(
            File.ReadAllText(
                Path.Combine(SourceTree.Root, "contracts", "pipeline.asyncapi.yaml")))!;

    private static Dictionary<object, object> Map(Dictionary<object, object> node, string key) =>
        (Dictionary<object, object>)node[key];

    private static IEnumerable<string> Keys(Dictionary<object, object> node) =>
        node.Keys.Select(key => (string)key).Order(StringComparer.Ordinal);
}
