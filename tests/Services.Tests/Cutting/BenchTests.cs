using System.Net;
using System.Text.Json.Nodes;
using PostFrame.CuttingWorker.Messages;
using Xunit;

namespace PostFrame.ServicesTests.Cutting;

/// <summary>What the bench reports, and plans made anew around the cuts already made.</summary>
public sealed class BenchTests
{
    private const long Inch = ExampleOrders.NmPerInch;

    [Fact]
    public async Task A_piece_said_to_be_cut_twice_is_cut_once()
    {
        await using var host = await CuttingHost.StartAsync();
        var roll = (await PlannedAsync(host, ExampleOrders.W1))[0];
        var path = $"/v1/cutting/pieces/{Ids(roll)[0]}/cut";

        var (_, first) = await host.AskAsync(HttpMethod.Post, path);
        var (status, again) = await host.AskAsync(HttpMethod.Post, path);

        Assert.Equal(HttpStatusCode.OK, status);
        Assert.Equal(first.ToJsonString(), again.ToJsonString());
        Assert.Equal(1, (int)(await host.GetAsync("/v1/cutting/plans/PF-1001"))["piecesCut"]!);
    }

    [Fact]
    public async Task The_last_cut_of_a_roll_puts_a_long_left_over_on_the_rack()
    {
        await using var host = await CuttingHost.StartAsync();
        var rolls = await PlannedAsync(host, Only(ExampleOrders.W1, 396, 396));

        var last = await CutAsync(host, Ids(Assert.Single(rolls)));
        var stock = (await host.GetAsync("/v1/cutting/stock"))["stock"]!.AsArray();

        var offcut = Assert.Single(stock)!;
        Assert.Equal((string)last["offcutStockId"]!, (string)offcut["stockId"]!);
        Assert.Equal(1194 - (2 * 396), (double)offcut["lengthIn"]!);
    }

    [Fact]
    public async Task A_left_over_under_the_useful_minimum_is_not_kept()
    {
        await using var host = await CuttingHost.StartAsync();
        var rolls = await PlannedAsync(host, Only(ExampleOrders.W1, 396, 396, 396));

        var last = await CutAsync(host, Ids(Assert.Single(rolls)));

        Assert.True((bool)last["rollFinished"]!);
        Assert.Empty((await host.GetAsync("/v1/cutting/stock"))["stock"]!.AsArray());
    }

    [Fact]
    public async Task An_offcut_is_used_by_a_later_plan_before_a_new_roll()
    {
        await using var host = await CuttingHost.StartAsync();
        await PlannedAsync(host, Only(ExampleOrders.W1, 396, 396));
        var offcut = (string)(await CutAsync(host, await IdsOfAsync(host, "PF-1001")))[
            "offcutStockId"]!;

        var rolls = await PlannedAsync(host, Only(ExampleOrders.Numbered("PF-2"), 396));

        Assert.Equal(offcut, (string)Assert.Single(rolls)["stockId"]!);
        Assert.Equal(1194 - (3 * 396), (double)rolls[0]["leftOverIn"]!);
    }

    [Fact]
    public async Task A_spoiled_piece_is_cut_again_and_cuts_already_made_are_kept()
    {
        await using var host = await CuttingHost.StartAsync();
        var roll = (await PlannedAsync(host, ExampleOrders.W1))[0];
        var (rollId, ids) = ((long)roll["rollId"]!, Ids(roll));
        await CutAsync(host, ids[..2]);

        await host.AskAsync(
            HttpMethod.Post, $"/v1/cutting/pieces/{ids[1]}/spoiled", new { rollId }, key: "k1");
        await host.NextPlannedAsync();
        var after = await RollsAsync(host, "PF-1001");

        var kept = after.Single(r => (long)r["rollId"]! == rollId);
        Assert.Equal("cut", State(kept, ids[0]));
        Assert.True((double)kept["spoiledIn"]! > 0);
        Assert.Equal(46, after.SelectMany(Ids).Distinct().Count());
        Assert.All(after, AddsUp);
    }

    [Fact]
    public async Task A_report_of_a_spoiled_piece_sent_twice_spoils_it_once()
    {
        await using var host = await CuttingHost.StartAsync();
        var roll = (await PlannedAsync(host, ExampleOrders.W1))[0];
        var path = $"/v1/cutting/pieces/{Ids(roll)[0]}/spoiled";
        var wish = new { rollId = (long)roll["rollId"]! };

        var (_, first) = await host.AskAsync(HttpMethod.Post, path, wish, key: "k1");
        await host.NextPlannedAsync();
        var (status, again) = await host.AskAsync(HttpMethod.Post, path, wish, key: "k1");

        Assert.Equal(HttpStatusCode.OK, status);
        Assert.Equal(first.ToJsonString(), again.ToJsonString());
        Assert.Equal(0, host.PlannedWaiting);
    }

    [Fact]
    public async Task A_short_roll_keeps_its_cuts_and_gives_no_more_than_it_has()
    {
        await using var host = await CuttingHost.StartAsync();
        var roll = (await PlannedAsync(host, ExampleOrders.W1))[0];
        var (rollId, ids) = ((long)roll["rollId"]!, Ids(roll));
        await CutAsync(host, ids[..1]);

        var (status, answer) = await host.AskAsync(
            HttpMethod.Post, $"/v1/cutting/rolls/{rollId}/short",
            new { measuredLength = "50 ft" }, key: "k1");
        await host.NextPlannedAsync();
        var after = await RollsAsync(host, "PF-1001");

        Assert.Equal((HttpStatusCode.OK, 600), (status, (double)answer["rollLengthIn"]!));
        Assert.Equal(
            "cut", State(after.Single(r => (long)r["rollId"]! == rollId), ids[0]));
        Assert.Equal(46, after.SelectMany(Ids).Distinct().Count());
        Assert.All(after, AddsUp);
    }

    /// <summary>50 ft less 6 in of trim less 33 ft cut leave 16 ft 6 in (plain arithmetic).
    /// </summary>
    [Fact]
    public async Task A_short_roll_gives_no_piece_beyond_its_end_while_it_waits_for_a_plan()
    {
        await using var host = await CuttingHost.StartAsync();
        var roll = (await PlannedAsync(host, Only(ExampleOrders.W1, 396, 396)))[0];
        var (rollId, ids) = ((long)roll["rollId"]!, Ids(roll));
        await CutAsync(host, ids[..1]);
        await host.HoldPlannerAsync();
        await host.AskAsync(
            HttpMethod.Post, $"/v1/cutting/rolls/{rollId}/short",
            new { measuredLength = "50 ft" }, key: "k1");

        var cut = await host.AskAsync(HttpMethod.Post, $"/v1/cutting/pieces/{ids[1]}/cut");
        var spoiled = await host.AskAsync(
            HttpMethod.Post, $"/v1/cutting/pieces/{ids[1]}/spoiled", new { rollId }, key: "k2");

        Assert.All(new[] { cut, spoiled }, answer =>
        {
            Assert.Equal(HttpStatusCode.Conflict, answer.Status);
            Assert.Contains("16 ft 6 in", (string)answer.Body["detail"]!);
        });
    }

    [Theory]
    [InlineData("20 ft")]
    [InlineData("100 ft")]
    [InlineData("0 ft")]
    public async Task A_measured_length_that_cannot_be_true_is_refused(string measured)
    {
        await using var host = await CuttingHost.StartAsync();
        var roll = (await PlannedAsync(host, Only(ExampleOrders.W1, 396, 396)))[0];
        await CutAsync(host, Ids(roll)[..1]);

        var (status, problem) = await host.AskAsync(
            HttpMethod.Post, $"/v1/cutting/rolls/{(long)roll["rollId"]!}/short",
            new { measuredLength = measured }, key: "k1");

        Assert.Equal(HttpStatusCode.UnprocessableEntity, status);
        Assert.Equal("/measuredLength", (string)problem["violations"]![0]!["pointer"]!);
    }

    [Fact]
    public async Task What_a_changed_order_no_longer_needs_but_was_cut_stays_on_its_roll()
    {
        await using var host = await CuttingHost.StartAsync();
        var ids = Ids((await PlannedAsync(host, ExampleOrders.W1))[0]);
        await CutAsync(host, ids[..2]);

        await host.SendAsync(ExampleOrders.W1.Revised(order => order with
        {
            Pieces = [.. order.Pieces.Where(piece => piece.PieceId != ids[0])],
        }));
        await host.NextPlannedAsync();
        var after = await RollsAsync(host, "PF-1001");

        var first = after.Single(roll => Ids(roll).Contains(ids[0]));
        Assert.Equal(("voided", "cut"), (State(first, ids[0]), State(first, ids[1])));
        Assert.All(after, AddsUp);
    }

    [Fact]
    public async Task Rolls_received_are_used_oldest_first_before_new_ones()
    {
        await using var host = await CuttingHost.StartAsync();
        var old = await ReceiveAsync(host, "k1", "LOT-A");
        var younger = await ReceiveAsync(host, "k2", "LOT-A");

        var rolls = await PlannedAsync(host, Only(ExampleOrders.W1, 396, 396, 396, 396));

        Assert.Equal([old, younger], rolls.Select(roll => (string?)roll["stockId"]).Order());
    }

    [Fact]
    public async Task A_refused_order_is_planned_once_a_long_enough_roll_is_there()
    {
        await using var host = await CuttingHost.StartAsync();
        await host.SendAsync(Only(ExampleOrders.W1, 1200));
        await host.NextRejectedAsync();

        await host.AskAsync(HttpMethod.Post, "/v1/cutting/stock", new
        {
            product = "blanket-3-white",
            rollWidth = "48 in",
            rollLength = "110 ft",
        }, key: "k1");
        await host.AskAsync(HttpMethod.Post, "/v1/cutting/plans/PF-1001/retry");

        Assert.Equal(1, (await host.NextPlannedAsync()).Data.RollCount);
    }

    [Fact]
    public async Task A_refused_order_announced_again_is_tried_again()
    {
        await using var host = await CuttingHost.StartAsync();
        var order = Only(ExampleOrders.W1, 1200);
        await host.SendAsync(order);
        var first = await host.NextRejectedAsync();

        await host.SendAsync(order with { Id = Guid.NewGuid() });
        var again = await host.NextRejectedAsync();

        Assert.NotEqual(first.Id, again.Id);
        Assert.Equal(first.Data.Reasons, again.Data.Reasons);
    }

    [Fact]
    public async Task Every_mistake_of_a_receipt_is_named_at_once()
    {
        await using var host = await CuttingHost.StartAsync();

        var (status, problem) = await host.AskAsync(HttpMethod.Post, "/v1/cutting/stock", new
        {
            rollWidth = 48,
            rollLength = "-3 ft",
            count = 0,
            colour = "white",
        }, key: "k1");

        Assert.Equal(HttpStatusCode.UnprocessableEntity, status);
        Assert.Equal(
            ["/colour", "/count", "/product", "/rollLength", "/rollWidth"],
            problem["violations"]!.AsArray().Select(v => (string)v!["pointer"]!).Order());
    }

    private static OrderConfirmed Only(OrderConfirmed order, params int[] lengthsIn) => order with
    {
        Data = order.Data with
        {
            Pieces = [.. lengthsIn.Select((length, n) => order.Data.Pieces[n] with
            {
                CutNm = length * Inch,
            })],
        },
    };

    private static async Task<List<JsonNode>> PlannedAsync(CuttingHost host, OrderConfirmed order)
    {
        await host.SendAsync(order);
        await host.NextPlannedAsync();
        return await RollsAsync(host, order.Data.OrderNumber);
    }

    private static async Task<List<JsonNode>> RollsAsync(CuttingHost host, string order) =>
        [.. (await host.GetAsync("/v1/cutting/plans/" + order))["plans"]!.AsArray()
            .SelectMany(plan => plan!["rollList"]!.AsArray()).Select(roll => roll!)];

    private static async Task<string[]> IdsOfAsync(CuttingHost host, string order) =>
        [.. (await RollsAsync(host, order)).SelectMany(Ids)];

    private static string[] Ids(JsonNode roll) =>
        [.. roll["cuts"]!.AsArray().Select(cut => (string)cut!["pieceId"]!)];

    private static string State(JsonNode roll, string piece) => (string)roll["cuts"]!.AsArray()
        .Single(cut => (string)cut!["pieceId"]! == piece)!["state"]!;

    private static async Task<JsonNode> CutAsync(CuttingHost host, string[] pieces)
    {
        JsonNode answer = new JsonObject();
        foreach (var piece in pieces)
        {
            (_, answer) = await host.AskAsync(
                HttpMethod.Post, $"/v1/cutting/pieces/{piece}/cut");
        }

        return answer;
    }

    private static async Task<string> ReceiveAsync(CuttingHost host, string key, string lot)
    {
        var (_, rack) = await host.AskAsync(HttpMethod.Post, "/v1/cutting/stock", new
        {
            product = "blanket-3-white",
            rollWidth = "48 in",
            rollLength = "100 ft",
            lot,
        }, key);
        return (string)rack["stock"]![0]!["stockId"]!;
    }

    /// <summary>Trim, cuts, spoiled length and left-over are the whole roll.</summary>
    private static void AddsUp(JsonNode roll) => Assert.Equal(
        (double)roll["rollLengthIn"]!,
        (double)roll["endTrimIn"]! + (double)roll["spoiledIn"]! + (double)roll["leftOverIn"]!
            + roll["cuts"]!.AsArray().Sum(cut => (double)cut!["cutIn"]!),
        precision: 2);
}
