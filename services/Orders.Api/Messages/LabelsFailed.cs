using MassTransit;

namespace PostFrame.OrdersApi.Messages;

/// <summary>The labels of a plan cannot be drawn, and why.</summary>
[MessageUrn("labels-failed.v1")]
[EntityName("labels-failed.v1")]
public sealed record LabelsFailed
{
    public required Guid Id { get; init; }

    public required Failed Data { get; init; }

    public sealed record Failed
    {
        public required string OrderNumber { get; init; }

        public required int Revision { get; init; }

        public required int PlanNumber { get; init; }

        public required IReadOnlyList<Reason> Reasons { get; init; }
    }

    public sealed record Reason
    {
        public required string Code { get; init; }

        public required string Text { get; init; }
    }
}
