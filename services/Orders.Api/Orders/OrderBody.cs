using System.Text.Json;
using PostFrame.Messaging;

namespace PostFrame.OrdersApi.Orders;

/// <summary>What an accepted order is answered with.</summary>
internal sealed record AcceptedOrder
{
    public required string OrderNumber { get; init; }

    public required int Revision { get; init; }

    public required string State { get; init; }

    public required DateTimeOffset AcceptedAt { get; init; }

    public required int Pieces { get; init; }

    public required OrderLinks Links { get; init; }
}

/// <summary>Where an order's things are. Plan and labels are named once they are there.</summary>
internal sealed record OrderLinks(
    string Self, string? Plan = null, string? Labels = null, string? Checklist = null);

/// <summary>An order as it stands.</summary>
internal sealed record OrderLine
{
    public required string OrderNumber { get; init; }

    public required int Revision { get; init; }

    /// <summary><c>confirmed</c>, <c>planned</c>, <c>labelled</c> or <c>parked</c>.</summary>
    public required string State { get; init; }

    public required string NeededBy { get; init; }

    public required ShipToBody ShipTo { get; init; }

    public required BuildingBody Building { get; init; }

    public required int Pieces { get; init; }

    public int? Rolls { get; init; }

    public int? Labels { get; init; }

    public required DateTimeOffset AcceptedAt { get; init; }

    public DateTimeOffset? PlannedAt { get; init; }

    /// <summary>Counts how often cutting planned it: a spoiled piece or a short roll makes a new
    /// plan.</summary>
    public int? PlanNumber { get; init; }

    public DateTimeOffset? LabelledAt { get; init; }

    /// <summary>The plan whose cutting order the labels follow; while it is less than planNumber
    /// newer labels are on their way.</summary>
    public int? LabelsPlanNumber { get; init; }

    /// <summary>Since when it waits for what comes next; absent when nothing does.</summary>
    public DateTimeOffset? WaitingSince { get; init; }

    /// <summary>Why it cannot go on by itself; empty unless parked.</summary>
    public required IReadOnlyList<ParkReason> ParkReasons { get; init; }

    /// <summary>Grows with every change of any order.</summary>
    public required long Change { get; init; }

    public required OrderLinks Links { get; init; }

    /// <summary>All that happened to it; only where one order is asked for.</summary>
    public IReadOnlyList<HistoryLine>? History { get; init; }

    internal static OrderLine From(OrderRow row) => From(row, new OrderLine
    {
        OrderNumber = row.OrderNumber,
        Revision = (int)row.Revision,
        State = row.State,
        NeededBy = row.NeededBy,
        ShipTo = new ShipToBody(row.ShipTo),
        Building = new BuildingBody(row.Building, row.Summary),
        Pieces = (int)row.PieceCount,
        Rolls = (int?)row.RollCount,
        Labels = (int?)row.LabelCount,
        AcceptedAt = At(row.AcceptedAt),
        PlannedAt = row.PlannedAt is { } planned ? At(planned) : null,
        PlanNumber = row.PlannedPlan > 0 ? (int)row.PlannedPlan : null,
        LabelledAt = row.LabelledAt is { } labelled ? At(labelled) : null,
        LabelsPlanNumber = row.LabelledPlan > 0 ? (int)row.LabelledPlan : null,
        ParkReasons = [],
        Change = row.ChangeNo,
        Links = LinksOf(row.OrderNumber, row.PlannedAt is not null, row.LabelledAt is not null),
    });

    private static OrderLine From(OrderRow row, OrderLine line) => line with
    {
        WaitingSince = row.State switch
        {
            "confirmed" => line.AcceptedAt,
            "planned" => line.PlannedAt,
            "parked" => At(row.ParkedAt!.Value),
            _ => null,
        },
        ParkReasons = row.ParkReasons is { } reasons
            ? JsonSerializer.Deserialize<List<ParkReason>>(reasons, MessageJson.Options)!
            : [],
    };

    internal static OrderLinks LinksOf(string orderNumber, bool isPlanned, bool isLabelled) => new(
        $"/v1/orders/{orderNumber}",
        isPlanned ? $"/v1/cutting/plans/{orderNumber}" : null,
        isLabelled ? $"/v1/labels/{orderNumber}.pdf" : null,
        isLabelled ? $"/v1/labels/{orderNumber}/checklist.pdf" : null);

    internal static DateTimeOffset At(long unixMs) =>
        DateTimeOffset.FromUnixTimeMilliseconds(unixMs);
}

internal sealed record ShipToBody(string Name);

/// <param name="Name">As the caller named it.</param>
/// <param name="Summary">Sizes and roof in one line.</param>
internal sealed record BuildingBody(string Name, string Summary);

/// <summary>Why an order is parked.</summary>
/// <param name="Code">For programs.</param>
/// <param name="Text">For people.</param>
/// <param name="PieceId">The piece in question, if one is.</param>
/// <param name="Mark">Its mark.</param>
internal sealed record ParkReason(string Code, string Text, string? PieceId, string? Mark);

internal sealed record HistoryLine(DateTimeOffset At, int Revision, string Event, string Text);

/// <summary>Orders, and where to ask on.</summary>
/// <param name="Orders">By what was asked: newest first, or in the order they changed.</param>
/// <param name="Next">The address of the next page; absent on the last.</param>
internal sealed record OrderList(IReadOnlyList<OrderLine> Orders, string? Next = null);
