using System.Net;
using System.Text.Json.Nodes;
using PostFrame.CuttingWorker.Messages;
using PostFrame.CuttingWorker.Planning;
using PostFrame.CuttingWorker.Plans;
using Xunit;

namespace PostFrame.ServicesTests.Cutting;

/// <summary>
/// The price of finishing one plane before the next, and having it so. By hand: the roof takes two
/// pieces of 500 in, the wall two of 690 in, of 1,194 in usable. A roll holds both of the roof
/// (194 in left, no wall piece fits) but only one of the wall, so plane after plane an order takes
/// 1 + 2 rolls; 500 + 690 = 1,190 in, so with planes mixed it takes 2.
/// </summary>
public sealed class OnePlaneTests
{
    private const string Path = "/v1/cutting/shift";
    private static readonly string[] Orders = ["PF-41", "PF-42"];
    private static readonly string[] Apart = ["RA 500+500", "SA 690", "SA 690"];

    /// <summary>Two orders: 6 rolls bought, 4 at least, 2 × 2,380 in of 7,200 in cut.</summary>
    [Fact]
    public async Task The_price_of_one_plane_at_a_time_is_shown()
    {
        await using var host = await WithOrdersAsync(Orders);

        var shift = await host.GetAsync(Path);
        var planes = shift["onePlaneAtATime"]!;

        Assert.Equal(4, (int)shift["rollsSeparately"]!);
        Assert.Equal(
            (6, 600.0, 200.0, 33.89),
            ((int)planes["rolls"]!, (double)planes["boughtFt"]!,
                (double)planes["moreThanLeastFt"]!, (double)planes["wastePercent"]!));
    }

    [Fact]
    public async Task What_was_shown_is_the_plan_that_is_made()
    {
        await using var host = await WithOrdersAsync(Orders);

        var (_, answer) = await WishAsync(host, new { onePlaneAtATime = true });
        var told = await host.NextPlannedAsync();
        await host.NextPlannedAsync();

        Assert.Equal("""[["PF-41"],["PF-42"]]""", answer["groups"]!.ToJsonString());
        Assert.Equal(3, told.Data.RollCount);
        foreach (var order in Orders)
        {
            var plan = await host.GetAsync("/v1/cutting/plans/" + order);
            Assert.Equal(Apart, Cuts(plan));
            Assert.True((bool)plan["onePlaneAtATime"]!);
            var product = plan["plans"]![0]!;
            Assert.Equal(
                (3, 2, 1, false),
                ((int)product["rolls"]!, (int)product["lowerBoundRolls"]!,
                    (int)product["gapRolls"]!, (bool)product["proven"]!));
            Assert.StartsWith("One plane at a time; ", (string)product["explanation"]!);
        }
    }

    /// <summary>
    /// The example building as it is, 46 pieces: whoever cuts the rolls in turn never comes back to
    /// a plane, and cuts its strips of one length in the order they hang.
    /// </summary>
    [Fact]
    public async Task Each_plane_of_a_building_is_finished_before_the_next_is_begun()
    {
        await using var host = await CuttingHost.StartAsync();
        await host.SendAsync(ExampleOrders.W1);
        await host.NextPlannedAsync();
        await WishAsync(host, new { onePlaneAtATime = true });
        await host.NextPlannedAsync();

        var cuts = (await host.GetAsync("/v1/cutting/plans/PF-1001"))["plans"]!.AsArray()
            .SelectMany(plan => plan!["rollList"]!.AsArray())
            .SelectMany(roll => roll!["cuts"]!.AsArray()).ToList();
        var planes = cuts.Select(cut => (string)cut!["plane"]!).ToList();
        var strips = cuts.GroupBy(cut => ((string)cut!["plane"]!, (double)cut["cutIn"]!)).ToList();

        Assert.Equal(46, cuts.Count);
        Assert.Equal(planes.Distinct(), planes.Where((p, at) => at == 0 || planes[at - 1] != p));
        Assert.Contains(strips, strip => strip.Count() > 9);
        Assert.All(strips, strip => Assert.Equal(
            strip.Select(cut => (string)cut!["mark"]!).Order(),
            strip.Select(cut => (string)cut!["mark"]!)));
    }

    [Fact]
    public async Task One_order_alone_can_be_compared_and_cut_so()
    {
        await using var host = await WithOrdersAsync("PF-41");

        Assert.Equal(3, (int)(await host.GetAsync(Path))["onePlaneAtATime"]!["rolls"]!);
        var (status, _) = await WishAsync(
            host, new { orders = Orders[..1], onePlaneAtATime = true, ordersTogether = 1 });
        await host.NextPlannedAsync();

        Assert.Equal(HttpStatusCode.OK, status);
        Assert.Equal(Apart, Cuts(await host.GetAsync("/v1/cutting/plans/PF-41")));
    }

    /// <summary>
    /// Of roll 1, 694 in are left when a roof piece is spoiled. One of the roof's two comes from
    /// there, the other from a new roll, which goes on with the wall. Mixed, a wall piece could
    /// come from roll 1.
    /// </summary>
    [Fact]
    public async Task A_spoiled_piece_and_a_revision_leave_the_wish_as_it_is()
    {
        await using var host = await WithOrdersAsync("PF-41");
        await WishAsync(host, new { onePlaneAtATime = true });
        await host.NextPlannedAsync();
        var roll = (await host.GetAsync("/v1/cutting/plans/PF-41"))["plans"]![0]!["rollList"]![0]!;
        var piece = (string)roll["cuts"]![0]!["pieceId"]!;

        await host.AskAsync(
            HttpMethod.Post, $"/v1/cutting/pieces/{piece}/spoiled",
            new { rollId = (long)roll["rollId"]! }, key: "spoiled");
        await host.NextPlannedAsync();
        Assert.Equal(
            ["RA 500", "RA 500, SA 690", "SA 690"],
            Cuts(await host.GetAsync("/v1/cutting/plans/PF-41")));

        await host.SendAsync(Order("PF-41").Revised(data => data with
        {
            Pieces = [.. data.Pieces.Take(3)],
        }));
        await host.NextPlannedAsync();
        Assert.Equal(
            ["RA 500", "RA 500, SA 690"], Cuts(await host.GetAsync("/v1/cutting/plans/PF-41")));
    }

    /// <summary>
    /// A wall piece is cut out of turn from roll 2, whose other 504 in go to the rack; then one of
    /// the roof is spoiled. Begun rolls keep their place, so the roof is left and come back to, for
    /// a piece of 500 in from the rack.
    /// </summary>
    [Fact]
    public async Task Where_planes_are_not_finished_one_after_another_the_plan_warns()
    {
        await using var host = await WithOrdersAsync("PF-41");
        await WishAsync(host, new { onePlaneAtATime = true });
        await host.NextPlannedAsync();
        var plan = await host.GetAsync("/v1/cutting/plans/PF-41");
        Assert.Empty(plan["warnings"]!.AsArray());
        var rolls = plan["plans"]![0]!["rollList"]!;

        await host.AskAsync(
            HttpMethod.Post, $"/v1/cutting/pieces/{rolls[1]!["cuts"]![0]!["pieceId"]}/cut");
        await host.AskAsync(
            HttpMethod.Post, $"/v1/cutting/pieces/{rolls[0]!["cuts"]![0]!["pieceId"]}/spoiled",
            new { rollId = (long)rolls[0]!["rollId"]! }, key: "spoiled");
        await host.NextPlannedAsync();

        plan = await host.GetAsync("/v1/cutting/plans/PF-41");
        Assert.Equal(["RA 500", "SA 690", "RA 500", "SA 690"], Cuts(plan));
        Assert.Contains(
            "do not finish each plane", (string)Assert.Single(plan["warnings"]!.AsArray())!);
    }

    /// <summary>
    /// Two rolls hold all four pieces only mixed (500 + 690), and each roll then serves both
    /// planes: the pieces get their places as without the wish, and the plan says why.
    /// </summary>
    [Fact]
    public void Planes_are_planned_together_where_the_rolls_at_hand_do_not_suffice()
    {
        List<OpenPiece> pieces = [.. new[] { ("RA", 500L), ("RA", 500), ("SA", 690), ("SA", 690) }
            .Select((piece, k) => new OpenPiece
            {
                PieceId = $"{k}",
                OrderNumber = "PF-41",
                Mark = $"{k}",
                Plane = piece.Item1,
                Product = "blanket-3-white",
                WidthNm = 48 * ExampleOrders.NmPerInch,
                CutNm = piece.Item2 * ExampleOrders.NmPerInch,
            })];
        List<RollAtHand> rolls = [.. Enumerable.Range(1, 2).Select(k => new RollAtHand
        {
            Product = "blanket-3-white",
            WidthNm = 48 * ExampleOrders.NmPerInch,
            LengthNm = 1194 * ExampleOrders.NmPerInch,
            EndTrimNm = 0,
            StockId = $"R-{k}",
        })];

        var plans = PlanPieces.Plan(
            pieces, new CuttingWish(["PF-41"], OnePlaneAtATime: true), rolls,
            new Dictionary<(string, long), long>(), new PlanLimits { WorkSeconds = 0.1 },
            TestContext.Current.CancellationToken);

        Assert.Empty(plans.Refusals);
        var plan = Assert.Single(plans.Plans);
        Assert.Equal(2, plan.Rolls.Count);
        Assert.StartsWith("Planned one after another, planes found no roll", plan.Explanation);
    }

    [Fact]
    public async Task Another_choice_takes_the_wish_back()
    {
        await using var host = await WithOrdersAsync("PF-41");
        await WishAsync(host, new { onePlaneAtATime = true });
        await host.NextPlannedAsync();

        await WishAsync(host, new { ordersTogether = 1 }, key: "k2");
        await host.NextPlannedAsync();

        var plan = await host.GetAsync("/v1/cutting/plans/PF-41");
        Assert.False((bool)plan["onePlaneAtATime"]!);
        Assert.Equal((2, true), ((int)plan["rolls"]!, (bool)plan["plans"]![0]!["proven"]!));
    }

    [Fact]
    public async Task Planes_apart_and_orders_together_contradict_each_other()
    {
        await using var host = await WithOrdersAsync(Orders);

        var (status, problem) = await WishAsync(
            host, new { onePlaneAtATime = true, ordersTogether = 2 });
        var (wrongKind, kind) = await WishAsync(host, new { onePlaneAtATime = "yes" }, key: "k2");

        Assert.Equal(
            (HttpStatusCode.UnprocessableEntity, HttpStatusCode.UnprocessableEntity),
            (status, wrongKind));
        var violation = Assert.Single(problem["violations"]!.AsArray())!;
        Assert.Equal(
            ("/ordersTogether", "2", "1", "orders"),
            ((string)violation["pointer"]!, violation["value"]!.ToString(),
                violation["bound"]!.ToString(), (string)violation["unit"]!));
        Assert.Equal("/onePlaneAtATime", (string)kind["violations"]![0]!["pointer"]!);
    }

    private static Task<(HttpStatusCode Status, JsonNode Body)> WishAsync(
        CuttingHost host, object wish, string key = "k1") =>
        host.AskAsync(HttpMethod.Post, Path, wish, key);

    /// <summary>Each roll in turn: its planes, and the inches cut for each.</summary>
    private static IEnumerable<string> Cuts(JsonNode plan) =>
        plan["plans"]![0]!["rollList"]!.AsArray().Select(roll => string.Join(
            ", ", roll!["cuts"]!.AsArray().GroupBy(cut => (string)cut!["plane"]!)
                .Select(plane => $"{plane.Key} "
                    + string.Join('+', plane.Select(cut => (double)cut!["cutIn"]!)))));

    private static async Task<CuttingHost> WithOrdersAsync(params string[] numbers)
    {
        var host = await CuttingHost.StartAsync();
        foreach (var number in numbers)
        {
            await host.SendAsync(Order(number));
            await host.NextPlannedAsync();
        }

        return host;
    }

    private static OrderConfirmed Order(string number)
    {
        var order = ExampleOrders.Numbered(number);
        return order with
        {
            Data = order.Data with
            {
                Pieces = [.. order.Data.Pieces.Take(4).Select((piece, k) => piece with
                {
                    Plane = k < 2 ? "RA" : "SA",
                    CutNm = (k < 2 ? 500 : 690) * ExampleOrders.NmPerInch,
                })],
            },
        };
    }
}
