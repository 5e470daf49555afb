using MassTransit;

namespace PostFrame.OrdersApi.Messages;

/// <summary>The labels of a revision can be fetched. Only what orders reads of it.</summary>
[MessageUrn("labels-printed.v1")]
[EntityName("labels-printed.v1")]
public sealed record LabelsPrinted
{
    public required Guid Id { get; init; }

    public required Printed Data { get; init; }

    public sealed record Printed
    {
        public required string OrderNumber { get; init; }

        public required int Revision { get; init; }

        public required DateTimeOffset PrintedAt { get; init; }

        /// <summary>The plan the labels follow.</summary>
        public int? PlanNumber { get; init; }

        public required int LabelCount { get; init; }
    }
}
