using MassTransit;

namespace PostFrame.OrdersApi.Messages;

/// <summary>A revision of an order was accepted and its take-off frozen. Lengths in nm.</summary>
[MessageUrn("order-confirmed.v1")]
[EntityName("order-confirmed.v1")]
public sealed record OrderConfirmed
{
    public required Guid Id { get; init; }

    public string Source { get; init; } = "/orders";

    public string Type { get; init; } = "order-confirmed.v1";

    /// <summary>Order number and revision: <c>PF-1001/1</c>.</summary>
    public required string Subject { get; init; }

    public required DateTimeOffset Time { get; init; }

    public required Confirmed Data { get; init; }

    public sealed record Confirmed
    {
        public required string OrderNumber { get; init; }

        public required int Revision { get; init; }

        public required DateTimeOffset ConfirmedAt { get; init; }

        public required DateOnly NeededBy { get; init; }

        public required ShipTo ShipTo { get; init; }

        public required Building Building { get; init; }

        public required IReadOnlyList<Plane> Planes { get; init; }

        public required IReadOnlyList<Piece> Pieces { get; init; }

        public required IReadOnlyList<Stock> Stock { get; init; }

        public required IReadOnlyList<Caution> Cautions { get; init; }

        public required IReadOnlyList<Accessory> Accessories { get; init; }

        /// <summary>What the crew must know of this building beside the cautions.</summary>
        public IReadOnlyList<string> Notes { get; init; } = [];
    }

    public sealed record ShipTo(string Name);

    public sealed record Building(string Name, string Summary);

    public sealed record Plane
    {
        [System.Text.Json.Serialization.JsonPropertyName("plane")]
        public required string Id { get; init; }

        public required string Title { get; init; }

        public required string Kind { get; init; }

        public required string Product { get; init; }

        public required string ProductTitle { get; init; }

        /// <summary>Which face goes where; null where either may.</summary>
        public string? Facing { get; init; }

        /// <summary>Of the product alone [h·ft²·°F/Btu].</summary>
        public double? NominalR { get; init; }

        public required long WidthNm { get; init; }

        public required int StripCount { get; init; }

        public required long RunNm { get; init; }

        /// <summary>Of the run along the building, from endwall 1; null: at it.</summary>
        public long? StartNm { get; init; }

        public required IReadOnlyList<Corner> Outline { get; init; }

        public required IReadOnlyList<Opening> Openings { get; init; }

        public IReadOnlyList<RoofLine>? Lines { get; init; }
    }

    /// <summary>Ridge, break or ridge vent across a roof plane.</summary>
    public sealed record RoofLine(string Kind, long FromNm, long ToNm, long UpNm);

    public sealed record Corner(long AcrossNm, long UpNm);

    public sealed record Opening(
        string Kind, long FromNm, long ToNm, long BottomNm, long TopNm);

    public sealed record Piece
    {
        public required string PieceId { get; init; }

        public required string Mark { get; init; }

        public required string Plane { get; init; }

        public required int Strip { get; init; }

        public required string Role { get; init; }

        public required string Product { get; init; }

        public required long WidthNm { get; init; }

        public required long CutNm { get; init; }

        public required string CutText { get; init; }

        public required string WidthText { get; init; }

        public required long FromNm { get; init; }

        public required long ToNm { get; init; }

        public required long BottomNm { get; init; }

        public required long TopNm { get; init; }

        public required double WeightLb { get; init; }
    }

    public sealed record Stock(
        string Product, long WidthNm, long RollLengthNm, long EndTrimNm, long MinUsefulOffcutNm);

    public sealed record Caution(string Id, string Topic, string Text, string Basis);

    /// <summary>Tape, staples and the like; the quantity with its unit.</summary>
    public sealed record Accessory(string Name, string Quantity);
}
