using System.Net.Http.Json;
using System.Text.Json.Nodes;
using PostFrame.ServicesTests.Messaging;
using PostFrame.ServicesTests.Orders;
using Xunit;

namespace PostFrame.ServicesTests.SingleHost;

/// <summary>
/// A day at the bench on the real program, killed outright after every report: stock in two lots,
/// orders cut together, a spoiled piece, a short roll. Labels follow the plan all the same.
/// </summary>
public sealed class BenchDayRules : IDisposable
{
    private static readonly string[] Orders = ["PF-1", "PF-2", "PF-3"];
    private readonly TemporaryFolder _folder = new();
    private HostProcess _host = null!;

    public void Dispose()
    {
        _host.Dispose();
        _folder.Dispose();
    }

    [Fact]
    public async Task Killed_after_every_report_of_a_day_its_labels_still_follow_the_plan()
    {
        _host = HostProcess.Start("PostFrame.SingleHost", _folder.Path);
        await _host.UntilUpAsync();
        await ReceiveAsync("L-1", 2);
        await ReceiveAsync("L-2", 4);
        using var poster = new OrderPoster { Address = () => _host.Address };
        foreach (var order in Orders)
        {
            await poster.PostAsync(OrderRequests.Shed(order), order);
        }

        await UntilLabelsFollowAsync();
        await KilledAfterAsync("/v1/cutting/shift", new JsonObject());
        var roll = await FirstRollAsync();
        var pieces = roll["cuts"]!.AsArray().Select(cut => (string)cut!["pieceId"]!).ToList();
        await SayAsync($"/v1/cutting/pieces/{pieces[0]}/cut", null);
        await SayAsync($"/v1/cutting/pieces/{pieces[1]}/cut", null);
        await KilledAfterAsync(
            $"/v1/cutting/pieces/{pieces[1]}/spoiled",
            new JsonObject { ["rollId"] = (long)roll["rollId"]! });
        await KilledAfterAsync(
            $"/v1/cutting/rolls/{roll["rollId"]}/short",
            new JsonObject { ["measuredLength"] = "60 ft" });

        Assert.Equal(0, await _host.StopAsync());
        Assert.Empty(PipelineCheck.Violations(_folder.Path));
    }

    private Task ReceiveAsync(string lot, int count) => SayAsync(
        "/v1/cutting/stock",
        new JsonObject
        {
            ["product"] = "blanket-3-white",
            ["rollWidth"] = "48 in",
            ["rollLength"] = "100 ft",
            ["lot"] = lot,
            ["count"] = count,
        });

    /// <summary>Says it, kills the program at once, and waits for it to heal by itself.</summary>
    private async Task KilledAfterAsync(string path, JsonObject body)
    {
        await SayAsync(path, body);
        _host.Kill();
        _host.Dispose();
        _host = HostProcess.Start("PostFrame.SingleHost", _folder.Path);
        await _host.UntilUpAsync();
        await UntilLabelsFollowAsync();
    }

    private async Task SayAsync(string path, JsonObject? body)
    {
        using var http = new HttpClient { BaseAddress = _host.Address };
        using var request = new HttpRequestMessage(HttpMethod.Post, path);
        request.Headers.Add("Idempotency-Key", Guid.NewGuid().ToString());
        request.Content = body is null ? null : JsonContent.Create(body);
        using var answer = await http.SendAsync(request, TestContext.Current.CancellationToken);
        Assert.True(
            answer.IsSuccessStatusCode,
            await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
    }

    private async Task<JsonNode> FirstRollAsync() =>
        (await AskAsync("/v1/cutting/plans/PF-1"))["plans"]![0]!["rollList"]![0]!;

    private async Task UntilLabelsFollowAsync()
    {
        using var tick = new PeriodicTimer(TimeSpan.FromMilliseconds(100));
        for (var n = 0; n < 600; n++)
        {
            if ((await Task.WhenAll(Orders.Select(FollowsAsync))).All(follows => follows))
            {
                return;
            }

            await tick.WaitForNextTickAsync(TestContext.Current.CancellationToken);
        }

        throw new TimeoutException("The labels did not follow the plan in a minute.");
    }

    private async Task<bool> FollowsAsync(string order)
    {
        var told = await AskAsync("/v1/orders/" + order);
        var plan = await AskAsync("/v1/cutting/plans/" + order);
        var labels = await AskAsync("/v1/labels/" + order);
        return (string?)told["state"] == "labelled"
            && (string?)plan["state"] is "planned" or "cutting" or "cut"
            && (int?)plan["planNumber"] == (int?)labels["planNumber"]
            && (int?)plan["planNumber"] == (int?)told["planNumber"];
    }

    private async Task<JsonNode> AskAsync(string path)
    {
        using var http = new HttpClient { BaseAddress = _host.Address };
        using var answer = await http.GetAsync(path, TestContext.Current.CancellationToken);
        return JsonNode.Parse(
            await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken))!;
    }
}
