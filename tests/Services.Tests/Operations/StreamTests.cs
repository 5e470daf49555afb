using System.Net;
using System.Text.Json.Nodes;
using PostFrame.Operations.Pipeline;
using Xunit;
using static PostFrame.ServicesTests.Operations.PipelineMessages;

namespace PostFrame.ServicesTests.Operations;

/// <summary>Outside check: the reader is written after the HTML Living Standard, 9.2.6.</summary>
public sealed class StreamTests
{
    [Fact]
    public async Task A_change_arrives_on_the_open_stream()
    {
        await using var host = await OperationsHost.StartAsync();
        await using var stream = await EventReader.OpenAsync(host);
        var snapshot = await stream.NextAsync("snapshot");

        await host.TakeAsync(Told.By(ConfirmedOf("PF-1")));
        var change = await stream.NextAsync("orders");

        Assert.Equal("text/event-stream", stream.MediaType);
        Assert.Equal("PF-1", (string?)change["orders"]![0]!["orderNumber"]);
        Assert.Equal(1, (int)change["summary"]!["confirmed"]!);
        Assert.NotEqual((string?)snapshot["lastEventId"], stream.LastEventId);
    }

    [Fact]
    public async Task A_stream_resumed_from_an_id_brings_what_was_missed_and_nothing_else()
    {
        await using var host = await OperationsHost.StartAsync();
        await host.TakeAsync(Told.By(ConfirmedOf("seen")));
        var id = (string)(await host.GetAsync("/v1/pipeline"))["lastEventId"]!;
        await host.TakeAsync(Told.By(ConfirmedOf("missed")));
        await host.TakeAsync(Told.By(PlannedOf("missed")));

        await using var byHeader = await EventReader.OpenAsync(host, "", id);
        await using var byQuery = await EventReader.OpenAsync(host, "?after=" + id);

        foreach (var stream in new[] { byHeader, byQuery })
        {
            var order = Assert.Single((await stream.NextAsync("orders"))["orders"]!.AsArray())!;
            Assert.Equal(("missed", "planned"), (
                (string?)order["orderNumber"], (string?)order["state"]));
        }
    }

    [Theory]
    [InlineData("none")]
    [InlineData("deadbeef-0")]
    [InlineData("-1")]
    public async Task A_stream_resumed_from_an_unknown_id_is_told_to_read_all_anew(string id)
    {
        await using var host = await OperationsHost.StartAsync();
        await host.TakeAsync(Told.By(ConfirmedOf("PF-1")));

        await using var stream = await EventReader.OpenAsync(host, "", id);

        var snapshot = await stream.NextAsync("snapshot");
        var now = (await host.GetAsync("/v1/pipeline"))["lastEventId"];
        Assert.Equal((string?)now, (string?)snapshot["lastEventId"]);
    }

    [Fact]
    public async Task A_long_backlog_comes_in_frames_of_bounded_size_without_gap_or_double()
    {
        await using var host = await OperationsHost.StartAsync();
        var id = (string)(await host.GetAsync("/v1/pipeline"))["lastEventId"]!;
        await Task.WhenAll(Enumerable.Range(0, 450).Select(
            number => host.TakeAsync(Told.By(ConfirmedOf($"PF-{number:000}")))));
        await using var stream = await EventReader.OpenAsync(host, "", id);

        var met = new List<string>();
        while (met.Count < 450)
        {
            var orders = (await stream.NextAsync("orders"))["orders"]!.AsArray();
            Assert.InRange(orders.Count, 1, 200);
            met.AddRange(orders.Select(order => (string)order!["orderNumber"]!));
        }

        Assert.Equal(Enumerable.Range(0, 450).Select(n => $"PF-{n:000}"), met.Order());
    }

    [Fact]
    public async Task Two_hundred_streams_all_see_the_change()
    {
        await using var host = await OperationsHost.StartAsync();
        var streams = await Task.WhenAll(
            Enumerable.Range(0, 200).Select(_ => EventReader.OpenAsync(host)));
        await Task.WhenAll(streams.Select(stream => stream.NextAsync("snapshot")));

        await host.TakeAsync(Told.By(ConfirmedOf("PF-1")));
        var seen = await Task.WhenAll(streams.Select(stream => stream.NextAsync("orders")));

        Assert.All(seen, change => Assert.Equal(
            "PF-1", (string?)change["orders"]![0]!["orderNumber"]));
        foreach (var stream in streams)
        {
            await stream.DisposeAsync();
        }
    }

    [Fact]
    public async Task A_quiet_stream_says_that_it_lives()
    {
        await using var host = await OperationsHost.StartAsync(
            null, ("Stream:Heartbeat", "00:00:00.1"));
        await using var stream = await EventReader.OpenAsync(host);

        var first = await stream.NextAsync("heartbeat");
        var second = await stream.NextAsync("heartbeat");

        Assert.True((DateTimeOffset)second["asOf"]! > (DateTimeOffset)first["asOf"]!);
    }

    [Fact]
    public async Task One_stream_more_than_there_may_be_is_refused_until_another_closes()
    {
        await using var host = await OperationsHost.StartAsync(
            null, ("Stream:MostStreams", "1"), ("Stream:Heartbeat", "00:00:00.1"));
        var stream = await EventReader.OpenAsync(host);
        await stream.NextAsync("snapshot");

        var refusal = await host.Http.GetAsync(
            "/v1/pipeline/events", TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.TooManyRequests, refusal.StatusCode);
        Assert.NotNull(refusal.Headers.RetryAfter);
        await stream.DisposeAsync();
        await using var again = await UntilOpenAsync(host);
        Assert.NotNull(await again.NextAsync("snapshot"));
    }

    [Fact]
    public async Task Hostile_text_comes_through_as_the_text_it_is()
    {
        const string Hostile = "</script><img src=x onerror=alert(1)>\u202E'; DROP TABLE \n\nid: 9";
        await using var host = await OperationsHost.StartAsync();
        await using var stream = await EventReader.OpenAsync(host);
        await stream.NextAsync("snapshot");
        var confirmed = ConfirmedOf("PF-1");
        await host.TakeAsync(Told.By(confirmed with
        {
            Data = confirmed.Data with { ShipTo = new() { Name = Hostile } },
        }));

        var streamed = (await stream.NextAsync("orders"))["orders"]![0]!;
        var read = (await host.GetAsync("/v1/pipeline"))["orders"]![0]!;

        Assert.Equal((Hostile, Hostile), ((string?)streamed["shipTo"], (string?)read["shipTo"]));
    }

    private static async Task<EventReader> UntilOpenAsync(OperationsHost host)
    {
        for (var tries = 0; tries < 1000; tries++)
        {
            try
            {
                return await EventReader.OpenAsync(host);
            }
            catch (HttpRequestException refused)
                when (refused.StatusCode == HttpStatusCode.TooManyRequests)
            {
                // The closed stream is noticed a moment later; ask again.
                await Task.Yield();
            }
        }

        throw new TimeoutException("The closed stream still counts.");
    }
}
