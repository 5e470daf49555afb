namespace PostFrame.CuttingWorker.Planning;

/// <summary>One order's pieces of one product and width.</summary>
/// <param name="Key">The order.</param>
/// <param name="NeededBy">Rank by needed-by date: the lower, the sooner.</param>
/// <param name="Items">Its pieces, with keys unique over all orders.</param>
public sealed record BenchOrder(string Key, int NeededBy, IReadOnlyList<CuttingItem> Items);
