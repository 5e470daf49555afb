using PostFrame.CuttingWorker.Messages;
using PostFrame.ServicesTests.Messaging;
using Xunit;

namespace PostFrame.ServicesTests.Cutting;

/// <summary>Whoever hears of two decisions on an order knows which is the newer.</summary>
public sealed class PlanNumberTests
{
    [Fact]
    public async Task A_plan_made_anew_has_the_next_number_and_the_same_pieces()
    {
        await using var host = await CuttingHost.StartAsync();
        var (first, second) = await PlannedTwiceAsync(host);

        Assert.Equal((1, 2), (first.Data.PlanNumber, second.Data.PlanNumber));
        Assert.Equal(first.Subject, second.Subject);
        Assert.Equal(PiecesOf(first), PiecesOf(second));
    }

    [Fact]
    public async Task A_plan_said_again_has_the_number_it_had()
    {
        await using var host = await CuttingHost.StartAsync();
        var (_, second) = await PlannedTwiceAsync(host);
        await host.SendAsync(ExampleOrders.W1);

        Assert.Equal(second.Data.PlanNumber, (await host.NextPlannedAsync()).Data.PlanNumber);
    }

    [Fact]
    public async Task After_a_restart_a_plan_made_anew_is_said_again_and_a_first_one_is_not()
    {
        using var folder = new TemporaryFolder();
        await using (var before = await CuttingHost.StartAsync(folder.Path))
        {
            await PlannedTwiceAsync(before);
            await before.SendAsync(ExampleOrders.Numbered("PF-2"));
            await before.NextPlannedAsync();
        }

        await using var after = await CuttingHost.StartAsync(folder.Path);
        var said = await after.NextPlannedAsync();
        Assert.Equal(("PF-1001", 2), (said.Data.OrderNumber, said.Data.PlanNumber));
        Assert.Equal(0, after.PlannedWaiting);
    }

    [Theory]
    [InlineData("doubled", "stands for 2 pieces")]
    [InlineData("empty", "more than 0")]
    [InlineData("taken", "used before for another piece")]
    public async Task An_order_that_breaks_the_contract_is_refused_with_the_reason(
        string wrong, string reason)
    {
        await using var host = await CuttingHost.StartAsync();
        await host.SendAsync(ExampleOrders.W1);
        await host.NextPlannedAsync();
        var order = ExampleOrders.Numbered("PF-2");
        var pieces = order.Data.Pieces;
        IReadOnlyList<OrderConfirmed.Piece> changed = wrong switch
        {
            "doubled" => [.. pieces, pieces[0]],
            "empty" => [.. pieces.Skip(1), pieces[0] with { CutNm = 0 }],
            _ => [.. pieces.Skip(1), ExampleOrders.W1.Data.Pieces[0]],
        };
        await host.SendAsync(order with { Data = order.Data with { Pieces = changed } });

        var refused = await host.NextRejectedAsync();
        Assert.Equal(("PF-2/1", null), (refused.Subject, refused.Data.PlanNumber));
        Assert.Contains(reason, Assert.Single(refused.Data.Reasons).Text);
    }

    private static async Task<(CuttingPlanned First, CuttingPlanned Second)> PlannedTwiceAsync(
        CuttingHost host)
    {
        await host.SendAsync(ExampleOrders.W1);
        var first = await host.NextPlannedAsync();
        var plan = await host.GetAsync("/v1/cutting/plans/PF-1001");
        var roll = plan["plans"]![0]!["rollList"]![0]!;
        await host.AskAsync(
            HttpMethod.Post, $"/v1/cutting/rolls/{roll["rollId"]}/short",
            new { measuredLength = "50 ft" }, key: "k1");
        return (first, await host.NextPlannedAsync());
    }

    private static IEnumerable<string> PiecesOf(CuttingPlanned planned) =>
        planned.Data.Plans.SelectMany(plan => plan.Rolls).SelectMany(roll => roll.Cuts)
            .Select(cut => cut.PieceId).Order();
}
