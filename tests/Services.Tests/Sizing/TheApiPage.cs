using System.Text.Json.Nodes;
using PostFrame.Engine;
using Xunit;

namespace PostFrame.ServicesTests.Sizing;

/// <summary>The sizing document says what the service does.</summary>
public sealed class TheApiPage(SizingHost host) : IClassFixture<SizingHost>
{
    /// <summary>Members of the engine's input that are not the caller's to send.</summary>
    private static readonly string[] NotSent = ["metric", "prices", "bestRollWidth"];

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public static TheoryData<string, Type, string> Requests => new()
    {
        { "SizingRequest", typeof(SizingInput), "" },
        { "BuildingRequest", typeof(BuildingInput), "/building" },
        { "RoofRequest", typeof(RoofInput), "/building/roof" },
        { "PointRequest", typeof(ProfilePointInput), "/building/roof/points/0" },
        { "PanelRequest", typeof(TranslucentPanelInput), "/building/roof/translucentPanels/0" },
        { "OpeningRequest", typeof(OpeningInput), "/building/openings/0" },
        { "LeanToRequest", typeof(LeanToInput), "/building/leanTos/0" },
        { "PartitionRequest", typeof(PartitionInput), "/building/partition" },
        { "FramingRequest", typeof(FramingInput), "/building/framing" },
        { "InsulationRequest", typeof(InsulationInput), "/insulation/0" },
        { "PracticeRequest", typeof(PracticeInput), "/practice" },
    };

    [Theory]
    [MemberData(nameof(Requests))]
    public async Task Names_every_member_the_engine_takes(
        string schema, Type input, string pointer)
    {
        _ = pointer;
        Assert.Equal(
            input.GetProperties().Select(p => char.ToLowerInvariant(p.Name[0]) + p.Name[1..])
                .Except(NotSent).Order(StringComparer.Ordinal),
            (await Members(schema)).Order(StringComparer.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Requests))]
    public async Task Names_no_member_the_reader_does_not_know(
        string schema, Type input, string pointer)
    {
        _ = input;
        var place = new JsonObject();
        foreach (var member in await Members(schema))
        {
            place[member] = false;
        }

        var answer = await host.PostAsync(Around(place, pointer).ToJsonString());
        var text = await answer.Content.ReadAsStringAsync(Stop);
        Assert.Equal(422, (int)answer.StatusCode);
        Assert.DoesNotContain("unknown-member", text);
    }

    [Fact]
    public async Task Shows_only_examples_that_work_when_pasted()
    {
        var examples = (await Document())["paths"]!["/v1/sizings"]!["post"]!["requestBody"]!
            ["content"]!["application/json"]!["examples"]!.AsObject();

        Assert.Equal(TestFiles.Examples(), examples.Select(example => example.Key));
        foreach (var (_, example) in examples)
        {
            var answer = await host.PostAsync(example!["value"]!.ToJsonString());
            Assert.True(answer.IsSuccessStatusCode);
        }
    }

    [Fact]
    public async Task Is_OpenAPI_3_1_and_leads_from_the_docs_page()
    {
        using var client = host.CreateClient();

        Assert.StartsWith("3.1", (await Document())["openapi"]!.GetValue<string>());
        Assert.Contains("swagger", await client.GetStringAsync("/docs/index.html", Stop));
    }

    [Fact]
    public async Task Refuses_a_document_there_is_not_as_every_refusal()
    {
        using var client = host.CreateClient();
        using var answer = await client.GetAsync("/openapi/nope.json", Stop);
        Assert.Equal(404, (int)answer.StatusCode);
        Assert.Equal(
            "application/problem+json", answer.Content.Headers.ContentType?.MediaType);
    }

    private async Task<JsonNode> Document()
    {
        using var client = host.CreateClient();
        return JsonNode.Parse(await client.GetStringAsync("/openapi/sizing.json", Stop))!;
    }

    private async Task<IReadOnlyList<string>> Members(string schema) =>
        [.. (await Document())["components"]!["schemas"]![schema]!["properties"]!.AsObject()
            .Select(member => member.Key)];

    /// <summary>The object at its pointer, with as much around it as that needs.</summary>
    private static JsonNode Around(JsonNode place, string pointer)
    {
        foreach (var step in pointer.Split('/')[1..].Reverse())
        {
            place = step == "0" ? new JsonArray(place) : new JsonObject { [step] = place };
        }

        return place;
    }
}
