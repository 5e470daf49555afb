using MassTransit;
using PostFrame.OrdersApi.Messages;
using PostFrame.OrdersApi.Orders;
using PostFrame.ServicesTests.Messaging;
using Xunit;

namespace PostFrame.ServicesTests.Orders;

public sealed class ProgressRules : IAsyncLifetime
{
    private static readonly DateTimeOffset At = new(2026, 11, 25, 14, 1, 0, TimeSpan.Zero);
    private static readonly ReconcilerOptions Usual = new();
    private readonly TemporaryFolder _folder = new();
    private OrdersHost _host = null!;

    public async ValueTask InitializeAsync()
    {
        _host = await OrdersHost.StartAsync(_folder);
        await _host.PostAsync(OrderRequests.Shed("PF-1"), "k");
    }

    public async ValueTask DisposeAsync()
    {
        await _host.DisposeAsync();
        _folder.Dispose();
    }

    [Theory]
    [InlineData("planned", "labelled")]
    [InlineData("labelled", "planned")]
    [InlineData("planned", "planned", "labelled", "labelled", "planned")]
    [InlineData("rejected", "planned", "labelled")]
    [InlineData("planned", "rejected", "labelled")]
    [InlineData("labelled", "rejected", "planned")]
    [InlineData("rejected", "labelled", "rejected", "planned")]
    public async Task In_whatever_order_and_number_news_comes_the_order_ends_labelled(
        params string[] news)
    {
        foreach (var item in news)
        {
            await SayAsync(item, Guid.NewGuid());
        }

        await SettledAsync();
        var order = await _host.UntilAsync("PF-1", "labelled");
        Assert.Equal(3, order["rolls"]!.GetValue<int>());
        Assert.NotNull(order["links"]!["labels"]);
        Assert.Empty(order["parkReasons"]!.AsArray());
    }

    public static TheoryData<string> Permutations => new(
        Permuted(["planned1", "labelled1", "failed2", "planned2", "labelled2"]));

    [Theory]
    [MemberData(nameof(Permutations))]
    public async Task In_whatever_order_news_of_two_plans_comes_the_newer_holds(string news)
    {
        foreach (var item in news.Split(' '))
        {
            await SayAsync(item[..^1], Guid.NewGuid(), plan: item[^1] - '0');
        }

        await SettledAsync();
        var order = await _host.UntilAsync("PF-1", "labelled");
        Assert.Equal(
            (2, 2, 4),
            ((int)order["planNumber"]!, (int)order["labelsPlanNumber"]!, (int)order["rolls"]!));
        Assert.Empty(order["parkReasons"]!.AsArray());
    }

    [Theory]
    [InlineData("planned1 labelled1 planned2")]
    [InlineData("planned2 labelled1 planned1")]
    [InlineData("labelled1 planned2 planned1")]
    public async Task An_order_planned_anew_waits_for_its_labels_again(string news)
    {
        foreach (var item in news.Split(' '))
        {
            await SayAsync(item[..^1], Guid.NewGuid(), plan: item[^1] - '0');
        }

        await SettledAsync();
        var order = await _host.UntilAsync("PF-1", "planned");
        Assert.Equal(
            (2, 1), ((int)order["planNumber"]!, (int)order["labelsPlanNumber"]!));
        Assert.Equal(1, await RoundAsync(Usual.Grace + TimeSpan.FromSeconds(1)));
    }

    [Theory]
    [InlineData("failed1 planned1")]
    [InlineData("planned1 failed1")]
    [InlineData("planned1 labelled1 failed2 planned2 planned1")]
    public async Task Labels_that_cannot_be_drawn_park_the_order_with_the_reason(string news)
    {
        foreach (var item in news.Split(' '))
        {
            await SayAsync(item[..^1], Guid.NewGuid(), plan: item[^1] - '0');
        }

        await SettledAsync();
        var parked = await _host.UntilAsync("PF-1", "parked");
        Assert.Equal("Not drawn.", (string)parked["parkReasons"]![0]!["text"]!);
        Assert.Single(parked["parkReasons"]!.AsArray());

        Assert.Equal(202, (await _host.PostEmptyAsync("/v1/orders/PF-1/retry")).Status);
        await _host.UntilAsync("PF-1", "planned");
        await SayAsync("labelled", Guid.NewGuid(), plan: 2);
        await _host.UntilAsync("PF-1", "labelled");
    }

    [Theory]
    [InlineData("planned1 labelled1 rejected2")]
    [InlineData("rejected2 labelled1 planned1")]
    [InlineData("labelled1 rejected2 planned1")]
    public async Task An_order_that_cannot_be_planned_anew_is_parked_though_labelled(string news)
    {
        foreach (var item in news.Split(' '))
        {
            await SayAsync(item[..^1], Guid.NewGuid(), plan: item[^1] - '0');
        }

        await SettledAsync();
        var parked = await _host.UntilAsync("PF-1", "parked");
        Assert.Equal("Too long.", (string)parked["parkReasons"]![0]!["text"]!);
        Assert.Null(parked["rolls"]);
    }

    [Fact]
    public async Task News_that_comes_three_times_makes_one_entry_in_the_history()
    {
        var id = Guid.NewGuid();
        for (var n = 0; n < 3; n++)
        {
            await SayAsync("planned", id);
        }

        await SettledAsync();
        var order = await _host.UntilAsync("PF-1", "planned");
        Assert.Equal(
            ["accepted", "planned"],
            order["history"]!.AsArray().Select(entry => entry!["event"]!.GetValue<string>()));
    }

    [Fact]
    public async Task News_of_another_revision_or_order_changes_nothing()
    {
        await SayAsync("planned", Guid.NewGuid(), revision: 2);
        await SayAsync("labelled", Guid.NewGuid(), orderNumber: "PF-9");
        await SettledAsync();
        await _host.UntilAsync("PF-1", "confirmed");
        Assert.Equal(404, (await _host.GetAsync("/v1/orders/PF-9")).Status);
    }

    [Fact]
    public async Task A_refused_order_is_parked_with_its_reasons_and_can_be_taken_up_again()
    {
        await _host.NextAnnouncedAsync();
        await SayAsync("rejected", Guid.NewGuid());
        var parked = await _host.UntilAsync("PF-1", "parked");
        Assert.Equal("Too long.", parked["parkReasons"]![0]!["text"]!.GetValue<string>());

        Assert.Equal(202, (await _host.PostEmptyAsync("/v1/orders/PF-1/retry")).Status);
        await _host.UntilAsync("PF-1", "confirmed");
        var again = await _host.NextAnnouncedAsync();
        Assert.Equal("PF-1/1", again.Subject);
    }

    [Fact]
    public async Task Only_a_parked_order_can_be_taken_up_again()
    {
        var waiting = await _host.PostEmptyAsync("/v1/orders/PF-1/retry");
        Assert.Equal((409, "/problems/state-conflict"), (waiting.Status, waiting.Type));
        var unknown = await _host.PostEmptyAsync("/v1/orders/PF-9/retry");
        Assert.Equal((404, "/problems/order-not-found"), (unknown.Status, unknown.Type));
    }

    [Fact]
    public async Task An_unanswered_order_is_announced_again_under_a_new_id_and_the_same_subject()
    {
        var first = await _host.NextAnnouncedAsync();
        Assert.Equal(0, await RoundAsync(Usual.Grace - TimeSpan.FromSeconds(1)));
        Assert.Equal(1, await RoundAsync(TimeSpan.FromSeconds(2)));
        var second = await _host.NextAnnouncedAsync();
        Assert.NotEqual(first.Id, second.Id);
        Assert.Equal(first.Subject, second.Subject);
        Assert.Equal(first.Data.Pieces, second.Data.Pieces);
    }

    [Fact]
    public async Task What_is_never_answered_is_parked_in_sight_and_not_announced_for_ever()
    {
        for (var n = 0; n < Usual.MostAnnouncements; n++)
        {
            await RoundAsync(Usual.LongestGrace + TimeSpan.FromSeconds(1));
        }

        var parked = await _host.UntilAsync("PF-1", "parked");
        Assert.Equal("no-plan", parked["parkReasons"]![0]!["code"]!.GetValue<string>());
        Assert.Equal(0, await RoundAsync(TimeSpan.FromDays(1)));
    }

    [Fact]
    public async Task After_a_start_every_waiting_order_is_announced_and_no_finished_one()
    {
        await _host.PostAsync(OrderRequests.Shed("PF-2"), "k2");
        await SayAsync("planned", Guid.NewGuid());
        await SayAsync("labelled", Guid.NewGuid());
        await _host.UntilAsync("PF-1", "labelled");
        // What is still in the outbox at the stop is sent after the start, finished or not.
        await UntilAsync(view => view.Single<long>("SELECT count(*) FROM outbox") == 0);
        await _host.DisposeAsync();

        _host = await OrdersHost.StartAsync(_folder);
        var announced = await _host.NextAnnouncedAsync();
        Assert.Equal("PF-2/1", announced.Subject);
        Assert.Equal(0, await RoundAsync(TimeSpan.Zero));
    }

    private async Task<int> RoundAsync(TimeSpan later)
    {
        // The service's own rounds run by the same clock; whoever comes first does the work, so
        // count what the store says rather than what this round did.
        var before = Announcements();
        _host.Time.Advance(later);
        await _host.Reconciler.AnnounceDueAsync(TestContext.Current.CancellationToken);
        return (int)(Announcements() - before);
    }

    private long Announcements() => _host.Store.Read(view => view.Single<long>(
        "SELECT coalesce(sum(announcements), 0) FROM orders"));

    /// <summary>All that was said before has been heard once this has.</summary>
    private Task SettledAsync() => UntilAsync(view => Claims(view) >= _said.Count);

    private async Task UntilAsync(Func<PostFrame.Messaging.StoreTransaction, bool> holds)
    {
        using var tick = new PeriodicTimer(TimeSpan.FromMilliseconds(10));
        for (var n = 0; n < 1500 && !_host.Store.Read(holds); n++)
        {
            await tick.WaitForNextTickAsync(TestContext.Current.CancellationToken);
        }

        Assert.True(_host.Store.Read(holds));
    }

    private static long Claims(PostFrame.Messaging.StoreTransaction view) =>
        view.Single<long>("SELECT count(*) FROM inbox");

    private readonly HashSet<Guid> _said = [];

    private Task SayAsync(
        string news, Guid id, string orderNumber = "PF-1", int revision = 1, int? plan = null)
    {
        _said.Add(id);
        return news switch
        {
            "planned" => PublishAsync(id, new CuttingPlanned
            {
                Id = id,
                Data = new CuttingPlanned.Planned
                {
                    OrderNumber = orderNumber,
                    Revision = revision,
                    PlannedAt = At,
                    PlanNumber = plan,
                    RollCount = 2 + (plan ?? 1),
                },
            }),
            "labelled" => PublishAsync(id, new LabelsPrinted
            {
                Id = id,
                Data = new LabelsPrinted.Printed
                {
                    OrderNumber = orderNumber,
                    Revision = revision,
                    PrintedAt = At,
                    PlanNumber = plan,
                    LabelCount = 16,
                },
            }),
            "failed" => PublishAsync(id, new LabelsFailed
            {
                Id = id,
                Data = new LabelsFailed.Failed
                {
                    OrderNumber = orderNumber,
                    Revision = revision,
                    PlanNumber = plan!.Value,
                    Reasons =
                    [
                        new LabelsFailed.Reason { Code = "drawing-failed", Text = "Not drawn." },
                    ],
                },
            }),
            _ => PublishAsync(id, new CuttingRejected
            {
                Id = id,
                Data = new CuttingRejected.Rejected
                {
                    OrderNumber = orderNumber,
                    Revision = revision,
                    PlanNumber = plan,
                    Reasons = [new CuttingRejected.Reason { Code = "long", Text = "Too long." }],
                },
            }),
        };
    }

    private static IEnumerable<string> Permuted(IReadOnlyList<string> items) => items.Count == 1
        ? items
        : items.SelectMany(first => Permuted([.. items.Where(item => item != first)])
            .Select(rest => $"{first} {rest}"));

    private Task PublishAsync<T>(Guid id, T message)
        where T : class =>
        _host.Bus.Publish(
            message, context => context.MessageId = id, TestContext.Current.CancellationToken);
}
