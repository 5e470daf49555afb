using System.Text;
using System.Text.Json;
using System.Threading.Channels;
using Microsoft.Extensions.DependencyInjection;
using PostFrame.Messaging;

namespace PostFrame.Operations.Pipeline;

/// <summary>
/// Writes each change once for all open streams. Streams that follow share the newest frame; one
/// that fell behind reads on from the store, where an order changed ten times is one row. So no
/// stream needs a buffer of its own, however slow its reader is.
/// </summary>
internal sealed partial class ChangeFeed(
    [FromKeyedServices(OperationsSetup.Name)] SqliteStore store, DescribeOrders describe,
    TimeProvider time, ILogger<ChangeFeed> log) : BackgroundService
{
    private const int MostOrdersInFrame = 200;
    private static readonly TimeSpan Gathering = TimeSpan.FromMilliseconds(200);
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(2);

    private readonly Channel<bool> _woken = Channel.CreateBounded<bool>(
        new BoundedChannelOptions(1) { FullMode = BoundedChannelFullMode.DropWrite });

    private volatile Frame _newest = new(-1, 0, []);

    public Frame Newest => _newest;

    /// <summary>Called after a commit that changed an order.</summary>
    public void Wake() => _woken.Writer.TryWrite(true);

    /// <summary>The point a new stream starts from.</summary>
    public EventId Latest() => store.Read(EventId.Latest);

    /// <summary>The changes behind a point, up to a frame full; empty when there are
    /// none.</summary>
    public Frame After(long change)
    {
        var (rows, summary, feed, now) = store.Read(view => (
            PipelineStore.Changes(view, change, MostOrdersInFrame), DescribeOrders.Summary(view),
            PipelineStore.FeedName(view), view.NowUnixMs));
        if (rows.Count == 0)
        {
            return new Frame(change, change, []);
        }

        var last = rows[^1].Change;
        var data = JsonSerializer.Serialize(
            new PipelineChanges
            {
                Orders = [.. rows.Select(row => describe.Order(row, now))],
                Summary = summary,
                AsOf = DateTimeOffset.FromUnixTimeMilliseconds(now),
            },
            JsonSerializerOptions.Web);
        return new Frame(change, last, Encoding.UTF8.GetBytes(
            $"id: {new EventId(feed, last)}\nevent: orders\ndata: {data}\n\n"));
    }

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        await Task.Yield();
        var known = false;
        while (!stoppingToken.IsCancellationRequested)
        {
            try
            {
                if (!known)
                {
                    Publish(new Frame(-1, Latest().Change, []));
                    known = true;
                }

                await _woken.Reader.ReadAsync(stoppingToken);
                await Task.Delay(Gathering, time, stoppingToken);
                PublishChanges();
            }
            catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
            {
                return;
            }
            catch (StoreUnavailableException failure)
            {
                LogStoreAway(failure);
                Wake();
                await Task.Delay(Patience, time, stoppingToken)
                    .ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            }
        }
    }

    private void PublishChanges()
    {
        for (var frame = After(_newest.Last); frame.Last > frame.After;)
        {
            Publish(frame);
            frame = After(frame.Last);
        }
    }

    private void Publish(Frame frame)
    {
        var previous = _newest;
        _newest = frame;
        previous.Followed.TrySetResult();
    }

    [LoggerMessage(LogLevel.Warning, "The store is not to be had; open streams wait")]
    private partial void LogStoreAway(Exception failure);

    /// <summary>Changes behind one point up to another, as written on the wire.</summary>
    internal sealed record Frame(long After, long Last, byte[] Bytes)
    {
        /// <summary>Done when a newer frame is there.</summary>
        public TaskCompletionSource Followed { get; } =
            new(TaskCreationOptions.RunContinuationsAsynchronously);
    }
}
