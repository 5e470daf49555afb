using System.Collections.Concurrent;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using MassTransit;
using Microsoft.Extensions.DependencyInjection;
using PostFrame.ContractsTests.Messages;
using PostFrame.ContractsTests.Tidy;
using PostFrame.Messaging;
using PostFrame.Operations.Messages;

namespace PostFrame.ContractsTests.Served;

/// <summary>
/// What really goes over the bus when orders are placed, read off the wire as bytes and held
/// against the schemas.
/// </summary>
public sealed class WireTests(RunningHost host) : IClassFixture<RunningHost>
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    [Fact]
    public async Task Every_message_on_the_wire_is_as_its_schema_names_it()
    {
        var seen = new ConcurrentDictionary<string, TaskCompletionSource<JsonNode>>(
            MessageFile.Names.Select(name => KeyValuePair.Create(
                name, new TaskCompletionSource<JsonNode>())));
        await ListenAsync(seen);

        await PlaceAsync("PF-7001", Rich);
        await PlaceAsync("PF-7002", TooLongForAnyRoll);
        await Task.WhenAll(seen.Where(wire => wire.Key != "labels-failed.v1")
            .Select(wire => wire.Value.Task))
            .WaitAsync(Patience, TestContext.Current.CancellationToken);
        await ContradictAsync();

        foreach (var name in MessageFile.Names)
        {
            var envelope = await seen[name].Task.WaitAsync(
                Patience, TestContext.Current.CancellationToken);
            Assert.Contains(
                "urn:message:" + name,
                envelope["messageType"]!.AsArray().Select(type => (string)type!));
            Assert.Empty(MessageFile.Of(name).StrictObjections(envelope["message"]));
        }

        var order = (await seen["order-confirmed.v1"].Task)["message"]!["data"]!;
        Assert.Contains(order["pieces"]!.AsArray(), piece => (string)piece!["mark"]! == "SB-03S2");
        Assert.Contains(order["planes"]!.AsArray(), plane => plane!["startNm"] is not null);
    }

    private async Task ListenAsync(
        ConcurrentDictionary<string, TaskCompletionSource<JsonNode>> seen)
    {
        void Listen<T>(IReceiveEndpointConfigurator endpoint, string name)
            where T : class =>
            endpoint.Handler<T>(context =>
            {
                seen[name].TrySetResult(JsonNode.Parse(
                    context.ReceiveContext.Body.GetString())!);
                return Task.CompletedTask;
            });

        var bus = host.Services.GetRequiredService<IBusControl>();
        await bus.ConnectReceiveEndpoint("wire", endpoint =>
        {
            Listen<OrderConfirmed>(endpoint, "order-confirmed.v1");
            Listen<CuttingPlanned>(endpoint, "cutting-planned.v1");
            Listen<CuttingRejected>(endpoint, "cutting-rejected.v1");
            Listen<LabelsFailed>(endpoint, "labels-failed.v1");
            Listen<LabelsPrinted>(endpoint, "labels-printed.v1");
        }).Ready;
    }

    /// <summary>A plan without the order's pieces, so that labelling has to refuse it.</summary>
    private async Task ContradictAsync()
    {
        var order = Read<LabellingWorker.Messages.OrderConfirmed>("order-confirmed.v1");
        var plan = Read<LabellingWorker.Messages.CuttingPlanned>("cutting-planned.v1");
        var bus = host.Services.GetRequiredService<IBus>();
        await bus.Publish(order, TestContext.Current.CancellationToken);
        await bus.Publish(
            plan with { Data = plan.Data with { PlanNumber = 2, Plans = [] } },
            TestContext.Current.CancellationToken);
    }

    private static T Read<T>(string name) =>
        MessageFile.Of(name).Example.Deserialize<T>(MessageJson.Options)!;

    private async Task PlaceAsync(string number, Func<JsonNode, JsonNode> change)
    {
        var order = change(JsonNode.Parse(File.ReadAllText(Path.Combine(
            SourceTree.Root, "contracts", "examples", "w1-plain-gable.order.json")))!);
        order["orderNumber"] = number;
        using var client = host.CreateClient();
        using var request = new HttpRequestMessage(HttpMethod.Post, "/v1/orders")
        {
            Content = new StringContent(order.ToJsonString(), Encoding.UTF8, "application/json"),
        };
        request.Headers.Add("Idempotency-Key", number);
        using var answer = await client.SendAsync(request, TestContext.Current.CancellationToken);
        Assert.Equal(202, (int)answer.StatusCode);
    }

    /// <summary>
    /// A lean-to along part of a wall, and windows one above the other, with marks such as SB-03S2.
    /// </summary>
    private static JsonNode Rich(JsonNode order)
    {
        order["building"]!["leanTos"] = JsonNode.Parse("""
            [{ "side": "A", "width": "8 ft", "slope": "2:12", "drop": "1 ft",
               "fromEndwall1": "10 ft", "inside": "separate" }]
            """);
        order["insulation"]![1]!["planes"]!.AsArray().Add("leanSidewallA");
        order["building"]!["openings"] = new JsonArray();
        foreach (var sill in new[] { "1 ft", "5 ft" })
        {
            order["building"]!["openings"]!.AsArray().Add(new JsonObject
            {
                ["wall"] = "sidewallB",
                ["kind"] = "window",
                ["width"] = "12 ft",
                ["height"] = "3 ft",
                ["sill"] = sill,
                ["fromStart"] = "8 ft",
            });
        }

        return order;
    }

    /// <summary>A slope so long that no roll of 100 ft gives a piece over the ridge.</summary>
    private static JsonNode TooLongForAnyRoll(JsonNode order)
    {
        order["building"]!["width"] = "120 ft";
        order["building"]!["openings"] = new JsonArray();
        return order;
    }
}
