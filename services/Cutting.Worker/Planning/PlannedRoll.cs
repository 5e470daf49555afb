namespace PostFrame.CuttingWorker.Planning;

/// <summary>A roll, or several cut exactly alike.</summary>
public sealed record PlannedRoll
{
    /// <summary>The stock type's key in the problem.</summary>
    public required string StockKey { get; init; }

    /// <summary>How many rolls are cut this way; 1 or more.</summary>
    public required int Times { get; init; }

    /// <summary>The cuts of each roll, longest first.</summary>
    public required IReadOnlyList<PlannedCut> Cuts { get; init; }

    /// <summary>What each roll leaves after end trim and cuts [nm].</summary>
    public required long LeftOverNm { get; init; }

    /// <summary>True when the left-over is long enough to go back to the rack.</summary>
    public required bool LeavesOffcut { get; init; }
}
