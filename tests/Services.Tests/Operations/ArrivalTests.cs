using PostFrame.Operations.Pipeline;
using Xunit;
using static PostFrame.ServicesTests.Operations.PipelineMessages;

namespace PostFrame.ServicesTests.Operations;

/// <summary>
/// The bus delivers at least once and in any order; the end must not depend on it. Outside check:
/// the end states follow from the contract's words (newest revision counts, a service's last word
/// counts), written out by hand below.
/// </summary>
public sealed class ArrivalTests
{
    [Fact]
    public async Task Every_order_of_arrival_ends_in_the_same_row()
    {
        await using var host = await OperationsHost.StartAsync();
        var rows = new HashSet<OrderRow>();

        foreach (var (order, arrivals) in Permutations(Revised("X").Count)
                     .Select((arrivals, number) => ($"PF-{number}", arrivals)))
        {
            var messages = Revised(order);
            await Task.WhenAll(arrivals.Select(index => host.TakeAsync(messages[index])));
            rows.Add(host.Row(order)! with { OrderNumber = "", Change = 0 });
        }

        var row = Assert.Single(rows);
        Assert.Equal((2, "labelled", 9, 46), (row.Revision, row.State, row.Rolls, row.Labels));
        Assert.Equal("[]", row.Reasons);
    }

    /// <summary>By plan number, though the clock that stamps them runs backwards.</summary>
    [Fact]
    public async Task Every_order_of_arrival_of_two_plans_ends_with_the_newer()
    {
        await using var host = await OperationsHost.StartAsync();
        var rows = new HashSet<OrderRow>();
        foreach (var (order, arrivals) in Permutations(6)
                     .Select((arrivals, number) => ($"PF-{number}", arrivals)))
        {
            Told[] messages =
            [
                Told.By(ConfirmedOf(order)), Told.By(PlannedOf(order, minute: 9)),
                Told.By(PrintedOf(order, minute: 9)),
                Told.By(FailedOf(order, plan: 2, minute: 8)),
                Told.By(PlannedOf(order, minute: 7, rolls: 9, plan: 2)),
                Told.By(PrintedOf(order, minute: 7, plan: 2)),
            ];
            await Task.WhenAll(arrivals.Select(index => host.TakeAsync(messages[index])));
            rows.Add(host.Row(order)! with { OrderNumber = "", Change = 0 });
        }

        var row = Assert.Single(rows);
        Assert.Equal(("labelled", 9, "[]"), (row.State, row.Rolls, row.Reasons));
    }

    [Fact]
    public async Task An_order_whose_labels_failed_is_parked_with_why_until_they_are_printed()
    {
        await using var host = await OperationsHost.StartAsync();
        await host.TakeAsync(Told.By(ConfirmedOf("PF-1")));
        await host.TakeAsync(Told.By(FailedOf("PF-1")));
        await host.TakeAsync(Told.By(PlannedOf("PF-1")));
        Assert.Equal("parked", host.Row("PF-1")!.State);
        Assert.Contains("3 times", host.Row("PF-1")!.Reasons);

        await host.TakeAsync(Told.By(PrintedOf("PF-1")));
        Assert.Equal("labelled", host.Row("PF-1")!.State);
    }

    [Fact]
    public async Task An_order_planned_anew_is_not_finished_until_its_labels_follow()
    {
        await using var host = await OperationsHost.StartAsync();
        await host.TakeAsync(Told.By(ConfirmedOf("PF-1")));
        await host.TakeAsync(Told.By(PlannedOf("PF-1", plan: 2)));
        await host.TakeAsync(Told.By(PrintedOf("PF-1")));
        Assert.Equal("planned", host.Row("PF-1")!.State);

        await host.TakeAsync(Told.By(PrintedOf("PF-1", plan: 2)));
        Assert.Equal("labelled", host.Row("PF-1")!.State);
    }

    [Fact]
    public async Task A_later_plan_of_the_same_revision_takes_an_order_out_of_the_park()
    {
        await using var host = await OperationsHost.StartAsync();
        Told[] messages =
        [
            Told.By(ConfirmedOf("PF-1")), Told.By(RejectedOf("PF-1", minute: 1)),
            Told.By(PlannedOf("PF-1", minute: 2)), Told.By(RejectedOf("PF-1", minute: 1)),
        ];

        foreach (var message in messages)
        {
            await host.TakeAsync(message);
        }

        Assert.Equal(("planned", 8), (host.Row("PF-1")!.State, host.Row("PF-1")!.Rolls));
    }

    [Fact]
    public async Task A_rejected_order_is_parked_with_every_reason()
    {
        await using var host = await OperationsHost.StartAsync();

        await host.TakeAsync(Told.By(RejectedOf("PF-1002")));
        await host.TakeAsync(Told.By(ConfirmedOf("PF-1002")));

        var order = (await host.GetAsync("/v1/pipeline"))["orders"]![0]!;
        Assert.Equal("parked", (string?)order["state"]);
        Assert.Equal(
            Rejected.Data.Reasons.Select(reason => reason.Text),
            order["reasons"]!.AsArray().Select(reason => (string)reason!));
    }

    [Fact]
    public async Task Each_message_three_times_changes_no_more_than_once()
    {
        await using var host = await OperationsHost.StartAsync();
        var messages = Revised("PF-1");
        foreach (var message in messages)
        {
            await host.TakeAsync(message);
        }

        var (row, changes) = (host.Row("PF-1"), host.Changes);
        foreach (var message in messages.Concat(messages))
        {
            await host.TakeAsync(message);
        }

        Assert.Equal((row, changes), (host.Row("PF-1"), host.Changes));
    }

    [Fact]
    public async Task What_is_announced_again_under_a_new_id_is_no_change()
    {
        await using var host = await OperationsHost.StartAsync();
        await host.TakeAsync(Told.By(ConfirmedOf("PF-1")));
        await host.TakeAsync(Told.By(PlannedOf("PF-1")));
        var changes = host.Changes;

        await host.TakeAsync(Told.By(ConfirmedOf("PF-1")));
        await host.TakeAsync(Told.By(PlannedOf("PF-1")));

        Assert.Equal(changes, host.Changes);
    }

    [Fact]
    public async Task A_plan_without_its_order_is_not_shown_yet()
    {
        await using var host = await OperationsHost.StartAsync();

        await host.TakeAsync(Told.By(PlannedOf("PF-1")));
        await host.TakeAsync(Told.By(PrintedOf("PF-1")));

        Assert.Empty((await host.GetAsync("/v1/pipeline"))["orders"]!.AsArray());
    }

    [Fact]
    public void A_message_without_order_number_or_revision_is_refused()
    {
        Assert.Throws<InvalidOperationException>(() => Told.By(ConfirmedOf(" ")));
        Assert.Throws<InvalidOperationException>(() => Told.By(ConfirmedOf("PF-1", revision: 0)));
    }

    /// <summary>Revision 1 was planned; revision 2 was refused at first and then went
    /// through.</summary>
    private static List<Told> Revised(string order) =>
    [
        Told.By(ConfirmedOf(order)),
        Told.By(PlannedOf(order)),
        Told.By(ConfirmedOf(order, revision: 2, minute: 10)),
        Told.By(RejectedOf(order, revision: 2, minute: 10)),
        Told.By(PlannedOf(order, revision: 2, minute: 11, rolls: 9)),
        Told.By(PrintedOf(order, revision: 2, minute: 10)),
    ];

    private static IEnumerable<int[]> Permutations(int count) => count == 0
        ? [[]]
        : Permutations(count - 1).SelectMany(shorter => Enumerable.Range(0, count).Select(
            place => shorter.Take(place).Append(count - 1).Concat(shorter.Skip(place)).ToArray()));
}
