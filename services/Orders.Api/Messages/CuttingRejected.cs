using MassTransit;

namespace PostFrame.OrdersApi.Messages;

/// <summary>Cutting cannot plan a revision, and why.</summary>
[MessageUrn("cutting-rejected.v1")]
[EntityName("cutting-rejected.v1")]
public sealed record CuttingRejected
{
    public required Guid Id { get; init; }

    public required Rejected Data { get; init; }

    public sealed record Rejected
    {
        public required string OrderNumber { get; init; }

        public required int Revision { get; init; }

        /// <summary>Counted with the plans; the highest holds.</summary>
        public int? PlanNumber { get; init; }

        public required IReadOnlyList<Reason> Reasons { get; init; }
    }

    public sealed record Reason
    {
        public required string Code { get; init; }

        public string? PieceId { get; init; }

        public string? Mark { get; init; }

        public required string Text { get; init; }
    }
}
