using MassTransit;

namespace PostFrame.LabellingWorker.Messages;

/// <summary><c>labels-printed.v1</c>: the labels and the checklist of a revision can be
/// fetched.</summary>
[MessageUrn("labels-printed.v1")]
[EntityName("labels-printed.v1")]
public sealed record LabelsPrinted
{
    public required Guid Id { get; init; }

    public required string Source { get; init; }

    public required string Type { get; init; }

    public required string Subject { get; init; }

    public required DateTimeOffset Time { get; init; }

    public required LabelsPrintedData Data { get; init; }
}

public sealed record LabelsPrintedData
{
    public required string OrderNumber { get; init; }

    public required int Revision { get; init; }

    public required DateTimeOffset PrintedAt { get; init; }

    /// <summary>The plan whose cutting order they follow.</summary>
    public int? PlanNumber { get; init; }

    public required int LabelCount { get; init; }
}
