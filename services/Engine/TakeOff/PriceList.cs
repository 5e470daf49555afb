namespace PostFrame.Engine.TakeOff;

/// <summary>
/// A shop's own prices. The engine holds none and fills no gap: what the list lacks is named.
/// </summary>
public sealed record PriceList
{
    /// <summary>The list's own name.</summary>
    public required string Id { get; init; }

    /// <summary>The list's own version.</summary>
    public required string Version { get; init; }

    /// <summary>ISO 4217 code.</summary>
    public required string Currency { get; init; }

    /// <summary>What a reader must know, such as that the figures are made up.</summary>
    public string? Note { get; init; }

    /// <summary>
    /// Money per unit, keyed by product code (per ft² bought, per board foot, bag or sheet for area
    /// goods) and by accessory id (per roll, per 1000 staples, …).
    /// </summary>
    public required IReadOnlyDictionary<string, decimal> UnitPrices { get; init; }

    /// <summary>Money per piece for cutting and bagging; null: none.</summary>
    public decimal? PerPiece { get; init; }
}
