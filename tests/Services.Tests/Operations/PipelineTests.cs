using System.Diagnostics;
using System.Net;
using System.Text.Json.Nodes;
using PostFrame.Operations.Pipeline;
using Xunit;
using static PostFrame.ServicesTests.Operations.PipelineMessages;

namespace PostFrame.ServicesTests.Operations;

/// <summary>What <c>GET /v1/pipeline</c> says, page by page.</summary>
public sealed class PipelineTests
{
    private const int Backlog = 10_000;

    [Fact]
    public async Task The_messages_of_the_contract_come_over_the_bus_onto_the_board()
    {
        await using var host = await OperationsHost.StartAsync();
        await using var stream = await EventReader.OpenAsync(host, "?after=none");
        await stream.NextAsync("snapshot");

        await host.SendAsync(Confirmed, Confirmed.Id);
        await host.SendAsync(Planned, Planned.Id);
        await host.SendAsync(Printed, Printed.Id);
        await stream.UntilAsync(order => (string?)order["state"] == "labelled"
            && order["rolls"] is not null);

        var order = (await host.GetAsync("/v1/pipeline"))["orders"]![0]!;
        Assert.Equal(Confirmed.Data.OrderNumber, (string?)order["orderNumber"]);
        Assert.Equal(Confirmed.Data.ShipTo.Name, (string?)order["shipTo"]);
        Assert.Equal($"{Confirmed.Data.NeededBy:O}", (string?)order["neededBy"]);
        Assert.Equal((46, 8, 46), (
            (int)order["pieces"]!, (int)order["rolls"]!, (int)order["labels"]!));
        Assert.Equal("/v1/labels/PF-1001.pdf", (string?)order["links"]!["labels"]);
        Assert.Null(order["links"]!["tryAgain"]);
    }

    [Fact]
    public async Task The_longest_waiting_order_comes_first_and_finished_ones_last_newest_first()
    {
        await using var host = await OperationsHost.StartAsync();
        foreach (var (order, minute, printed) in new[]
                 {
                     ("young", 9, false), ("done", 1, true), ("old", 2, false), ("done2", 3, true),
                 })
        {
            await host.TakeAsync(Told.By(ConfirmedOf(order, minute: minute)));
            if (printed)
            {
                var done = PrintedOf(order);
                await host.TakeAsync(Told.By(done with
                {
                    Data = done.Data with { PrintedAt = done.Data.PrintedAt.AddMinutes(minute) },
                }));
            }
        }

        var body = await host.GetAsync("/v1/pipeline");

        Assert.Equal(["old", "young", "done2", "done"], Numbers(body));
        Assert.Equal((4, 2, 2), (
            (int)body["summary"]!["orders"]!, (int)body["summary"]!["confirmed"]!,
            (int)body["summary"]!["labelled"]!));
        Assert.Equal(
            (string?)body["orders"]![0]!["waitingSince"],
            (string?)body["summary"]!["oldestWaitingSince"]);
    }

    [Fact]
    public async Task A_page_of_ten_thousand_orders_is_quick_and_paging_meets_each_order_once()
    {
        await using var host = await OperationsHost.StartAsync();
        foreach (var some in Enumerable.Range(0, Backlog).Chunk(500))
        {
            await Task.WhenAll(some.Select(number => host.TakeAsync(
                Told.By(ConfirmedOf($"PF-{number:00000}", minute: number % 97)))));
        }

        await host.GetAsync("/v1/pipeline");
        var start = Stopwatch.GetTimestamp();
        var first = await host.GetAsync("/v1/pipeline");
        var took = Stopwatch.GetElapsedTime(start);
        var met = new List<string>();
        for (string? next = ""; next is not null;)
        {
            var page = await host.GetAsync($"/v1/pipeline?limit=500{next}");
            met.AddRange(Numbers(page));
            next = page["next"] is { } mark
                ? "&after=" + Uri.EscapeDataString((string)mark!) : null;
        }

        TestContext.Current.SendDiagnosticMessage(
            $"A page of 100: {took.TotalMilliseconds:0.0} ms");
        Assert.True(took < TimeSpan.FromSeconds(2), $"The page took {took}.");
        Assert.Equal(100, first["orders"]!.AsArray().Count);
        Assert.Equal(Backlog, met.Distinct().Count());
        Assert.Equal(
            Enumerable.Range(0, Backlog).OrderBy(n => n % 97).ThenBy(n => n)
                .Select(n => $"PF-{n:00000}"),
            met);
    }

    [Fact]
    public async Task Orders_are_found_by_state_and_by_a_part_of_what_is_shown()
    {
        await using var host = await OperationsHost.StartAsync();
        await host.TakeAsync(Told.By(ConfirmedOf("PF-1")));
        await host.TakeAsync(Told.By(ConfirmedOf("PF-2")));
        await host.TakeAsync(Told.By(PlannedOf("PF-2")));

        Assert.Equal(["PF-2"], Numbers(await host.GetAsync("/v1/pipeline?state=planned")));
        Assert.Equal(["PF-1"], Numbers(await host.GetAsync("/v1/pipeline?search=pf-1")));
        Assert.Equal(2, Numbers(await host.GetAsync("/v1/pipeline?search=bend%20FARM")).Count());
        Assert.Empty(Numbers(await host.GetAsync("/v1/pipeline?search=%25")));
    }

    [Fact]
    public async Task Every_mistake_in_the_parameters_is_told_at_once()
    {
        await using var host = await OperationsHost.StartAsync();

        var (status, body) = await host.AskAsync(
            $"/v1/pipeline?limit=501&after=x&state=lost&search={new string('x', 101)}");

        Assert.Equal(HttpStatusCode.UnprocessableEntity, status);
        Assert.Equal(
            ["/limit", "/after", "/state", "/search"],
            body["violations"]!.AsArray().Select(mistake => (string)mistake!["pointer"]!));
    }

    [Theory]
    [InlineData("limit=0")]
    [InlineData("limit=-1")]
    [InlineData("limit=1e9")]
    [InlineData("limit=NaN")]
    [InlineData("limit=1&limit=2")]
    [InlineData("limit=")]
    [InlineData("after=99999999999999999999.PF-1")]
    [InlineData("after=.")]
    [InlineData("state=Parked")]
    public async Task A_parameter_that_cannot_be_used_is_refused(string query)
    {
        await using var host = await OperationsHost.StartAsync();

        var (status, body) = await host.AskAsync("/v1/pipeline?" + query);

        Assert.Equal(HttpStatusCode.UnprocessableEntity, status);
        Assert.Single(body["violations"]!.AsArray());
    }

    [Fact]
    public async Task Links_lead_where_the_services_are_said_to_be()
    {
        await using var host = await OperationsHost.StartAsync(null,
            ("Links:Orders", "http://127.0.0.1:8082"), ("Links:Cutting", "http://127.0.0.1:8083"));
        await host.TakeAsync(Told.By(ConfirmedOf("A/1 ä?")));
        await host.TakeAsync(Told.By(RejectedOf("A/1 ä?")));
        await host.TakeAsync(Told.By(ConfirmedOf("A/2")));
        await host.TakeAsync(Told.By(PlannedOf("A/2")));

        var orders = (await host.GetAsync("/v1/pipeline"))["orders"]!.AsArray();

        Assert.Equal(
            "http://127.0.0.1:8082/v1/orders/A%2F1%20%C3%A4%3F/retry",
            (string?)orders[0]!["links"]!["tryAgain"]);
        Assert.Equal(
            "http://127.0.0.1:8083/v1/cutting/plans/A%2F2", (string?)orders[1]!["links"]!["plan"]);
    }

    [Fact]
    public async Task A_restart_finds_every_order_where_it_was()
    {
        var folder = Directory.CreateTempSubdirectory("operations").FullName;
        string before;
        await using (var host = await OperationsHost.StartAsync(folder))
        {
            await host.TakeAsync(Told.By(ConfirmedOf("PF-1")));
            before = (await host.GetAsync("/v1/pipeline"))["lastEventId"]!.ToString();
        }

        await using (var host = await OperationsHost.StartAsync(folder))
        {
            var body = await host.GetAsync("/v1/pipeline");
            Assert.Equal("PF-1", Assert.Single(Numbers(body)));
            Assert.Equal(before, body["lastEventId"]!.ToString());
        }

        Directory.Delete(folder, recursive: true);
    }

    private static IEnumerable<string> Numbers(JsonNode body) =>
        body["orders"]!.AsArray().Select(order => (string)order!["orderNumber"]!);
}
