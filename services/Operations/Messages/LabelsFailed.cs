using MassTransit;

namespace PostFrame.Operations.Messages;

/// <summary>The labels of a plan cannot be drawn, and why.</summary>
[MessageUrn("labels-failed.v1")]
[EntityName("labels-failed.v1")]
public sealed record LabelsFailed
{
    public required Guid Id { get; init; }

    public required DateTimeOffset Time { get; init; }

    public required Failed Data { get; init; }

    public sealed record Failed
    {
        public required string OrderNumber { get; init; }

        public required int Revision { get; init; }

        public required int PlanNumber { get; init; }

        public required DateTimeOffset FailedAt { get; init; }

        public required IReadOnlyList<Reason> Reasons { get; init; }
    }

    public sealed record Reason
    {
        public required string Text { get; init; }
    }
}
