using MassTransit;

namespace PostFrame.Operations.Messages;

/// <summary>Orders froze a revision of an order. Only what the board shows of it.</summary>
[MessageUrn("order-confirmed.v1")]
[EntityName("order-confirmed.v1")]
public sealed record OrderConfirmed
{
    public required Guid Id { get; init; }

    public required DateTimeOffset Time { get; init; }

    public required Confirmed Data { get; init; }

    public sealed record Confirmed
    {
        public required string OrderNumber { get; init; }

        public required int Revision { get; init; }

        public required DateTimeOffset ConfirmedAt { get; init; }

        public required DateOnly NeededBy { get; init; }

        public required Customer ShipTo { get; init; }

        public required Structure Building { get; init; }

        public required IReadOnlyList<Piece> Pieces { get; init; }
    }

    public sealed record Customer
    {
        public required string Name { get; init; }
    }

    public sealed record Structure
    {
        public required string Name { get; init; }

        public required string Summary { get; init; }
    }

    /// <summary>Counted only.</summary>
    public sealed record Piece;
}
