using MassTransit;

namespace PostFrame.LabellingWorker.Messages;

/// <summary>The cutting order out of <c>cutting-planned.v1</c>.</summary>
[MessageUrn("cutting-planned.v1")]
[EntityName("cutting-planned.v1")]
public sealed record CuttingPlanned
{
    public required Guid Id { get; init; }

    public required CuttingPlannedData Data { get; init; }
}

public sealed record CuttingPlannedData
{
    public required string OrderNumber { get; init; }

    public required int Revision { get; init; }

    /// <summary>The highest holds; null from a service that makes one plan only.</summary>
    public int? PlanNumber { get; init; }

    public required IReadOnlyList<PlannedGroup> Plans { get; init; }
}

/// <summary>The rolls of one product and width.</summary>
public sealed record PlannedGroup
{
    public required IReadOnlyList<PlannedRoll> Rolls { get; init; }
}

public sealed record PlannedRoll
{
    public required int Roll { get; init; }

    public string? StockId { get; init; }

    public string? Lot { get; init; }

    public required IReadOnlyList<PlannedCut> Cuts { get; init; }
}

public sealed record PlannedCut
{
    public required int Sequence { get; init; }

    public required string PieceId { get; init; }
}
