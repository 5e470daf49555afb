using System.Text.Json.Nodes;
using Dapper;
using Microsoft.Data.Sqlite;
using PostFrame.OrdersApi.TakeOffs;
using PostFrame.ServicesTests.Messaging;
using Xunit;

namespace PostFrame.ServicesTests.Orders;

public sealed class IntakeRules : IAsyncLifetime
{
    private readonly TemporaryFolder _folder = new();
    private OrdersHost _host = null!;

    public async ValueTask InitializeAsync() => _host = await OrdersHost.StartAsync(_folder);

    public async ValueTask DisposeAsync()
    {
        await _host.DisposeAsync();
        _folder.Dispose();
    }

    [Fact]
    public async Task An_order_is_accepted_with_its_address_and_the_count_of_its_pieces()
    {
        var answer = await _host.PostAsync(OrderRequests.Example, "first");
        Assert.Equal((202, "/v1/orders/PF-1001"), (answer.Status, answer.Location));
        // 46 pieces: the worked example W1 of the take-off rules.
        Assert.Equal(46, answer.Json["pieces"]!.GetValue<int>());
    }

    /// <summary>By hand: 30 × 40 ft at 4:12 is 2 × 480 × 189.737 in² = 1264.9 ft², at 2 in 2530
    /// board feet; the walls are cut as in W1: 20 and 16 pieces.</summary>
    [Fact]
    public async Task Foam_beside_blanket_is_taken_and_goes_on_the_packing_list()
    {
        var answer = await _host.PostAsync(OrderRequests.Changed(order =>
        {
            var roof = order["insulation"]![0]!.AsObject();
            roof["product"] = "spray-foam-closed";
            roof["thickness"] = "2 in";
            roof.Remove("rollWidth");
            roof.Remove("roofLayout");
        }), "foam");
        Assert.Equal((202, 36), (answer.Status, answer.Json["pieces"]?.GetValue<int>()));

        var confirmed = (await _host.NextAnnouncedAsync()).Data;
        Assert.DoesNotContain(confirmed.Planes, plane => plane.Kind == "roof");
        Assert.Contains(confirmed.Accessories, item => item is
        {
            Name: "Closed-cell spray foam: Roof slope A, Roof slope B",
            Quantity: "2,530 board feet",
        });
    }

    /// <summary>One strip has no joint: nothing to tape, nothing to staple.</summary>
    [Fact]
    public async Task What_a_delivery_holds_none_of_is_not_on_its_packing_list()
    {
        await _host.PostAsync(OrderRequests.Changed(order =>
        {
            order["building"]!["width"] = "4 ft";
            order["insulation"] = new JsonArray(new JsonObject
            {
                ["planes"] = new JsonArray("endwall1"),
                ["product"] = "blanket-3-white",
                ["rollWidth"] = "48 in",
            });
        }), "strip");

        var told = (await _host.NextAnnouncedAsync()).Data.Accessories;
        Assert.Contains(told, item => item.Quantity == "1 roll");
        Assert.DoesNotContain(
            told, item => item.Quantity.StartsWith("0 ", StringComparison.Ordinal));
    }

    [Fact]
    public async Task The_crew_is_told_of_panels_to_cut_out()
    {
        await _host.PostAsync(OrderRequests.Changed(order =>
            order["building"]!["roof"]!["translucentPanels"] = new JsonArray(
                new JsonObject { ["fromStart"] = "12 ft", ["width"] = "3 ft" })), "panel");

        Assert.Contains((await _host.NextAnnouncedAsync()).Data.Notes, note =>
            note.Contains("hides a fall hazard", StringComparison.Ordinal));
    }

    [Fact]
    public async Task The_same_key_and_body_get_the_same_bytes_and_no_second_order()
    {
        var first = await _host.PostAsync(OrderRequests.Example, "same");
        _host.Time.Advance(TimeSpan.FromDays(1));
        var second = await _host.PostAsync(OrderRequests.Example, "same");
        Assert.Equal(first, second);
        Assert.Single((await _host.GetAsync("/v1/orders")).Json["orders"]!.AsArray());
    }

    [Fact]
    public async Task The_answer_to_a_key_outlives_the_process()
    {
        var first = await _host.PostAsync(OrderRequests.Example, "kept");
        await _host.DisposeAsync();
        _host = await OrdersHost.StartAsync(_folder);
        Assert.Equal(first, await _host.PostAsync(OrderRequests.Example, "kept"));
    }

    [Fact]
    public async Task The_same_key_with_another_body_is_refused_and_changes_nothing()
    {
        await _host.PostAsync(OrderRequests.Example, "used");
        var other = await _host.PostAsync(OrderRequests.Shed("PF-2"), "used");
        Assert.Equal((422, "/problems/idempotency-key-reused"), (other.Status, other.Type));
        Assert.Equal(404, (await _host.GetAsync("/v1/orders/PF-2")).Status);
    }

    [Fact]
    public async Task An_order_number_is_taken_once()
    {
        await _host.PostAsync(OrderRequests.Example, "one");
        var other = await _host.PostAsync(OrderRequests.Example, "two");
        Assert.Equal((409, "/problems/order-number-taken"), (other.Status, other.Type));
    }

    [Fact]
    public async Task A_number_that_differs_only_in_case_is_taken_too()
    {
        await _host.PostAsync(OrderRequests.Shed("PF-77a"), "one");
        var other = await _host.PostAsync(OrderRequests.Shed("pf-77A"), "two");

        Assert.Equal((409, "/problems/order-number-taken"), (other.Status, other.Type));
        Assert.Contains("PF-77a", (string)other.Json["detail"]!);
        Assert.Contains("upper and lower case", (string)other.Json["detail"]!);
        Assert.Single((await _host.GetAsync("/v1/orders")).Json["orders"]!.AsArray());
    }

    [Theory]
    [InlineData("?limit=0&state=lost&colour=red", "/limit /state /colour")]
    [InlineData("?Limit=1&limit=2", "/limit")]
    [InlineData("?changedAfter=-1", "/changedAfter")]
    public async Task A_query_that_cannot_be_used_is_refused_member_by_member(
        string query, string pointers)
    {
        var answer = await _host.GetAsync("/v1/orders" + query);
        Assert.Equal(422, answer.Status);
        Assert.Equal(
            pointers.Split(' '),
            answer.Json["violations"]!.AsArray().Select(found => (string)found!["pointer"]!));
    }

    [Theory]
    [InlineData(
        "blanket-3-white",
        "Reinforced white film toward the inside; the tab laps over the next strip")]
    [InlineData(
        "blanket-3-foil",
        "Reinforced bright foil toward the inside; the tab laps over the next strip")]
    [InlineData(
        "bubble-foil",
        "Bright foil on both sides: either may look inside; lap the next strip over the edge")]
    public async Task The_workers_are_told_which_face_goes_where(string product, string facing)
    {
        await _host.PostAsync(
            OrderRequests.Changed(order =>
            {
                foreach (var plane in order["insulation"]!.AsArray())
                {
                    plane!["product"] = product;
                }
            }),
            "facing");
        var announced = await _host.NextAnnouncedAsync();
        Assert.All(announced.Data.Planes, plane => Assert.Equal(facing, plane.Facing));
    }

    /// <summary>1 ft is 304 800 000 nm: a lean-to from 10 ft, under a 1 ft rake overhang that is
    /// covered.</summary>
    [Fact]
    public async Task The_workers_are_told_where_a_plane_starts_along_the_building()
    {
        await _host.PostAsync(
            OrderRequests.Changed(order =>
            {
                order["building"]!["roof"]!["rakeOverhang"] = "1 ft";
                order["building"]!["roof"]!["coverOverhangs"] = true;
                order["building"]!["leanTos"] = JsonNode.Parse("""
                    [{ "side": "A", "width": "8 ft", "slope": "2:12", "drop": "1 ft",
                       "fromEndwall1": "10 ft", "inside": "separate" }]
                    """);
                order["insulation"]![1]!["planes"]!.AsArray().Add("leanRoofA");
                order["insulation"]![1]!["planes"]!.AsArray().Add("leanSidewallA");
            }),
            "starts");
        var starts = (await _host.NextAnnouncedAsync()).Data.Planes
            .ToDictionary(plane => plane.Id, plane => plane.StartNm / 304_800_000);
        Assert.Equal(
            (-1, 9, 10, null, null),
            (starts["roof"], starts["leanRoofA"], starts["leanSidewallA"], starts["sidewallA"],
                starts["endwall1"]));
    }

    [Fact]
    public async Task Fifty_identical_posts_at_once_make_one_order_and_one_answer()
    {
        var answers = await Task.WhenAll(Enumerable.Range(0, 50).Select(
            _ => Task.Run(() => _host.PostAsync(OrderRequests.Example, "storm"))));
        Assert.Equal(202, Assert.Single(answers.Distinct()).Status);
        Assert.Single((await _host.GetAsync("/v1/orders")).Json["orders"]!.AsArray());
    }

    [Theory]
    [InlineData]
    [InlineData("")]
    [InlineData("a", "b")]
    [InlineData("with space")]
    [InlineData("grün")]
    public async Task A_missing_doubled_or_unreadable_key_is_refused(params string[] keys)
    {
        var answer = await _host.PostAsync(OrderRequests.Example, keys);
        Assert.Equal(400, answer.Status);
    }

    [Fact]
    public async Task A_key_longer_than_255_characters_is_refused()
    {
        var answer = await _host.PostAsync(OrderRequests.Example, new string('k', 256));
        Assert.Equal("/problems/idempotency-key-missing", answer.Type);
    }

    [Fact]
    public async Task Every_mistake_of_the_order_and_of_its_building_comes_at_once()
    {
        var answer = await _host.PostAsync(
            OrderRequests.Changed(order =>
            {
                order["orderNumber"] = "../etc";
                order["neededBy"] = "soon";
                order["shipTo"] = new JsonObject();
                order["colour"] = "red";
                order["building"]!["width"] = "thirty";
                order["insulation"]![0]!["product"] = "wool";
            }),
            "bad");
        Assert.Equal(422, answer.Status);
        Assert.Equal(
            [
                "/building/width", "/colour", "/insulation/0/product", "/neededBy", "/orderNumber",
                "/shipTo/name",
            ],
            answer.Json["violations"]!.AsArray()
                .Select(found => found!["pointer"]!.GetValue<string>()).Order());
    }

    [Theory]
    [InlineData("", 400)]
    [InlineData("{", 400)]
    [InlineData("[]", 422)]
    [InlineData("{}", 422)]
    [InlineData("null", 422)]
    public async Task A_body_that_is_no_order_is_refused_with_the_reason(string body, int status)
    {
        var answer = await _host.PostAsync(System.Text.Encoding.UTF8.GetBytes(body), "k");
        Assert.Equal(status, answer.Status);
        Assert.NotEmpty(answer.Json["violations"]!.AsArray());
    }

    [Fact]
    public async Task An_order_is_not_accepted_while_sizing_is_away_and_is_once_it_is_back()
    {
        var isAway = true;
        using var folder = new TemporaryFolder();
        await using var host = await OrdersHost.StartAsync(folder, (request, cancel) => isAway
            ? Task.FromResult(TakeOffAnswer.Unavailable)
            : OrdersHost.RealSizing(request, cancel));
        var refused = await host.PostAsync(OrderRequests.Example, "again");
        Assert.Equal((503, "/problems/sizing-unavailable"), (refused.Status, refused.Type));
        isAway = false;
        Assert.Equal(202, (await host.PostAsync(OrderRequests.Example, "again")).Status);
    }

    [Fact]
    public async Task While_the_store_is_locked_nothing_is_accepted_and_the_caller_may_try_again()
    {
        var other = new SqliteConnection(
            $"Data Source={Path.Combine(_folder.Path, "orders.db")};Pooling=False");
        other.Open();
        other.Execute("BEGIN IMMEDIATE");
        var refused = await _host.PostAsync(OrderRequests.Example, "locked");
        Assert.Equal((503, "/problems/store-unavailable"), (refused.Status, refused.Type));
        other.Dispose();
        Assert.Equal(202, (await _host.PostAsync(OrderRequests.Example, "locked")).Status);
    }

    [Fact]
    public async Task Every_piece_ever_issued_has_an_id_of_its_own()
    {
        for (var n = 1; n <= 5; n++)
        {
            await _host.PostAsync(OrderRequests.Shed("PF-" + n), "k" + n);
        }

        Assert.Equal(0, _host.Store.Read(view => view.Single<long>(
            "SELECT count(*) - count(DISTINCT piece_id) FROM piece")));
        Assert.Equal(5, _host.Store.Read(view => view.Single<long>(
            "SELECT count(DISTINCT order_seq) FROM piece")));
    }

    [Theory]
    [InlineData("limit=0")]
    [InlineData("limit=x")]
    [InlineData("state=lost")]
    [InlineData("before=-1")]
    public async Task A_list_asked_for_wrongly_is_refused(string query)
    {
        Assert.Equal(422, (await _host.GetAsync("/v1/orders?" + query)).Status);
    }

    [Fact]
    public async Task The_list_is_read_page_by_page_without_gap_or_double()
    {
        for (var n = 1; n <= 5; n++)
        {
            await _host.PostAsync(OrderRequests.Shed("PF-" + n), "k" + n);
        }

        var seen = new List<string>();
        for (var page = "/v1/orders?limit=2"; page is not null;)
        {
            var answer = (await _host.GetAsync(page)).Json;
            seen.AddRange(answer["orders"]!.AsArray()
                .Select(order => order!["orderNumber"]!.GetValue<string>()));
            page = answer["next"]?.GetValue<string>();
        }

        Assert.Equal(["PF-5", "PF-4", "PF-3", "PF-2", "PF-1"], seen);
    }
}
