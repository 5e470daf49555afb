namespace PostFrame.CuttingWorker.Planning;

/// <summary>One kind of roll, or one remnant, that pieces can be cut from.</summary>
public sealed record StockType
{
    /// <summary>The caller's own name for it; unique in a problem.</summary>
    public required string Key { get; init; }

    /// <summary>Labelled length [nm], from 1 to <see cref="CuttingProblem.LongestNm"/>.</summary>
    public required long LengthNm { get; init; }

    /// <summary>Lost once per roll used, to square its end [nm]; from 0 to the length.</summary>
    public long EndTrimNm { get; init; }

    /// <summary>Rolls at hand; null when more can always be had.</summary>
    public int? Count { get; init; }

    /// <summary>
    /// What using one roll costs, in whatever one unit the caller chose (cents, rolls, millimetres
    /// of material); from 0 to 10¹². Total cost is what a plan makes smallest.
    /// </summary>
    public long Cost { get; init; } = 1;

    /// <summary>True for an offcut already in the rack.</summary>
    public bool IsRemnant { get; init; }

    /// <summary>
    /// The lot (dye or production batch) it belongs to; null when lots do not matter.
    /// </summary>
    public string? Lot { get; init; }

    /// <summary>
    /// Age rank [days in stock]; of two that cost the same, the older is used first.
    /// </summary>
    public int AgeDays { get; init; }

    /// <summary>What can be cut from one roll [nm].</summary>
    public long UsableNm => LengthNm - EndTrimNm;
}
