using System.ComponentModel;
using System.Text.Json.Serialization;

namespace PostFrame.CuttingWorker.Plans;

/// <summary>How the pieces of an order are cut: which roll, in which order.</summary>
public sealed record PlanBody
{
    public required string OrderNumber { get; init; }

    public required int Revision { get; init; }

    public required DateOnly NeededBy { get; init; }

    [Description("planned, cutting (begun), cut (all), or waiting while it is planned anew.")]
    public required string State { get; init; }

    public required DateTime PlannedAt { get; init; }

    [Description("Counts the order's plans: the labels follow the newest.")]
    public required int PlanNumber { get; init; }

    [Description("Chosen so: each plane is finished before the next; a warning says where the "
        + "rolls, in their order, do not.")]
    public required bool OnePlaneAtATime { get; init; }

    public required int Pieces { get; init; }

    public required int PiecesCut { get; init; }

    public required int Rolls { get; init; }

    [Description("What the crew should know, such as a plane that comes from two lots.")]
    public required IReadOnlyList<string> Warnings { get; init; }

    public required IReadOnlyList<ProductPlanBody> Plans { get; init; }
}

/// <summary>The rolls of one product of one width.</summary>
public sealed record ProductPlanBody
{
    public required string Product { get; init; }

    [Description("What people call it, in the units of its width.")]
    public required string ProductTitle { get; init; }

    public required double WidthIn { get; init; }

    public required double WidthMm { get; init; }

    [Description("48 in, or 1200 mm where it is no whole number of inches.")]
    public required string WidthText { get; init; }

    [Description("Rolls of the whole plan; more than are listed when orders share it.")]
    public required int Rolls { get; init; }

    [Description("No plan can do with fewer rolls.")]
    public required int LowerBoundRolls { get; init; }

    [Description("Rolls above the lower bound. With proven it may be more than 0: short rolls and "
        + "offcuts used up are more rolls and less material.")]
    public required int GapRolls { get; init; }

    [Description("Different ways in which the listed rolls are cut: so often is the bench set up.")]
    public required int Patterns { get; init; }

    [Description("True when no plan can use less roll material.")]
    public required bool Proven { get; init; }

    [Description("How the plan was found.")]
    public required string Method { get; init; }

    [Description("Why no plan can be better than the bound.")]
    public required string Explanation { get; init; }

    public required MaterialBody Material { get; init; }

    public required IReadOnlyList<RollBody> RollList { get; init; }
}

/// <summary>Where the length of the listed rolls goes. Roll = cut + trim loss + offcuts.</summary>
public sealed record MaterialBody
{
    public required double RollIn { get; init; }

    public required double CutIn { get; init; }

    [Description("Squared ends, scrap and spoiled pieces.")]
    public required double TrimLossIn { get; init; }

    [Description("Left over and long enough to go back to the rack.")]
    public required double OffcutIn { get; init; }

    [Description("Trim loss in percent of the roll length.")]
    public required double TrimLossPercent { get; init; }
}

public sealed record RollBody
{
    [Description("Number in cutting order within the plan.")]
    public required int Roll { get; init; }

    [Description("Names the roll to the bench operations.")]
    public required long RollId { get; init; }

    [Description("The label on the rack; absent where any new roll of this length will do.")]
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? StockId { get; init; }

    [Description("The maker's lot, where it is known.")]
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Lot { get; init; }

    public required double RollLengthIn { get; init; }

    public required double RollLengthMm { get; init; }

    public required string RollLengthText { get; init; }

    public required double EndTrimIn { get; init; }

    public required IReadOnlyList<CutBody> Cuts { get; init; }

    public required double SpoiledIn { get; init; }

    public required double LeftOverIn { get; init; }

    public required double LeftOverMm { get; init; }

    public required string LeftOverText { get; init; }

    [Description("offcut goes back to the rack, scrap does not.")]
    public required string LeftOver { get; init; }

    public required bool Finished { get; init; }
}

public sealed record CutBody
{
    public required int Sequence { get; init; }

    public required string PieceId { get; init; }

    [Description("Another order's number where orders share the roll.")]
    public required string OrderNumber { get; init; }

    public required string Mark { get; init; }

    public required string Plane { get; init; }

    public required double CutIn { get; init; }

    public required double CutMm { get; init; }

    public required string CutText { get; init; }

    [Description("planned, cut, or voided (cut before the order changed).")]
    public required string State { get; init; }
}
