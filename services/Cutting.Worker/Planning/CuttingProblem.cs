namespace PostFrame.CuttingWorker.Planning;

/// <summary>
/// What is to be cut and what from. One product of one width: widths are never mixed.
/// </summary>
public sealed record CuttingProblem
{
    /// <summary>The longest length accepted [nm]: 1,000 km.</summary>
    public const long LongestNm = 1_000_000_000_000_000;

    /// <summary>The demand.</summary>
    public required IReadOnlyList<CuttingItem> Items { get; init; }

    /// <summary>The rolls and remnants.</summary>
    public required IReadOnlyList<StockType> Stock { get; init; }

    /// <summary>
    /// Left-over at least this long goes back to the rack as an offcut [nm]; 0 or more.
    /// </summary>
    public long MinUsefulOffcutNm { get; init; } = long.MaxValue;

    /// <summary>
    /// How a total of <see cref="StockType.Cost"/> reads in an explanation, with its unit.
    /// </summary>
    public Func<long, string> CostText { get; init; } = Wording.Cost;
}
