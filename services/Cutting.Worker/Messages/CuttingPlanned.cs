using System.Text.Json.Serialization;
using MassTransit;

namespace PostFrame.CuttingWorker.Messages;

/// <summary>Every piece of a revision has its place on a roll, and the plan was checked.</summary>
[MessageUrn("cutting-planned.v1")]
[EntityName("cutting-planned.v1")]
public sealed record CuttingPlanned
{
    public required Guid Id { get; init; }

    public required string Source { get; init; }

    public required string Type { get; init; }

    public required string Subject { get; init; }

    public required DateTimeOffset Time { get; init; }

    public required Planned Data { get; init; }

    public sealed record Planned
    {
        public required string OrderNumber { get; init; }

        public required int Revision { get; init; }

        public required DateTimeOffset PlannedAt { get; init; }

        /// <summary>Counts the order's plans and refusals; the highest holds.</summary>
        public int? PlanNumber { get; init; }

        public required int PieceCount { get; init; }

        public required int RollCount { get; init; }

        public required IReadOnlyList<Plan> Plans { get; init; }
    }

    /// <summary>One product of one width.</summary>
    public sealed record Plan
    {
        public required string Product { get; init; }

        public required long WidthNm { get; init; }

        public required int LowerBoundRolls { get; init; }

        public required bool Proven { get; init; }

        public required string Method { get; init; }

        public required IReadOnlyList<Roll> Rolls { get; init; }
    }

    public sealed record Roll
    {
        [JsonPropertyName("roll")]
        public required int Number { get; init; }

        public required long RollLengthNm { get; init; }

        public required long EndTrimNm { get; init; }

        /// <summary>The label on the rack; null where any new roll will do.</summary>
        public string? StockId { get; init; }

        public string? Lot { get; init; }

        public required IReadOnlyList<Cut> Cuts { get; init; }

        public required long LeftOverNm { get; init; }

        /// <summary><c>offcut</c> goes back to the rack, <c>scrap</c> does not.</summary>
        public required string LeftOver { get; init; }
    }

    public sealed record Cut
    {
        public required int Sequence { get; init; }

        public required string PieceId { get; init; }

        public required string Mark { get; init; }

        public required long CutNm { get; init; }
    }
}
