using System.Text.Json;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Options;
using PostFrame.Messaging;

namespace PostFrame.OrdersApi.Orders;

/// <summary>
/// Announces again every accepted order that has no plan or no labels: all of them once after a
/// start, then each after a grace time that doubles. What is never answered is parked, so that a
/// person sees it.
/// </summary>
internal sealed partial class Reconciler(
    [FromKeyedServices(OrdersSetup.Service)] SqliteStore store, ProcessRun run,
    IOptions<ReconcilerOptions> options, TimeProvider time, ILogger<Reconciler> log)
    : BackgroundService
{
    private const int MostAtOnce = 50;
    private static readonly TimeSpan LongestIdle = TimeSpan.FromSeconds(5);
    private static readonly TimeSpan Busy = TimeSpan.FromMilliseconds(200);

    private TimeSpan Idle =>
        options.Value.Grace < LongestIdle ? options.Value.Grace : LongestIdle;

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        await Task.Yield();
        while (!stoppingToken.IsCancellationRequested)
        {
            var count = 0;
            try
            {
                count = await AnnounceDueAsync(stoppingToken);
            }
            catch (StoreUnavailableException failure)
            {
                LogStoreAway(failure.Message);
            }

            await Task.Delay(count == MostAtOnce ? Busy : Idle, time, stoppingToken)
                .ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }
    }

    /// <summary>One round; answers how many orders were due.</summary>
    internal async Task<int> AnnounceDueAsync(CancellationToken cancel)
    {
        // A backlog in the outbox says that the bus is away or slow: more would not help.
        if (store.Read(Outbox.Waiting) >= MostAtOnce
            || store.Read(view => DueIn(view).Count) == 0)
        {
            return 0;
        }

        var (announced, parked) = await store.WriteAsync(AnnounceDue, cancel);
        if (announced > 0)
        {
            LogAnnounced(announced);
        }

        if (parked > 0)
        {
            LogParked(parked);
        }

        return announced + parked;
    }

    private IReadOnlyList<string> DueIn(StoreTransaction transaction) =>
        ProgressStore.Due(
            transaction, run.Id, options.Value.Grace, options.Value.LongestGrace, MostAtOnce);

    private (int Announced, int Parked) AnnounceDue(StoreTransaction transaction)
    {
        var (announced, parked) = (0, 0);
        foreach (var orderNumber in DueIn(transaction))
        {
            var order = OrderStore.Find(transaction, orderNumber)!;
            if (order.Announcements >= options.Value.MostAnnouncements)
            {
                Park(transaction, order);
                parked++;
                continue;
            }

            Announcement.Repeat(transaction, orderNumber);
            ProgressStore.Announced(transaction, orderNumber, run.Id);
            announced++;
        }

        return (announced, parked);
    }

    private static void Park(StoreTransaction transaction, OrderRow order)
    {
        var reason = order.PlannedAt is null
            ? new ParkReason(
                "no-plan", $"No cutting plan came after {order.Announcements} announcements.",
                null, null)
            : new ParkReason(
                "no-labels", $"No labels came after {order.Announcements} announcements.",
                null, null);
        ProgressStore.GivenUp(
            transaction, order.OrderNumber,
            JsonSerializer.Serialize<ParkReason[]>([reason], MessageJson.Options));
        OrderStore.Note(transaction, order.OrderNumber, "parked", reason.Text);
    }

    [LoggerMessage(LogLevel.Information, "{Count} waiting orders announced again")]
    private partial void LogAnnounced(int count);

    [LoggerMessage(LogLevel.Warning, "{Count} orders parked: nothing answers for them")]
    private partial void LogParked(int count);

    [LoggerMessage(LogLevel.Warning, "Waiting orders cannot be announced: {Cause}")]
    private partial void LogStoreAway(string cause);
}
