namespace PostFrame.CuttingWorker.Planning;

/// <summary>Pieces of one item cut next to each other from a roll.</summary>
/// <param name="ItemKey">The item's key in the problem.</param>
/// <param name="LengthNm">Length of each [nm].</param>
/// <param name="Count">How many from each roll.</param>
public sealed record PlannedCut(string ItemKey, long LengthNm, int Count);
