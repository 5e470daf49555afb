using System.Text;
using System.Text.Json.Nodes;
using PostFrame.Operations.Pipeline;
using Xunit;
using static PostFrame.ServicesTests.Operations.PipelineMessages;

namespace PostFrame.ServicesTests.Operations;

/// <summary>
/// A message handed over by the in-memory bus dies with its process, and nobody sends it again.
/// The lines below are what Orders answers to <c>GET /v1/orders?changedAfter=</c>.
/// </summary>
public sealed class HearOrdersTests
{
    [Fact]
    public async Task An_order_whose_messages_were_all_lost_is_shown_as_Orders_has_it()
    {
        await using var host = await OperationsHost.StartBesideAsync(Answering(
            Line("PF-1", 1, "labelled", planned: true, labelled: true)));

        var order = await UntilAsync(host, order => (string?)order["orderNumber"] == "PF-1");

        Assert.Equal(("labelled", 8, 46), (
            (string?)order["state"], (int)order["rolls"]!, (int)order["labels"]!));
        Assert.Equal("Two Oaks Dairy", (string?)order["shipTo"]);
    }

    [Fact]
    public async Task An_order_that_Orders_gave_up_on_is_parked_with_its_reason()
    {
        await using var host = await OperationsHost.StartBesideAsync(Answering(
            Line("PF-1", 2, "parked", planned: true, reason: "no-labels")));
        await host.TakeAsync(Told.By(ConfirmedOf("PF-1")));
        await host.TakeAsync(Told.By(PlannedOf("PF-1")));

        var order = await UntilAsync(host, order => (string?)order["state"] == "parked");

        Assert.Equal("The reason.", (string?)Assert.Single(order["reasons"]!.AsArray()));
        Assert.EndsWith("/retry", (string?)order["links"]!["tryAgain"]);
    }

    [Fact]
    public async Task Labels_that_came_after_all_end_what_Orders_parked()
    {
        await using var host = await OperationsHost.StartBesideAsync(Answering(
            Line("PF-1", 2, "parked", planned: true, reason: "no-labels")));
        await UntilAsync(host, order => (string?)order["state"] == "parked");

        await host.TakeAsync(Told.By(PrintedOf("PF-1")));

        Assert.Equal("labelled", host.Row("PF-1")!.State);
    }

    [Fact]
    public async Task A_lost_plan_that_is_newer_than_the_refusal_known_takes_its_place()
    {
        var refused = RejectedOf("PF-1");
        await using var host = await OperationsHost.StartBesideAsync(Answering(
            Line("PF-1", 3, "planned", planned: true)));
        await UntilAsync(host, order => (string?)order["state"] == "planned");

        await host.TakeAsync(Told.By(refused with
        {
            Data = refused.Data with { RejectedAt = Confirmed.Data.ConfirmedAt },
        }));

        Assert.Equal("planned", host.Row("PF-1")!.State);
    }

    private static async Task<JsonNode> UntilAsync(
        OperationsHost host, Func<JsonNode, bool> isWished)
    {
        var feed = ((string)(await host.GetAsync("/v1/pipeline"))["lastEventId"]!).Split('-')[0];
        await using var stream = await EventReader.OpenAsync(host, $"?after={feed}-0");
        await stream.UntilAsync(isWished);
        return (await host.GetAsync("/v1/pipeline"))["orders"]![0]!;
    }

    private static PostFrame.Operations.AskForOrders Answering(JsonObject line) =>
        (change, _) => Task.FromResult(Encoding.UTF8.GetBytes(new JsonObject
        {
            ["orders"] = (long)line["change"]! > change ? [line.DeepClone()] : new JsonArray(),
        }.ToJsonString()));

    private static JsonObject Line(
        string order, long change, string state, bool planned = false, bool labelled = false,
        string? reason = null) => new()
        {
            ["orderNumber"] = order,
            ["revision"] = 1,
            ["state"] = state,
            ["neededBy"] = "2026-12-04",
            ["shipTo"] = new JsonObject { ["name"] = "Two Oaks Dairy" },
            ["building"] = new JsonObject { ["name"] = "Barn", ["summary"] = "gable 4:12" },
            ["pieces"] = 46,
            ["rolls"] = planned ? 8 : null,
            ["labels"] = labelled ? 46 : null,
            ["acceptedAt"] = "2026-11-25T14:00:00.000Z",
            ["plannedAt"] = planned ? "2026-11-25T14:00:01.250Z" : null,
            ["labelledAt"] = labelled ? "2026-11-25T14:00:02.000Z" : null,
            ["waitingSince"] = "2026-11-25T15:00:00.000Z",
            ["parkReasons"] = reason is null
            ? new JsonArray()
            : new JsonArray(new JsonObject { ["code"] = reason, ["text"] = "The reason." }),
            ["change"] = change,
            ["links"] = new JsonObject(),
        };
}
