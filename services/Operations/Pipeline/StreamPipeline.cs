using System.ComponentModel;
using System.Text;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Options;
using PostFrame.Messaging;
using PostFrame.Problems;

namespace PostFrame.Operations.Pipeline;

/// <summary>The data of an <c>orders</c> event.</summary>
public sealed record PipelineChanges
{
    [Description("Orders that changed, each as it is now.")]
    public required IReadOnlyList<TrackedOrder> Orders { get; init; }

    public required PipelineSummary Summary { get; init; }

    public required DateTimeOffset AsOf { get; init; }
}

/// <summary>Changes as server-sent events (HTML Living Standard, section 9.2).</summary>
internal sealed class StreamPipeline(
    ChangeFeed feed, IHostApplicationLifetime host, IOptions<StreamOptions> options,
    TimeProvider time)
{
    private const int RetryMs = 2000;
    private const int BusySeconds = 5;
    private int _open;

    public static void MapStream(IEndpointRouteBuilder routes) =>
        routes.MapGet("/v1/pipeline/events", Answer)
            .WithGroupName(OperationsSetup.Name).WithName("getPipelineEvents")
            .WithTags("Pipeline")
            .WithSummary("Every change as it happens, as server-sent events")
            .WithDescription(
                "Event snapshot: read /v1/pipeline now, changes since its id follow. Event "
                + "orders: changed orders as they are now, with the summary. Event heartbeat: "
                + "nothing happened for some seconds. Send the last id as Last-Event-ID, or as "
                + "after, and the stream goes on from there; an unknown id starts anew.")
            .Produces<PipelineChanges>(StatusCodes.Status200OK, "text/event-stream")
            .MapRefusals(ProblemKind.TooManyRequests, ProblemKind.StoreUnavailable);

    private static Task Answer(
        HttpContext context, [FromServices] StreamPipeline stream,
        [FromHeader(Name = "Last-Event-ID"), Description("The id of the last event read.")]
        string? lastEventId,
        [FromQuery, Description("The same, for a reader that cannot set the header.")]
        string? after) =>
        stream.RunAsync(context, lastEventId ?? after);

    private async Task RunAsync(HttpContext context, string? lastEventId)
    {
        try
        {
            if (Interlocked.Increment(ref _open) > options.Value.MostStreams)
            {
                var refusal = new ProblemAnswer(
                    ProblemKind.TooManyRequests,
                    $"{options.Value.MostStreams} streams are open, the most there may be.")
                {
                    RetryAfterSeconds = BusySeconds,
                };
                await refusal.ExecuteAsync(context);
                return;
            }

            using var end = CancellationTokenSource.CreateLinkedTokenSource(
                context.RequestAborted, host.ApplicationStopping);
            await FollowAsync(context.Response, lastEventId, end.Token);
        }
        catch (OperationCanceledException) when (
            context.RequestAborted.IsCancellationRequested
            || host.ApplicationStopping.IsCancellationRequested)
        {
            // The reader has gone, or the host stops; the reader resumes from its last id.
        }
        catch (StoreUnavailableException)
        {
            // Once begun, the stream just ends: its reader comes back with its last id.
            if (!context.Response.HasStarted)
            {
                await GetPipeline.StoreAway().ExecuteAsync(context);
            }
        }
        finally
        {
            Interlocked.Decrement(ref _open);
        }
    }

    private async Task FollowAsync(
        HttpResponse response, string? lastEventId, CancellationToken end)
    {
        var latest = feed.Latest();
        var resumed = EventId.Resume(lastEventId, latest);
        response.ContentType = "text/event-stream; charset=utf-8";
        response.Headers.CacheControl = "no-store";
        response.Headers["X-Accel-Buffering"] = "no";
        await SendAsync(response, Text($"retry: {RetryMs}\n\n"), end);
        if (resumed is null)
        {
            await SendAsync(
                response,
                Text($"id: {latest}\nevent: snapshot\ndata: {{\"lastEventId\":\"{latest}\"}}\n\n"),
                end);
        }

        var change = (resumed ?? latest).Change;
        while (true)
        {
            var newest = feed.Newest;
            if (change < newest.Last)
            {
                var frame = change == newest.After ? newest : feed.After(change);
                await SendAsync(response, frame.Bytes, end);
                change = frame.Last;
            }
            else if (!await HasMoreAsync(newest, end))
            {
                await SendAsync(response, Heartbeat(), end);
            }
        }
    }

    /// <summary>False when nothing came for a heartbeat's time.</summary>
    private async Task<bool> HasMoreAsync(ChangeFeed.Frame newest, CancellationToken end)
    {
        try
        {
            await newest.Followed.Task.WaitAsync(options.Value.Heartbeat, time, end);
            return true;
        }
        catch (TimeoutException)
        {
            return false;
        }
    }

    private byte[] Heartbeat() =>
        Text($"event: heartbeat\ndata: {{\"asOf\":\"{time.GetUtcNow():O}\"}}\n\n");

    private static byte[] Text(string text) => Encoding.UTF8.GetBytes(text);

    private static async Task SendAsync(
        HttpResponse response, byte[] bytes, CancellationToken end)
    {
        await response.Body.WriteAsync(bytes, end);
        await response.Body.FlushAsync(end);
    }
}
