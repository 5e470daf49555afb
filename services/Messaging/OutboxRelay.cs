using System.Text.Json;
using MassTransit;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

namespace PostFrame.Messaging;

/// <summary>
/// Sends what is in a store's outbox. A row leaves it only after the bus has confirmed the message
/// and, on RabbitMQ, routed it to a queue. A row that cannot be sent waits longer each time and
/// lets the others pass; when nothing can be sent the relay itself waits.
/// </summary>
internal sealed partial class OutboxRelay(
    SqliteStore store, IReadOnlyDictionary<string, Type> types, IBusControl bus, TimeProvider time,
    ILogger<OutboxRelay> log) : BackgroundService
{
    private const int MostAtOnce = 20;
    private static readonly TimeSpan Poll = TimeSpan.FromSeconds(2);
    private static readonly TimeSpan StartPatience = TimeSpan.FromSeconds(15);
    private static readonly TimeSpan SendDeadline = TimeSpan.FromSeconds(10);
    private static readonly TimeSpan LongestRest = TimeSpan.FromSeconds(5);
    private static readonly TimeSpan LongestWait = TimeSpan.FromMinutes(1);
    private static readonly TimeSpan InboxMemory = TimeSpan.FromDays(30);
    private bool _isFailing;

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        await Task.Yield();
        await UntilBusIsUpAsync(stoppingToken);
        var isFirst = true;
        var rest = TimeSpan.Zero;
        while (!stoppingToken.IsCancellationRequested)
        {
            try
            {
                if (isFirst)
                {
                    await ForgetOldClaimsAsync(stoppingToken);
                    isFirst = false;
                }

                rest = await SendDueAsync(rest, stoppingToken);
                await RestAsync(rest, stoppingToken);
            }
            catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
            {
                return;
            }
            catch (StoreUnavailableException failure)
            {
                Note(failing: true, failure);
                await Task.Delay(LongestRest, time, stoppingToken)
                    .ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            }
        }
    }

    /// <summary>What is sent before every queue of this process is bound would miss it.</summary>
    private async Task UntilBusIsUpAsync(CancellationToken stop)
    {
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(stop);
        patience.CancelAfter(StartPatience);
        try
        {
            await bus.WaitForHealthStatus(BusHealthStatus.Healthy, patience.Token);
        }
        catch (OperationCanceledException) when (!stop.IsCancellationRequested)
        {
            Note(failing: true, null);
        }
    }

    /// <summary>Sends one batch; answers how long to rest before the next: nothing when there may
    /// be more, the poll interval when there is none.</summary>
    private async Task<TimeSpan> SendDueAsync(TimeSpan lastRest, CancellationToken stop)
    {
        if (bus.CheckHealth().Status is BusHealthStatus.Unhealthy)
        {
            Note(failing: true, null);
            return Longer(lastRest);
        }

        var rows = store.Read(view => Outbox.Due(view, MostAtOnce));
        if (rows.Count == 0)
        {
            return Poll;
        }

        var outcomes = await Task.WhenAll(rows.Select(row => SendAsync(row, stop)));
        FailPoint.Reach(store.Service + ".after-publish");
        await store.WriteAsync(
            transaction =>
            {
                foreach (var (row, outcome) in rows.Zip(outcomes))
                {
                    Record(transaction, row, outcome);
                }
            },
            CancellationToken.None);
        var isBusAway = outcomes.Any(outcome => outcome is { IsBusToBlame: true })
            && outcomes.All(outcome => outcome is not null);
        Note(isBusAway, outcomes.FirstOrDefault(outcome => outcome is not null)?.Cause);
        return isBusAway ? Longer(lastRest) : TimeSpan.Zero;
    }

    /// <summary>What went wrong, or null when the bus has the message.</summary>
    private async Task<Failure?> SendAsync(OutboxRow row, CancellationToken stop)
    {
        object message;
        try
        {
            message = Read(row);
        }
        catch (Exception unreadable)
        {
            return new Failure(unreadable, IsBusToBlame: false);
        }

        try
        {
            using var deadline = CancellationTokenSource.CreateLinkedTokenSource(stop);
            deadline.CancelAfter(SendDeadline);
            await bus.Publish(
                message, types[row.Type],
                Pipe.Execute<PublishContext>(context => Address(context, row)), deadline.Token);
            return null;
        }
        catch (Exception unsent) when (!stop.IsCancellationRequested)
        {
            return new Failure(unsent, IsBusToBlame: true);
        }
    }

    /// <summary>Mandatory: a message that no queue takes is a failure, not a success.</summary>
    private static void Address(PublishContext context, OutboxRow row)
    {
        context.MessageId = Guid.Parse(row.Id);
        if (context.TryGetPayload<RabbitMqSendContext>(out var rabbit))
        {
            rabbit.Mandatory = true;
        }
    }

    private object Read(OutboxRow row) =>
        types.TryGetValue(row.Type, out var type)
            ? JsonSerializer.Deserialize(row.Body, type, MessageJson.Options)
                ?? throw new JsonException("The body is null.")
            : throw new InvalidOperationException(
                $"{store.Service} announces no message named {row.Type}.");

    private static void Record(StoreTransaction transaction, OutboxRow row, Failure? failure)
    {
        if (failure is null)
        {
            Outbox.Sent(transaction, row.Id);
            return;
        }

        var longest = failure.IsBusToBlame ? LongestRest : LongestWait;
        var seconds = Math.Min(Math.Pow(2, Math.Min(row.Attempts, 10)), longest.TotalSeconds);
        Outbox.Failed(
            transaction, row.Id, TimeSpan.FromSeconds(seconds),
            failure.Cause.GetType().Name + ": " + failure.Cause.Message);
    }

    private static TimeSpan Longer(TimeSpan rest)
    {
        var doubled = TimeSpan.FromMilliseconds(Math.Max(250, rest.TotalMilliseconds * 2));
        return doubled < LongestRest ? doubled : LongestRest;
    }

    private async Task RestAsync(TimeSpan rest, CancellationToken stop)
    {
        if (rest == TimeSpan.Zero)
        {
            return;
        }

        if (rest != Poll)
        {
            await Task.Delay(rest, time, stop);
            return;
        }

        using var waiting = CancellationTokenSource.CreateLinkedTokenSource(stop);
        var signal = store.Announced.WaitToReadAsync(waiting.Token).AsTask();
        await Task.WhenAny(signal, Task.Delay(rest, time, waiting.Token));
        await waiting.CancelAsync();
        store.Announced.TryRead(out _);
        stop.ThrowIfCancellationRequested();
    }

    private Task ForgetOldClaimsAsync(CancellationToken stop) => store.WriteAsync(
        transaction => Inbox.Forget(
            transaction, transaction.NowUnixMs - (long)InboxMemory.TotalMilliseconds),
        stop);

    private void Note(bool failing, Exception? cause)
    {
        if (failing == _isFailing)
        {
            return;
        }

        _isFailing = failing;
        if (failing)
        {
            LogFailing(log, store.Service, cause?.Message ?? "the bus is not up yet");
        }
        else
        {
            LogSending(log, store.Service);
        }
    }

    [LoggerMessage(LogLevel.Warning, "{Service}: messages cannot be sent and wait: {Cause}")]
    private static partial void LogFailing(ILogger log, string service, string cause);

    [LoggerMessage(LogLevel.Information, "{Service}: messages are sent again")]
    private static partial void LogSending(ILogger log, string service);

    private sealed record Failure(Exception Cause, bool IsBusToBlame);
}
