using System.Text.Json;
using Microsoft.Extensions.DependencyInjection;
using PostFrame.Messaging;

namespace PostFrame.Operations.Pipeline;

/// <summary>
/// Asks Orders at intervals what changed. A message that died with its process is never sent
/// again once Orders has its answer; without this the board would wait for it for ever.
/// </summary>
internal sealed partial class HearOrders(
    [FromKeyedServices(OperationsSetup.Name)] SqliteStore store, ChangeFeed feed, TimeProvider time,
    ILogger<HearOrders> log, IServiceProvider services) : BackgroundService
{
    private static readonly TimeSpan Interval = TimeSpan.FromSeconds(5);

    private readonly AskForOrders? _ask = services.GetService<AskForOrders>();
    private bool _isDeaf;

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        await Task.Yield();
        while (_ask is not null && !stoppingToken.IsCancellationRequested)
        {
            var more = false;
            try
            {
                more = await HearAsync(_ask, stoppingToken);
                Note(isDeaf: false, null);
            }
            catch (Exception failure) when (
                failure is HttpRequestException or OperationCanceledException or JsonException
                    or StoreUnavailableException
                && !stoppingToken.IsCancellationRequested)
            {
                Note(isDeaf: true, failure.Message);
            }

            if (!more)
            {
                await Task.Delay(Interval, time, stoppingToken)
                    .ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            }
        }
    }

    /// <summary>Takes one page; true when there is another.</summary>
    internal async Task<bool> HearAsync(AskForOrders ask, CancellationToken cancel)
    {
        var known = store.Read(HeardStore.Latest);
        var page = JsonSerializer.Deserialize<HeardPage>(
            await ask(known, cancel), MessageJson.Options)!;
        if (page.Orders.Count == 0)
        {
            return false;
        }

        var changed = await store.WriteAsync(
            transaction => page.Orders.Count(order => Keep(transaction, order)), cancel);
        if (changed > 0)
        {
            feed.Wake();
        }

        return page.Next is not null;
    }

    private static bool Keep(StoreTransaction transaction, HeardOrder order)
    {
        HeardStore.Keep(transaction, order);
        PipelineStore.Keep(transaction, Told.By(order));
        return BoardRow.Bring(transaction, order.OrderNumber);
    }

    private void Note(bool isDeaf, string? cause)
    {
        if (isDeaf && !_isDeaf)
        {
            LogDeaf(cause!);
        }
        else if (!isDeaf && _isDeaf)
        {
            LogHears();
        }

        _isDeaf = isDeaf;
    }

    [LoggerMessage(
        LogLevel.Warning, "Orders does not answer; the board lives by messages: {Cause}")]
    private partial void LogDeaf(string cause);

    [LoggerMessage(LogLevel.Information, "Orders answers again")]
    private partial void LogHears();
}
