namespace PostFrame.CuttingWorker.Planning;

/// <summary>What it costs in material to have at most so many orders open at the bench.</summary>
public sealed record PoolingChoice
{
    /// <summary>Orders planned together: at most this many are ever open.</summary>
    public required int OpenAtOnce { get; init; }

    /// <summary>Total cost of the rolls bought.</summary>
    public required long Cost { get; init; }

    /// <summary>Rolls and remnants used.</summary>
    public required int Rolls { get; init; }

    /// <summary>
    /// Length used up that became neither a piece nor an offcut worth keeping [nm].
    /// </summary>
    public required long ScrapNm { get; init; }

    /// <summary>Offcuts left at the end that are worth keeping.</summary>
    public required int Offcuts { get; init; }

    /// <summary>No way of cutting all these orders costs less, however many are open.</summary>
    public required long LowerBoundCost { get; init; }
}
