using MassTransit;

namespace PostFrame.OrdersApi.Messages;

/// <summary>Cutting has a plan for a revision. Only what orders reads of it.</summary>
[MessageUrn("cutting-planned.v1")]
[EntityName("cutting-planned.v1")]
public sealed record CuttingPlanned
{
    public required Guid Id { get; init; }

    public required Planned Data { get; init; }

    public sealed record Planned
    {
        public required string OrderNumber { get; init; }

        public required int Revision { get; init; }

        public required DateTimeOffset PlannedAt { get; init; }

        /// <summary>The highest holds; null from a service that makes one plan only.</summary>
        public int? PlanNumber { get; init; }

        public required int RollCount { get; init; }
    }
}
