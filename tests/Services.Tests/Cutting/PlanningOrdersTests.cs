using System.Net;
using PostFrame.CuttingWorker.Messages;
using PostFrame.CuttingWorker.Queue;
using PostFrame.Messaging;
using Xunit;

namespace PostFrame.ServicesTests.Cutting;

/// <summary>
/// Outside check: the building W1 worked by hand (take-off reference, sections 4.5 and 7): 46
/// pieces, 9,096 in, rolls of 100 ft with 6 in trim give 1,194 in, 9,096 / 1,194 = 7.62, so no plan
/// can do with fewer than 8 rolls, and the hand-made plan uses 8.
/// </summary>
public sealed class PlanningOrdersTests
{
    [Fact]
    public async Task The_worked_building_is_planned_on_the_least_number_of_rolls()
    {
        await using var host = await CuttingHost.StartAsync();

        await host.SendAsync(ExampleOrders.W1);
        var planned = await host.NextPlannedAsync();

        Assert.Equal((46, 8), (planned.Data.PieceCount, planned.Data.RollCount));
        var plan = Assert.Single(planned.Data.Plans);
        Assert.Equal((8, true), (plan.LowerBoundRolls, plan.Proven));
    }

    [Fact]
    public async Task Every_piece_is_cut_once_and_no_roll_gives_more_than_it_has()
    {
        await using var host = await CuttingHost.StartAsync();

        await host.SendAsync(ExampleOrders.W1);
        var rolls = (await host.NextPlannedAsync()).Data.Plans.SelectMany(p => p.Rolls).ToList();

        Assert.Equal(
            ExampleOrders.W1.Data.Pieces.Select(piece => (piece.PieceId, piece.CutNm)).Order(),
            rolls.SelectMany(roll => roll.Cuts).Select(cut => (cut.PieceId, cut.CutNm)).Order());
        Assert.All(rolls, roll => Assert.Equal(
            1194 * ExampleOrders.NmPerInch, roll.Cuts.Sum(cut => cut.CutNm) + roll.LeftOverNm));
        Assert.All(rolls, roll => Assert.Equal(
            roll.LeftOverNm >= 72 * ExampleOrders.NmPerInch, roll.LeftOver == "offcut"));
    }

    [Fact]
    public async Task The_same_delivery_three_times_makes_one_plan_and_one_announcement()
    {
        await using var host = await CuttingHost.StartAsync();
        var id = Guid.NewGuid();

        await host.SendAsync(ExampleOrders.W1, id);
        await host.SendAsync(ExampleOrders.W1, id);
        await host.SendAsync(ExampleOrders.W1, id);
        await host.SendAsync(ExampleOrders.Numbered("PF-2"));
        var orders = new[] { await host.NextPlannedAsync(), await host.NextPlannedAsync() }
            .Select(planned => planned.Data.OrderNumber).Order();

        Assert.Equal(["PF-1001", "PF-2"], orders);
        Assert.Equal(0, host.PlannedWaiting);
    }

    [Fact]
    public async Task A_revision_announced_again_is_answered_with_the_plan_it_has()
    {
        await using var host = await CuttingHost.StartAsync();
        await host.SendAsync(ExampleOrders.W1);
        var first = await host.NextPlannedAsync();

        await host.SendAsync(ExampleOrders.W1 with { Id = Guid.NewGuid() });
        var again = await host.NextPlannedAsync();

        Assert.NotEqual(first.Id, again.Id);
        Assert.Equal(first.Subject, again.Subject);
        Assert.Equal(Places(first), Places(again));
    }

    [Fact]
    public async Task An_older_revision_that_comes_late_changes_nothing()
    {
        await using var host = await CuttingHost.StartAsync();
        var first = ExampleOrders.W1;
        var second = first.Revised(order => order with { Pieces = [.. order.Pieces.Skip(1)] });

        await host.SendAsync(second);
        await host.NextPlannedAsync();
        await host.SendAsync(first);
        await host.SendAsync(ExampleOrders.Numbered("PF-2"));

        Assert.Equal("PF-2/1", (await host.NextPlannedAsync()).Subject);
        Assert.Equal(2, (int)(await host.GetAsync("/v1/cutting/plans/PF-1001"))["revision"]!);
    }

    [Fact]
    public async Task A_newer_revision_replaces_the_plan_of_the_older()
    {
        await using var host = await CuttingHost.StartAsync();
        await host.SendAsync(ExampleOrders.W1);
        await host.NextPlannedAsync();

        await host.SendAsync(ExampleOrders.W1.Revised(
            order => order with { Pieces = [.. order.Pieces.Take(10)] }));
        var planned = await host.NextPlannedAsync();

        Assert.Equal(("PF-1001/2", 10, 4), (
            planned.Subject, planned.Data.PieceCount, planned.Data.RollCount));
    }

    [Fact]
    public async Task Every_piece_longer_than_any_roll_is_named_and_the_order_refused()
    {
        await using var host = await CuttingHost.StartAsync();
        var tooLong = ExampleOrders.W1.Data.Pieces.Select((piece, index) => index is 3 or 7
            ? piece with { CutNm = 1_195 * ExampleOrders.NmPerInch } : piece);

        await host.SendAsync(ExampleOrders.W1 with
        {
            Data = ExampleOrders.W1.Data with { Pieces = [.. tooLong] },
        });
        var reasons = (await host.NextRejectedAsync()).Data.Reasons;

        Assert.Equal(["R-04", "R-08"], reasons.Select(reason => reason.Mark));
        Assert.All(reasons, r => Assert.Equal("piece-longer-than-any-roll", r.Code));
        Assert.All(reasons, r => Assert.EndsWith(
            "3 in faced glass-fibre blanket, white, 48 in wide, gives 99 ft 6 in.", r.Text));
    }

    [Fact]
    public async Task A_product_without_a_roll_is_a_reason_to_refuse()
    {
        await using var host = await CuttingHost.StartAsync();

        await host.SendAsync(ExampleOrders.W1 with
        {
            Data = ExampleOrders.W1.Data with { Stock = [] },
        });

        Assert.Equal(
            "no-roll-for-product",
            Assert.Single((await host.NextRejectedAsync()).Data.Reasons).Code);
    }

    [Fact]
    public async Task The_queue_shows_the_order_that_has_waited_longest_first()
    {
        await using var host = await CuttingHost.StartAsync();
        await host.SendAsync(ExampleOrders.Numbered("PF-9", minutesLater: 5));
        await host.SendAsync(ExampleOrders.Numbered("PF-8", minutesLater: 1));
        await host.NextPlannedAsync();
        await host.NextPlannedAsync();

        var orders = (await host.GetAsync("/v1/cutting/queue"))["orders"]!.AsArray();

        Assert.Equal(["PF-8", "PF-9"], orders.Select(order => (string)order!["orderNumber"]!));
        Assert.All(orders, order => Assert.Equal(
            (46, 8, "planned"),
            ((int)order!["pieces"]!, (int)order["rolls"]!, (string)order["state"]!)));
    }

    [Fact]
    public async Task The_queue_comes_in_pages_that_together_are_the_whole_queue()
    {
        await using var host = await CuttingHost.StartAsync();
        string[] numbers = ["PF-1", "PF-2", "PF-3"];
        foreach (var number in numbers)
        {
            await host.SendAsync(ExampleOrders.Numbered(number));
            await host.NextPlannedAsync();
        }

        var (seen, next) = (new List<string>(), (string?)"");
        while (next is not null)
        {
            var page = await host.GetAsync(
                "/v1/cutting/queue?limit=2" + (next.Length > 0 ? "&after=" + next : ""));
            seen.AddRange(page["orders"]!.AsArray().Select(o => (string)o!["orderNumber"]!));
            next = (string?)page["next"];
            Assert.Equal(next is not null, (bool)page["hasMore"]!);
        }

        Assert.Equal(numbers, seen);
    }

    [Theory]
    [InlineData("/v1/cutting/queue?limit=0", "/limit")]
    [InlineData("/v1/cutting/queue?limit=x&after=y&sort=z", "/after /limit /sort")]
    [InlineData("/v1/cutting/queue?limit=1&limit=2", "/limit")]
    [InlineData("/v1/cutting/queue?after=", "/after")]
    [InlineData("/v1/cutting/stock?lot=L-1", "/lot")]
    [InlineData("/v1/cutting/shift?orders=PF-1", "/orders")]
    public async Task A_query_that_means_nothing_is_refused_member_by_member(
        string path, string pointers)
    {
        await using var host = await CuttingHost.StartAsync();

        var (status, problem) = await host.AskAsync(HttpMethod.Get, path);

        Assert.Equal(HttpStatusCode.UnprocessableEntity, status);
        Assert.Equal(
            pointers.Split(' '),
            problem["violations"]!.AsArray().Select(v => (string)v!["pointer"]!).Order());
    }

    [Fact]
    public async Task The_plan_shows_where_every_inch_of_its_rolls_goes()
    {
        await using var host = await CuttingHost.StartAsync();
        await host.SendAsync(ExampleOrders.W1);
        await host.NextPlannedAsync();

        var plan = (await host.GetAsync("/v1/cutting/plans/PF-1001"))["plans"]![0]!;
        var material = plan["material"]!;

        Assert.Equal(0, (int)plan["gapRolls"]!);
        Assert.Equal((9600, 9096), ((double)material["rollIn"]!, (double)material["cutIn"]!));
        Assert.Equal(504, (double)material["trimLossIn"]! + (double)material["offcutIn"]!);
        var alike = plan["rollList"]!.AsArray().GroupBy(roll => string.Join(
            ' ', roll!["cuts"]!.AsArray().Select(cut => (double)cut!["cutIn"]!).Order())).ToList();
        Assert.Equal(alike.Count, (int)plan["patterns"]!);
        Assert.InRange(alike.Count, 1, 7);
    }

    /// <summary>1,200 in are 30,480 mm; 3 in are 76.2 mm.</summary>
    [Theory]
    [InlineData(1_219_200_000, "3 in faced glass-fibre blanket, white", "48 in", "100 ft 0 in")]
    [InlineData(1_200_000_000, "76 mm faced glass-fibre blanket, white", "1200 mm", "30480 mm")]
    public async Task A_plan_names_product_and_rolls_as_people_do_in_the_units_of_the_width(
        long widthNm, string title, string width, string length)
    {
        await using var host = await CuttingHost.StartAsync();
        await host.SendAsync(ExampleOrders.W1.Revised(data => data with
        {
            Pieces = [.. data.Pieces.Select(piece => piece with { WidthNm = widthNm })],
            Stock = [.. data.Stock.Select(roll => roll with { WidthNm = widthNm })],
        }));
        await host.NextPlannedAsync();
        var plan = (await host.GetAsync("/v1/cutting/plans/PF-1001"))["plans"]![0]!;

        Assert.Equal((title, width), ((string)plan["productTitle"]!, (string)plan["widthText"]!));
        Assert.Equal(length, (string)plan["rollList"]![0]!["rollLengthText"]!);
    }

    [Fact]
    public async Task An_order_nobody_sent_has_no_plan_and_the_answer_says_so()
    {
        await using var host = await CuttingHost.StartAsync();

        var (status, problem) = await host.AskAsync(HttpMethod.Get, "/v1/cutting/plans/PF-0");

        Assert.Equal(HttpStatusCode.NotFound, status);
        Assert.Equal("/problems/plan-not-found", (string)problem["type"]!);
    }

    [Fact]
    public async Task What_was_planned_is_there_after_a_restart()
    {
        var folder = Directory.CreateTempSubdirectory("cutting-restart");
        await using (var host = await CuttingHost.StartAsync(folder.FullName))
        {
            await host.SendAsync(ExampleOrders.W1);
            await host.NextPlannedAsync();
        }

        await using (var host = await CuttingHost.StartAsync(folder.FullName))
        {
            var plan = await host.GetAsync("/v1/cutting/plans/PF-1001");
            Assert.Equal((46, 8), ((int)plan["pieces"]!, (int)plan["rolls"]!));
        }

        folder.Delete(recursive: true);
    }

    [Fact]
    public async Task An_order_taken_before_a_crash_is_planned_after_it()
    {
        var folder = Directory.CreateTempSubdirectory("cutting-crash");
        using (var store = SqliteStore.Open(
            folder.FullName, "cutting", typeof(OrderConfirmed).Assembly, TimeProvider.System))
        {
            await store.WriteAsync(
                transaction => OrderStore.Take(transaction, ExampleOrders.W1.Data),
                TestContext.Current.CancellationToken);
        }

        await using (var host = await CuttingHost.StartAsync(folder.FullName))
        {
            var plan = await host.PlannedAsync("PF-1001");
            Assert.Equal((46, 8), ((int)plan["pieces"]!, (int)plan["rolls"]!));
        }

        folder.Delete(recursive: true);
    }

    private static IEnumerable<(int, int, string)> Places(CuttingPlanned planned) =>
        from plan in planned.Data.Plans
        from roll in plan.Rolls
        from cut in roll.Cuts
        select (roll.Number, cut.Sequence, cut.PieceId);
}
