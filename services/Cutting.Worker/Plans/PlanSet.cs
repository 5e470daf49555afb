using System.Text.Json.Serialization;

namespace PostFrame.CuttingWorker.Plans;

/// <summary>
/// What planning pieces came to: one plan per product and width, or the reasons why there is none.
/// Never both.
/// </summary>
public sealed record PlanSet
{
    public required IReadOnlyList<GroupPlan> Plans { get; init; }

    public required IReadOnlyList<Refusal> Refusals { get; init; }

    public int RollCount => Plans.Sum(plan => plan.Rolls.Count);
}

/// <summary>The plan for one product of one width.</summary>
public sealed record GroupPlan
{
    public required string Product { get; init; }

    public required long WidthNm { get; init; }

    public required int LowerBoundRolls { get; init; }

    public required bool Proven { get; init; }

    public required string Method { get; init; }

    public required string Explanation { get; init; }

    public required IReadOnlyList<RollPlan> Rolls { get; init; }
}

/// <summary>One roll and what is cut from it, in order.</summary>
public sealed record RollPlan
{
    /// <summary>The rack's id of the roll; null when any new roll of this length will do.</summary>
    public required string? StockId { get; init; }

    /// <summary>The id of the begun roll this goes on with; null for a whole one.</summary>
    public long? GoesOnWith { get; init; }

    /// <summary>The lot of a roll from the rack; null for a new one.</summary>
    public string? Lot { get; init; }

    public required long RollLengthNm { get; init; }

    public required long EndTrimNm { get; init; }

    public required IReadOnlyList<string> PieceIds { get; init; }

    public required long LeftOverNm { get; init; }

    public required bool LeavesOffcut { get; init; }
}

/// <summary>One reason why pieces cannot be planned.</summary>
public sealed record Refusal(string Code, string? PieceId, string? Mark, string Text)
{
    public const string TooLong = "piece-longer-than-any-roll";
    public const string NoRoll = "no-roll-for-product";
    public const string PlanRefused = "plan-refused";

    /// <summary>The pieces it concerns where it names none; null when it concerns all.</summary>
    [JsonIgnore]
    public (string Product, long WidthNm)? Group { get; init; }
}

/// <summary>How the foreman wants orders cut.</summary>
/// <param name="Orders">Planned together, in the order they are needed.</param>
/// <param name="OnePlaneAtATime">
/// Each plane of the one order is finished before the next, whatever that costs in rolls.
/// </param>
public sealed record CuttingWish(IReadOnlyList<string> Orders, bool OnePlaneAtATime = false);

/// <summary>A piece that still has to be cut.</summary>
public sealed record OpenPiece
{
    public required string PieceId { get; init; }

    public required string OrderNumber { get; init; }

    public required string Mark { get; init; }

    /// <summary>Its plane, where all strips are seen side by side.</summary>
    public string Plane { get; init; } = "";

    public required string Product { get; init; }

    public required long WidthNm { get; init; }

    public required long CutNm { get; init; }
}

/// <summary>A length of one product and width that pieces can be cut from.</summary>
public sealed record RollAtHand
{
    public required string Product { get; init; }

    public required long WidthNm { get; init; }

    public required long LengthNm { get; init; }

    /// <summary>
    /// Lost to square the end [nm]; an offcut and a begun roll are square already.
    /// </summary>
    public required long EndTrimNm { get; init; }

    /// <summary>The rack's id; null for a kind of roll that can always be had.</summary>
    public string? StockId { get; init; }

    /// <summary>The roll's id when it is one already begun.</summary>
    public long? Begun { get; init; }

    public bool IsOffcut { get; init; }

    public string? Lot { get; init; }

    /// <summary>Rank by age; of two that cost the same the older is used first.</summary>
    public int AgeDays { get; init; }
}
