namespace PostFrame.CuttingWorker.Planning;

/// <summary>What has happened to one physical roll of a plan.</summary>
/// <param name="StockKey">The roll's stock type in the problem.</param>
/// <param name="Made">Good pieces cut from it so far, by item key.</param>
/// <param name="LostNm">Length spoiled, or missing from the label [nm]; 0 or more.</param>
/// <param name="Finished">True when nothing more will be cut from it.</param>
public sealed record RollProgress(
    string StockKey, IReadOnlyDictionary<string, int> Made, long LostNm = 0, bool Finished = false);
