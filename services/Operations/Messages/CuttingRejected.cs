using MassTransit;

namespace PostFrame.Operations.Messages;

/// <summary>A revision cannot be planned; every reason is named.</summary>
[MessageUrn("cutting-rejected.v1")]
[EntityName("cutting-rejected.v1")]
public sealed record CuttingRejected
{
    public required Guid Id { get; init; }

    public required DateTimeOffset Time { get; init; }

    public required Rejected Data { get; init; }

    public sealed record Rejected
    {
        public required string OrderNumber { get; init; }

        public required int Revision { get; init; }

        public required DateTimeOffset RejectedAt { get; init; }

        /// <summary>Counted with the plans; the highest holds.</summary>
        public int? PlanNumber { get; init; }

        public required IReadOnlyList<Reason> Reasons { get; init; }
    }

    public sealed record Reason
    {
        public required string Text { get; init; }
    }
}
