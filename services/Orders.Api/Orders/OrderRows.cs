namespace PostFrame.OrdersApi.Orders;

internal sealed class OrderRow
{
    public required long Seq { get; init; }

    public required string OrderNumber { get; init; }

    public required long Revision { get; init; }

    public required string State { get; init; }

    public required string NeededBy { get; init; }

    public required string ShipTo { get; init; }

    public required string Building { get; init; }

    public required string Summary { get; init; }

    public required long PieceCount { get; init; }

    public long? RollCount { get; init; }

    public long? LabelCount { get; init; }

    public required long AcceptedAt { get; init; }

    public long? PlannedAt { get; init; }

    public long? LabelledAt { get; init; }

    public long PlannedPlan { get; init; }

    public long LabelledPlan { get; init; }

    public long? ParkedAt { get; init; }

    public string? ParkReasons { get; init; }

    public required long ChangeNo { get; init; }

    public required long ChangedAt { get; init; }

    public required long Announcements { get; init; }
}

internal sealed class HistoryRow
{
    public required long Revision { get; init; }

    public required long At { get; init; }

    public required string Event { get; init; }

    public required string Text { get; init; }
}

/// <summary>What a key was answered before.</summary>
internal sealed class AnswerRow
{
    public required string BodyHash { get; init; }

    public required string Location { get; init; }

    public required string Answer { get; init; }
}
