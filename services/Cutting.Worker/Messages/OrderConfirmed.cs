using MassTransit;

namespace PostFrame.CuttingWorker.Messages;

/// <summary>Orders froze a revision of an order. Only what cutting reads of it.</summary>
[MessageUrn("order-confirmed.v1")]
[EntityName("order-confirmed.v1")]
public sealed record OrderConfirmed
{
    public required Guid Id { get; init; }

    public required string Subject { get; init; }

    public required Confirmed Data { get; init; }

    public sealed record Confirmed
    {
        public required string OrderNumber { get; init; }

        public required int Revision { get; init; }

        public required DateTimeOffset ConfirmedAt { get; init; }

        public required DateOnly NeededBy { get; init; }

        public required IReadOnlyList<Piece> Pieces { get; init; }

        public required IReadOnlyList<Roll> Stock { get; init; }
    }

    public sealed record Piece
    {
        public required string PieceId { get; init; }

        public required string Mark { get; init; }

        public required string Plane { get; init; }

        public required string Product { get; init; }

        public required long WidthNm { get; init; }

        public required long CutNm { get; init; }

        public required string CutText { get; init; }

        public required string WidthText { get; init; }
    }

    /// <summary>A roll that can always be had.</summary>
    public sealed record Roll
    {
        public required string Product { get; init; }

        public required long WidthNm { get; init; }

        public required long RollLengthNm { get; init; }

        public required long EndTrimNm { get; init; }

        public required long MinUsefulOffcutNm { get; init; }
    }
}
