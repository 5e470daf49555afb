using MassTransit;

namespace PostFrame.LabellingWorker.Messages;

/// <summary><c>labels-failed.v1</c>: the labels of a plan cannot be drawn, and why.</summary>
[MessageUrn("labels-failed.v1")]
[EntityName("labels-failed.v1")]
public sealed record LabelsFailed
{
    public required Guid Id { get; init; }

    public required string Source { get; init; }

    public required string Type { get; init; }

    public required string Subject { get; init; }

    public required DateTimeOffset Time { get; init; }

    public required LabelsFailedData Data { get; init; }
}

public sealed record LabelsFailedData
{
    public required string OrderNumber { get; init; }

    public required int Revision { get; init; }

    /// <summary>The plan whose labels failed.</summary>
    public required int PlanNumber { get; init; }

    public required DateTimeOffset FailedAt { get; init; }

    public required IReadOnlyList<FailureReason> Reasons { get; init; }
}

public sealed record FailureReason
{
    public required string Code { get; init; }

    public required string Text { get; init; }
}
