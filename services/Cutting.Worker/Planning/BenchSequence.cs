namespace PostFrame.CuttingWorker.Planning;

/// <summary>
/// In which order to cut the rolls so that few orders lie half finished at the bench.
/// </summary>
public sealed record BenchSequence
{
    /// <summary>Indexes of the rolls, first to last.</summary>
    public required IReadOnlyList<int> Rolls { get; init; }

    /// <summary>Orders in the order in which they are finished.</summary>
    public required IReadOnlyList<string> Closing { get; init; }

    /// <summary>The most orders open at once: open from their first roll to their last, both
    /// included.</summary>
    public required int MostOpen { get; init; }

    /// <summary>No sequence keeps fewer open.</summary>
    public required int LowerBound { get; init; }

    /// <summary>True when no sequence can be better.</summary>
    public bool Proven => MostOpen == LowerBound;
}
