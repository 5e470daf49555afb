using System.Net;
using System.Text.Json.Nodes;
using PostFrame.CuttingWorker.Messages;
using Xunit;

namespace PostFrame.ServicesTests.Cutting;

/// <summary>
/// Worked by hand: three orders of one 396 in piece each take a roll each (1,194 in usable); cut
/// together 3 × 396 = 1,188 in fit one roll, so two rolls of 100 ft are saved.
/// </summary>
public sealed class ShiftTests
{
    private static readonly string[] Orders = ["PF-21", "PF-22", "PF-23"];

    [Fact]
    public async Task The_saving_of_cutting_a_shift_together_is_shown()
    {
        await using var host = await ThreeOrdersAsync();

        var shift = await host.GetAsync("/v1/cutting/shift");

        Assert.Equal(Orders, shift["orders"]!.AsArray().Select(order => (string)order!));
        Assert.Equal(
            (3, 1, 2, 200.0),
            ((int)shift["rollsSeparately"]!, (int)shift["rollsTogether"]!,
                (int)shift["rollsSaved"]!, (double)shift["savedFt"]!));
    }

    [Fact]
    public async Task More_orders_open_at_once_never_take_more_rolls()
    {
        await using var host = await ThreeOrdersAsync();

        var windows = (await host.GetAsync("/v1/cutting/shift"))["windows"]!.AsArray();

        Assert.Equal([1, 2, 3], windows.Select(w => (int)w!["ordersTogether"]!));
        Assert.Equal(
            windows.Select(w => (int)w!["rolls"]!).OrderDescending(),
            windows.Select(w => (int)w!["rolls"]!));
        Assert.Equal(1.0, (double)windows[^1]!["wastePercent"]!, 2);
    }

    [Fact]
    public async Task Pooled_orders_share_a_roll_and_each_is_told_its_own_cuts()
    {
        await using var host = await ThreeOrdersAsync();

        await host.AskAsync(HttpMethod.Post, "/v1/cutting/shift", new { }, key: "k1");
        var planned = new List<CuttingPlanned>();
        while (planned.Count < 3)
        {
            planned.Add(await host.NextPlannedAsync());
        }

        Assert.Equal(Orders, planned.Select(order => order.Data.OrderNumber).Order());
        Assert.All(planned, order => Assert.Equal(1, order.Data.RollCount));
        Assert.Equal([1, 2, 3], planned.SelectMany(order => order.Data.Plans)
            .SelectMany(plan => plan.Rolls).SelectMany(roll => roll.Cuts)
            .Select(cut => cut.Sequence).Order());
    }

    [Fact]
    public async Task An_order_being_planned_anew_is_never_said_not_to_be_there()
    {
        await using var host = await ThreeOrdersAsync();
        await host.AskAsync(HttpMethod.Post, "/v1/cutting/shift", new { }, key: "k1");

        var answers = new List<(HttpStatusCode Status, JsonNode Body)>();
        do
        {
            answers.Add(await host.AskAsync(HttpMethod.Get, "/v1/cutting/plans/PF-21"));
        }
        while (answers[^1].Status == HttpStatusCode.Conflict);

        Assert.All(answers[..^1], answer =>
            Assert.Equal("/problems/state-conflict", (string)answer.Body["type"]!));
        Assert.Equal(
            (HttpStatusCode.OK, 2), (answers[^1].Status, (int)answers[^1].Body["planNumber"]!));
    }

    [Fact]
    public async Task The_plan_of_a_pooled_order_shows_the_cuts_of_the_others_on_its_roll()
    {
        await using var host = await ThreeOrdersAsync();
        await host.AskAsync(
            HttpMethod.Post, "/v1/cutting/shift", new { orders = Orders[..2] }, key: "k1");
        await host.NextPlannedAsync();
        await host.NextPlannedAsync();

        var plan = await host.GetAsync("/v1/cutting/plans/PF-21");

        var roll = Assert.Single(plan["plans"]![0]!["rollList"]!.AsArray())!;
        Assert.Equal(
            Orders[..2], roll["cuts"]!.AsArray().Select(c => (string)c!["orderNumber"]!).Order());
        Assert.Equal(1, (int)plan["pieces"]!);
    }

    [Fact]
    public async Task Pooled_orders_are_finished_in_the_order_they_are_needed()
    {
        await using var host = await CuttingHost.StartAsync();
        foreach (var (number, day) in new[] { ("PF-31", 9), ("PF-32", 3), ("PF-33", 6) })
        {
            var order = ExampleOrders.Numbered(number);
            await host.SendAsync(order with
            {
                Data = order.Data with
                {
                    NeededBy = new DateOnly(2026, 12, day),
                    Pieces = [.. order.Data.Pieces.Take(3)],
                },
            });
            await host.NextPlannedAsync();
        }

        await host.AskAsync(HttpMethod.Post, "/v1/cutting/shift", new { }, key: "k1");
        var planned = new List<CuttingPlanned>
        {
            await host.NextPlannedAsync(), await host.NextPlannedAsync(),
            await host.NextPlannedAsync(),
        };

        Assert.Equal(
            ["PF-32", "PF-33", "PF-31"],
            planned.OrderBy(order => order.Data.Plans.Max(plan => plan.Rolls.Max(r => r.Number)))
                .Select(order => order.Data.OrderNumber));
    }

    [Fact]
    public async Task An_order_that_is_begun_or_unknown_is_not_pooled()
    {
        await using var host = await ThreeOrdersAsync();
        var cut = (await host.GetAsync("/v1/cutting/plans/PF-21"))
            ["plans"]![0]!["rollList"]![0]!["cuts"]![0]!["pieceId"]!;
        await host.AskAsync(HttpMethod.Post, $"/v1/cutting/pieces/{cut}/cut");

        var (status, problem) = await host.AskAsync(
            HttpMethod.Post, "/v1/cutting/shift",
            new { orders = new[] { "PF-21", "PF-22", "PF-99" } }, key: "k1");

        Assert.Equal(HttpStatusCode.Conflict, status);
        Assert.Contains("PF-21, PF-99", (string)problem["detail"]!);
    }

    /// <summary>By hand: 3, 2 and 1 roll of 100 ft for 33 ft each.</summary>
    [Theory]
    [InlineData(1, 3)]
    [InlineData(2, 2)]
    [InlineData(3, 1)]
    public async Task The_choice_that_was_shown_is_the_plan_that_is_made(int together, int rolls)
    {
        await using var host = await ThreeOrdersAsync();
        var shown = (await host.GetAsync("/v1/cutting/shift"))["windows"]!.AsArray()
            .Single(window => (int)window!["ordersTogether"]! == together)!;
        Assert.Equal(
            (rolls, rolls * 100.0, (rolls - 1) * 100.0),
            ((int)shown["rolls"]!, (double)shown["boughtFt"]!,
                (double)shown["moreThanLeastFt"]!));

        await host.AskAsync(HttpMethod.Post, "/v1/cutting/shift", new { }, key: "k0");
        await PlannedAsync(host);
        await host.AskAsync(
            HttpMethod.Post, "/v1/cutting/shift", new { ordersTogether = together }, key: "k1");
        await PlannedAsync(host);

        var used = new HashSet<long>();
        foreach (var order in Orders)
        {
            var plan = await host.GetAsync("/v1/cutting/plans/" + order);
            used.UnionWith(plan["plans"]![0]!["rollList"]!.AsArray()
                .Select(roll => (long)roll!["rollId"]!));
        }

        Assert.Equal(rolls, used.Count);
    }

    [Fact]
    public async Task Who_shared_a_roll_with_an_order_taken_out_is_planned_anew_without_it()
    {
        await using var host = await ThreeOrdersAsync();
        await host.AskAsync(HttpMethod.Post, "/v1/cutting/shift", new { }, key: "k1");
        await PlannedAsync(host);

        await host.AskAsync(
            HttpMethod.Post, "/v1/cutting/shift", new { orders = Orders[..2] }, key: "k2");
        await PlannedAsync(host);

        var left = await host.GetAsync("/v1/cutting/plans/PF-23");
        var roll = Assert.Single(left["plans"]![0]!["rollList"]!.AsArray())!;
        Assert.Single(roll["cuts"]!.AsArray());
        Assert.Equal(1194.0 - 396, (double)roll["leftOverIn"]!);
    }

    private static async Task PlannedAsync(CuttingHost host)
    {
        foreach (var _ in Orders)
        {
            await host.NextPlannedAsync();
        }
    }

    private static async Task<CuttingHost> ThreeOrdersAsync()
    {
        var host = await CuttingHost.StartAsync();
        foreach (var number in Orders)
        {
            var order = ExampleOrders.Numbered(number);
            await host.SendAsync(order with
            {
                Data = order.Data with { Pieces = [.. order.Data.Pieces.Take(1)] },
            });
        }

        foreach (var _ in Orders)
        {
            await host.NextPlannedAsync();
        }

        return host;
    }
}
