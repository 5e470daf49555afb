using System.ComponentModel;
using System.Globalization;
using Microsoft.AspNetCore.Http.HttpResults;
using PostFrame.CuttingWorker.Plans;
using PostFrame.Messaging;

namespace PostFrame.CuttingWorker.Queue;

/// <summary>Everything that is not cut yet, the order that has waited longest first.</summary>
public sealed record QueueBody
{
    public required IReadOnlyList<QueueEntry> Orders { get; init; }

    [Description("Orders beyond these, which are the oldest.")]
    public required bool HasMore { get; init; }
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

    [Description("Why it was refused; empty otherwise.")]
    public required IReadOnlyList<string> Reasons { get; init; }
}

internal static class GetQueue
{
    private const int Most = 500;

    public static void MapQueue(this IEndpointRouteBuilder routes) =>
        routes.MapGet("/v1/cutting/queue", Answer)
            .WithGroupName("cutting").WithName("getCuttingQueue").WithTags("Queue")
            .WithSummary("What is to be cut, oldest first");

    private static Ok<QueueBody> Answer(
        [FromKeyedServices(CuttingSetup.Service)] SqliteStore store)
    {
        var rows = store.Read(view => OrderStore.Queue(view, Most + 1));
        return TypedResults.Ok(new QueueBody
        {
            Orders = [.. rows.Take(Most).Select(Entry)],
            HasMore = rows.Count > Most,
        });
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
        Reasons = [.. Announcement.RefusalsOf(row.Refusals).Select(refusal => refusal.Text)],
    };
}
