using MassTransit;

namespace PostFrame.CuttingWorker.Messages;

/// <summary>A revision cannot be planned; every reason is named.</summary>
[MessageUrn("cutting-rejected.v1")]
[EntityName("cutting-rejected.v1")]
public sealed record CuttingRejected
{
    public required Guid Id { get; init; }

    public required string Source { get; init; }

    public required string Type { get; init; }

    public required string Subject { get; init; }

    public required DateTimeOffset Time { get; init; }

    public required Rejected Data { get; init; }

    public sealed record Rejected
    {
        public required string OrderNumber { get; init; }

        public required int Revision { get; init; }

        public required DateTimeOffset RejectedAt { get; init; }

        /// <summary>Counted with the plans; null when the order could not be taken.</summary>
        public int? PlanNumber { get; init; }

        public required IReadOnlyList<Reason> Reasons { get; init; }
    }

    public sealed record Reason
    {
        /// <summary>
        /// <c>piece-longer-than-any-roll</c>, <c>no-roll-for-product</c> or <c>plan-refused</c>.
        /// </summary>
        public required string Code { get; init; }

        public string? PieceId { get; init; }

        public string? Mark { get; init; }

        public required string Text { get; init; }
    }
}
