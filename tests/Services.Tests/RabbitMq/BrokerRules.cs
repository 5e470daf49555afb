using System.Net.Http.Json;
using System.Text.Json.Nodes;
using PostFrame.ServicesTests.Orders;
using PostFrame.ServicesTests.SingleHost;
using Xunit;

namespace PostFrame.ServicesTests.RabbitMq;

/// <summary>The services in processes of their own, with a real broker between them.</summary>
public sealed class BrokerRules(RabbitNode node) : IClassFixture<RabbitNode>, IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(2);
    private readonly ServicesApart _services = new(node);

    public void Dispose() => _services.Dispose();

    [Fact]
    public async Task Over_a_real_broker_every_order_gets_one_plan_and_one_label_set()
    {
        Assert.SkipWhen(RabbitNode.Missing is not null, RabbitNode.Missing ?? "");
        await _services.StartAllAsync();
        using var poster = Poster();
        await PostAsync(poster, 1, 10);
        await poster.UntilAsync("labelled", 10, Patience);
        await AllWellAsync();
    }

    [Fact]
    public async Task A_killed_service_loses_and_doubles_nothing()
    {
        Assert.SkipWhen(RabbitNode.Missing is not null, RabbitNode.Missing ?? "");
        await _services.StartAllAsync();
        using var poster = Poster();
        var posting = PostAsync(poster, 1, 20);
        foreach (var program in new[]
        {
            ServicesApart.Cutting, ServicesApart.Labelling, ServicesApart.Orders,
            ServicesApart.Operations, ServicesApart.Cutting, ServicesApart.Orders,
        })
        {
            await _services.KillAndRestartAsync(program);
        }

        await posting;
        await poster.UntilAsync("labelled", 20, Patience);
        await AllWellAsync();
    }

    [Fact]
    public async Task While_the_broker_is_away_orders_are_taken_and_after_it_they_are_done()
    {
        Assert.SkipWhen(RabbitNode.Missing is not null, RabbitNode.Missing ?? "");
        await _services.StartAllAsync();
        using var poster = Poster();
        await PostAsync(poster, 1, 2);
        await poster.UntilAsync("labelled", 2, Patience);

        node.Kill();
        await PostAsync(poster, 3, 5);
        Assert.Equal("degraded", await ReadinessUntilAsync("degraded"));
        await node.StartAsync();
        await poster.UntilAsync("labelled", 5, Patience);
        Assert.Equal("healthy", await ReadinessUntilAsync("healthy"));
        await AllWellAsync();
    }

    [Fact]
    public async Task A_service_starts_while_the_broker_is_away_and_joins_when_it_comes()
    {
        Assert.SkipWhen(RabbitNode.Missing is not null, RabbitNode.Missing ?? "");
        node.Kill();
        await _services.StartAllAsync();
        using var poster = Poster();
        await PostAsync(poster, 1, 1);
        await node.StartAsync();
        await poster.UntilAsync("labelled", 1, Patience);
        await AllWellAsync();
    }

    private OrderPoster Poster() =>
        new() { Address = () => _services[ServicesApart.Orders].Address };

    private static async Task PostAsync(OrderPoster poster, int first, int last)
    {
        for (var n = first; n <= last; n++)
        {
            await poster.PostAsync(OrderRequests.Shed($"PF-{n}"), $"key-{n}");
        }
    }

    /// <summary>The stores agree, and no message was parked.</summary>
    private async Task AllWellAsync()
    {
        await _services.StopAllAsync();
        Assert.Empty(PipelineCheck.Violations(_services.Folder));
        Assert.DoesNotContain(
            await node.QueuesAsync(),
            queue => queue.Key.EndsWith("_error", StringComparison.Ordinal) && queue.Value > 0);
    }

    private async Task<string> ReadinessUntilAsync(string wanted)
    {
        using var http = new HttpClient();
        using var tick = new PeriodicTimer(TimeSpan.FromMilliseconds(200));
        var status = "";
        for (var n = 0; n < 300 && status != wanted; n++)
        {
            await tick.WaitForNextTickAsync(TestContext.Current.CancellationToken);
            using var answer = await http.GetAsync(
                new Uri(_services[ServicesApart.Orders].Address, "/health/ready"),
                TestContext.Current.CancellationToken);
            var ready = await answer.Content.ReadFromJsonAsync<JsonNode>(
                TestContext.Current.CancellationToken);
            status = ready!["status"]!.GetValue<string>();
        }

        return status;
    }
}
