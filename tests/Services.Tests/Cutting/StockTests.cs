using System.Net;
using System.Text.Json.Nodes;
using PostFrame.CuttingWorker.Messages;
using Xunit;

namespace PostFrame.ServicesTests.Cutting;

/// <summary>
/// Rolls as they come in: what is taken in, in which order it is cut, one lot for what is seen side
/// by side, and nothing over a flaw. Lots and flaws: common practice, no source; the sums are plain
/// arithmetic.
/// </summary>
public sealed class StockTests
{
    private const double TrimIn = 6;

    [Theory]
    [InlineData("blanket-5-white", "48 in", "/product", "unknown-product", "blanket-3-white")]
    [InlineData("batt-3-5-unfaced", "48 in", "/product", "not-on-rolls", "bubble-foil")]
    [InlineData("spray-foam-closed", "48 in", "/product", "not-on-rolls", "blanket-6-foil")]
    [InlineData("blanket-3-white", "50 in", "/rollWidth", "no-such-width", "60 in")]
    [InlineData("bubble-foil", "36 in", "/rollWidth", "no-such-width", "24 in")]
    public async Task What_there_is_not_is_refused_with_what_there_is(
        string product, string width, string pointer, string rule, string instead)
    {
        await using var host = await CuttingHost.StartAsync();
        var (status, problem) = await host.AskAsync(
            HttpMethod.Post, "/v1/cutting/stock",
            new { product, rollWidth = width, rollLength = "100 ft" }, key: "k");

        Assert.Equal(HttpStatusCode.UnprocessableEntity, status);
        var mistake = Assert.Single(problem["violations"]!.AsArray())!;
        Assert.Equal((pointer, rule), ((string)mistake["pointer"]!, (string)mistake["rule"]!));
        Assert.Contains(instead, (string)mistake["bound"]!);
    }

    [Fact]
    public async Task Mistakes_of_lots_and_flaws_are_named_at_once()
    {
        await using var host = await CuttingHost.StartAsync();
        var (status, problem) = await host.AskAsync(HttpMethod.Post, "/v1/cutting/stock", new
        {
            product = "blanket-9-white",
            rollWidth = "48 in",
            rollLength = "100 ft",
            receivedOn = "2999-01-01",
            count = 2,
            flaws = new object[]
            {
                new { at = "40 ft" }, new { at = "30 ft" }, new { at = "99 ft", length = "2 ft" },
                new { length = "2 ft" },
            },
        }, key: "k");

        Assert.Equal(HttpStatusCode.UnprocessableEntity, status);
        Assert.Equal(
            ["/count", "/flaws/1/at", "/flaws/2/at", "/flaws/3/at", "/product", "/receivedOn"],
            problem["violations"]!.AsArray().Select(v => (string)v!["pointer"]!).Order());
    }

    [Fact]
    public async Task The_lot_that_came_first_is_cut_first_whatever_was_entered_first()
    {
        await using var host = await CuttingHost.StartAsync();
        await ReceiveAsync(host, "k1", new { lot = "L-NEW", receivedOn = "2026-11-20", count = 8 });
        await ReceiveAsync(host, "k2", new { lot = "L-OLD", receivedOn = "2026-01-15", count = 8 });

        var rolls = await PlannedAsync(host, ExampleOrders.W1);

        Assert.Equal(8, rolls.Count);
        Assert.All(rolls, roll => Assert.Equal("L-OLD", (string?)roll["lot"]));
    }

    [Fact]
    public async Task A_plane_whose_film_is_seen_is_cut_from_one_lot()
    {
        await using var host = await CuttingHost.StartAsync();
        await ReceiveAsync(host, "k1", new { lot = "L-1", receivedOn = "2026-01-15", count = 5 });
        await ReceiveAsync(host, "k2", new { lot = "L-2", receivedOn = "2026-02-15", count = 6 });

        var rolls = await PlannedAsync(host, ExampleOrders.W1);

        Assert.Equal(["L-1", "L-2"], rolls.Select(roll => (string?)roll["lot"]).Distinct().Order());
        Assert.All(
            rolls.SelectMany(roll => roll["cuts"]!.AsArray().Select(
                cut => (Plane: (string)cut!["plane"]!, Lot: (string?)roll["lot"])))
                .GroupBy(cut => cut.Plane),
            plane => Assert.Single(plane.Select(cut => cut.Lot).Distinct()));
    }

    [Theory]
    [InlineData("")]
    [InlineData("  ")]
    public async Task A_lot_left_blank_is_no_lot_and_the_order_is_planned(string blank)
    {
        await using var host = await CuttingHost.StartAsync();
        var rack = await ReceiveAsync(host, "k1", new { lot = blank, count = 2 });

        var rolls = await PlannedAsync(host, ExampleOrders.W1);

        Assert.All(rack, stock => Assert.Null(stock["lot"]));
        Assert.Equal(2, rolls.Count(roll => roll["stockId"] is not null));
    }

    [Fact]
    public async Task A_bound_over_rolls_of_several_lengths_says_what_it_counts()
    {
        await using var host = await CuttingHost.StartAsync();
        await ReceiveAsync(host, "k1", new { rollLength = "34 ft", endTrim = "0 in", count = 8 });
        await PlannedAsync(host, ExampleOrders.W1);

        var plan = (await host.GetAsync("/v1/cutting/plans/PF-1001"))["plans"]![0]!;

        Assert.Equal(
            (int)plan["gapRolls"]! > 0 && (bool)plan["proven"]!,
            ((string)plan["explanation"]!).Contains(
                "not with less material bought", StringComparison.Ordinal));
        Assert.True((int)plan["gapRolls"]! > 0);
        Assert.Matches(@"less than \d+ ft [\d.]+ in of roll\.", (string)plan["explanation"]!);
    }

    [Fact]
    public async Task A_plane_that_had_to_change_lots_says_so()
    {
        await using var host = await CuttingHost.StartAsync();
        await ReceiveAsync(host, "k1", new { lot = "L-1" });
        var two = ExampleOrders.W1 with
        {
            Data = ExampleOrders.W1.Data with
            {
                Pieces = [.. ExampleOrders.W1.Data.Pieces.Take(3)],
            },
        };
        var roll = Assert.Single(await PlannedAsync(host, two));
        var piece = (string)roll["cuts"]![0]!["pieceId"]!;
        foreach (var cut in roll["cuts"]!.AsArray())
        {
            await host.AskAsync(HttpMethod.Post, $"/v1/cutting/pieces/{cut!["pieceId"]}/cut");
        }

        await host.AskAsync(
            HttpMethod.Post, $"/v1/cutting/pieces/{piece}/spoiled",
            new { rollId = (long)roll["rollId"]! }, key: "k2");
        await host.NextPlannedAsync();

        var plan = await host.GetAsync("/v1/cutting/plans/PF-1001");
        Assert.Contains(
            "L-1 and new rolls", (string?)Assert.Single(plan["warnings"]!.AsArray()));
    }

    /// <summary>100 ft, a splice at 40 ft and 2 in torn at 75 ft: 40, 35 and 24 ft 10 in.</summary>
    [Fact]
    public async Task A_roll_with_flaws_comes_to_the_rack_as_its_sound_parts()
    {
        await using var host = await CuttingHost.StartAsync();
        var parts = await ReceiveAsync(host, "k1", new
        {
            lot = "L-1",
            flaws = new object[] { new { at = "40 ft" }, new { at = "75 ft", length = "2 in" } },
        });

        Assert.Equal(
            ["ROLL-1-1", "ROLL-1-2", "ROLL-1-3"],
            parts.Select(part => (string)part["stockId"]!));
        Assert.Equal([480, 420, 298], parts.Select(part => (double)part["lengthIn"]!));
        Assert.Equal([TrimIn, 0, 0], parts.Select(part => (double)part["endTrimIn"]!));
        Assert.Equal(
            ["0 ft 0 in", "40 ft 0 in", "75 ft 2 in"],
            parts.Select(part => (string)part["partFromText"]!));
        Assert.All(parts, part => Assert.Equal("ROLL-1", (string?)part["partOf"]));
    }

    [Fact]
    public async Task No_piece_is_cut_over_a_flaw_and_the_sound_parts_are_used_first()
    {
        await using var host = await CuttingHost.StartAsync();
        await ReceiveAsync(host, "k1", new { flaws = new object[] { new { at = "40 ft" } } });
        var pieces = ExampleOrders.W1.Data.Pieces.Take(2);

        var rolls = await PlannedAsync(host, ExampleOrders.W1 with
        {
            Data = ExampleOrders.W1.Data with { Pieces = [.. pieces] },
        });

        Assert.All(rolls, roll => Assert.StartsWith("ROLL-1-", (string?)roll["stockId"]));
        Assert.All(rolls, roll => Assert.True(
            roll["cuts"]!.AsArray().Sum(cut => (double)cut!["cutIn"]!)
                <= (double)roll["rollLengthIn"]! - (double)roll["endTrimIn"]!));
    }

    /// <summary>1200 − 6 − 2 × 396 = 402 in, of the lot and age of its roll.</summary>
    [Fact]
    public async Task An_offcut_goes_to_the_rack_with_lot_and_age_and_into_the_next_plan()
    {
        await using var host = await CuttingHost.StartAsync();
        await ReceiveAsync(host, "k1", new { lot = "L-1", receivedOn = "2026-01-15" });
        var order = ExampleOrders.W1 with
        {
            Data = ExampleOrders.W1.Data with
            {
                Pieces = [.. ExampleOrders.W1.Data.Pieces.Take(2)],
            },
        };
        foreach (var roll in await PlannedAsync(host, order))
        {
            foreach (var cut in roll["cuts"]!.AsArray())
            {
                await host.AskAsync(HttpMethod.Post, $"/v1/cutting/pieces/{cut!["pieceId"]}/cut");
            }
        }

        var rack = (await host.GetAsync("/v1/cutting/stock"))["stock"]!.AsArray();
        var offcut = Assert.Single(rack)!;
        Assert.Equal(
            ("offcut", 402.0, "L-1", "2026-01-15"),
            ((string)offcut["kind"]!, (double)offcut["lengthIn"]!, (string)offcut["lot"]!,
                ((string)offcut["receivedAt"]!)[..10]));

        var other = ExampleOrders.Numbered("PF-2");
        var next = Assert.Single(await PlannedAsync(host, other with
        {
            Data = other.Data with { Pieces = [other.Data.Pieces[0]] },
        }));
        Assert.Equal((string?)offcut["stockId"], (string?)next["stockId"]);
    }

    private static async Task<List<JsonNode>> ReceiveAsync(
        CuttingHost host, string key, object more)
    {
        var body = System.Text.Json.JsonSerializer.SerializeToNode(more)!.AsObject();
        body["product"] = "blanket-3-white";
        body["rollWidth"] = "48 in";
        body["rollLength"] ??= "100 ft";
        var (status, rack) = await host.AskAsync(
            HttpMethod.Post, "/v1/cutting/stock", body, key);
        Assert.Equal(HttpStatusCode.OK, status);
        return [.. rack["stock"]!.AsArray().Select(stock => stock!)];
    }

    private static async Task<List<JsonNode>> PlannedAsync(CuttingHost host, OrderConfirmed order)
    {
        await host.SendAsync(order);
        await host.NextPlannedAsync();
        var plan = await host.GetAsync("/v1/cutting/plans/" + order.Data.OrderNumber);
        return [.. plan["plans"]!.AsArray()
            .SelectMany(group => group!["rollList"]!.AsArray()).Select(roll => roll!)];
    }
}
