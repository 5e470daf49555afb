using System.ComponentModel;
using System.Globalization;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;
using PostFrame.CuttingWorker.Plans;
using PostFrame.Messaging;
using PostFrame.Problems;

namespace PostFrame.CuttingWorker.Queue;

/// <summary>Everything that is not cut yet, the order that has waited longest first.</summary>
public sealed record QueueBody
{
    public required IReadOnlyList<QueueEntry> Orders { get; init; }

    [Description("There are orders behind these, which have waited longest.")]
    public required bool HasMore { get; init; }

    [Description("Send as after for the orders behind these; null when there are none.")]
    public string? Next { get; init; }
}

public sealed record QueueEntry
{
    public required string OrderNumber { get; init; }

    public required int Revision { get; init; }

    public required DateOnly NeededBy { get; init; }

    [Description("waiting for its plan, planned, cutting (begun), or refused.")]
    public required string State { get; init; }

    public required DateTime WaitingSince { get; init; }

    public required int Pieces { get; init; }

    public required int PiecesCut { get; init; }

    [Description("Rolls that hold a piece of the order; 0 until it is planned.")]
    public required int Rolls { get; init; }

    [Description("Those that still have a piece of it to give; orders may share them.")]
    public required IReadOnlyList<long> RollIds { get; init; }

    [Description("Why it was refused; empty otherwise.")]
    public required IReadOnlyList<string> Reasons { get; init; }
}

internal static class GetQueue
{
    private const int MostLimit = 500;
    private const int LongestMark = 100;

    public static void MapQueue(this IEndpointRouteBuilder routes) =>
        routes.MapGet("/v1/cutting/queue", Answer)
            .WithGroupName("cutting").WithName("getCuttingQueue").WithTags("Queue")
            .WithSummary("What is to be cut, oldest first")
            .WithDescription("A page at a time: send what next said as after for the one behind.")
            .MapRefusals(ProblemKind.InvalidRequest);

    private static Results<Ok<QueueBody>, ProblemAnswer> Answer(
        [FromKeyedServices(CuttingSetup.Service)] SqliteStore store, HttpRequest request,
        [FromQuery, Description("Orders a page, 1 to 500; 500 unless given.")]
        string? limit,
        [FromQuery, Description("What next said on the page before.")]
        string? after)
    {
        _ = (limit, after); // Documented here, read as strictly as a body.
        var query = new RequestQuery(request);
        var most = (int)(query.Whole("limit", 1, MostLimit, "orders") ?? MostLimit);
        var (confirmedAt, number) = Start(query);
        if (query.Refusal() is { } refusal)
        {
            return refusal;
        }

        var rows = store.Read(view => OrderStore.Queue(view, confirmedAt, number, most + 1));
        return TypedResults.Ok(new QueueBody
        {
            Orders = [.. rows.Take(most).Select(Entry)],
            HasMore = rows.Count > most,
            Next = rows.Count > most
                ? string.Create(
                    CultureInfo.InvariantCulture,
                    $"{rows[most - 1].ConfirmedAt}.{rows[most - 1].OrderNumber}")
                : null,
        });
    }

    /// <summary>The order behind which the page begins.</summary>
    private static (long ConfirmedAt, string OrderNumber) Start(RequestQuery query)
    {
        if (query.Text("after", LongestMark) is not { } after)
        {
            return (long.MinValue, "");
        }

        var dot = after.IndexOf('.', StringComparison.Ordinal);
        if (dot > 0 && long.TryParse(
                after.AsSpan(0, dot), NumberStyles.None, CultureInfo.InvariantCulture, out var at))
        {
            return (at, after[(dot + 1)..]);
        }

        query.Wrong(
            "after", "not-a-page-mark", after,
            $"\"{after}\" is no page mark. Send what next said on the page before.");
        return (long.MinValue, "");
    }

    private static QueueEntry Entry(QueueRow row) => new()
    {
        OrderNumber = row.OrderNumber,
        Revision = (int)row.Revision,
        NeededBy = DateOnly.Parse(row.NeededBy, CultureInfo.InvariantCulture),
        State = row.State == "planned" && row.PiecesCut > 0 ? "cutting" : row.State,
        WaitingSince = DateTimeOffset.FromUnixTimeMilliseconds(row.ConfirmedAt).UtcDateTime,
        Pieces = (int)row.Pieces,
        PiecesCut = (int)row.PiecesCut,
        Rolls = (int)row.Rolls,
        RollIds = [.. (row.RollIds ?? "").Split(',', StringSplitOptions.RemoveEmptyEntries)
            .Select(id => long.Parse(id, CultureInfo.InvariantCulture)).Order()],
        Reasons = [.. Announcement.RefusalsOf(row.Refusals).Select(refusal => refusal.Text)],
    };
}
