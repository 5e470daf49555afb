namespace PostFrame.Operations.Pipeline;

/// <summary>A page of what Orders says changed. Only what the board reads of it.</summary>
internal sealed record HeardPage
{
    public required IReadOnlyList<HeardOrder> Orders { get; init; }

    public string? Next { get; init; }
}

internal sealed record HeardOrder
{
    public required string OrderNumber { get; init; }

    public required int Revision { get; init; }

    public required string State { get; init; }

    public required DateOnly NeededBy { get; init; }

    public required Customer ShipTo { get; init; }

    public required Structure Building { get; init; }

    public required int Pieces { get; init; }

    public int? Rolls { get; init; }

    public int? Labels { get; init; }

    public required DateTimeOffset AcceptedAt { get; init; }

    public DateTimeOffset? PlannedAt { get; init; }

    public int? PlanNumber { get; init; }

    public DateTimeOffset? LabelledAt { get; init; }

    public int? LabelsPlanNumber { get; init; }

    /// <summary>When it was parked, if it is.</summary>
    public DateTimeOffset? WaitingSince { get; init; }

    public required IReadOnlyList<Reason> ParkReasons { get; init; }

    public required long Change { get; init; }

    public sealed record Customer(string Name);

    public sealed record Structure(string Name, string Summary);

    public sealed record Reason(string Code, string Text);
}
