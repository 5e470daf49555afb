namespace PostFrame.SizingApi.Sizings;

/// <summary>A value nobody stated and we used.</summary>
public sealed record AssumptionLine
{
    public required string Id { get; init; }

    public required string Text { get; init; }

    public required string Value { get; init; }

    public string? Unit { get; init; }

    public required string Mark { get; init; }
}

public sealed record WarningLine
{
    public required string Id { get; init; }

    public required string Text { get; init; }

    public string? Plane { get; init; }
}

public sealed record CautionLine
{
    public required string Id { get; init; }

    public required string Topic { get; init; }

    public required string Text { get; init; }

    public required string Basis { get; init; }

    public required string Source { get; init; }
}

public sealed record StockLine
{
    public required string Product { get; init; }

    public required decimal WidthIn { get; init; }

    public required decimal WidthMm { get; init; }

    public required decimal RollLengthIn { get; init; }

    public required decimal RollLengthMm { get; init; }

    public required decimal EndTrimIn { get; init; }

    public required decimal EndTrimMm { get; init; }

    public required decimal MinUsefulOffcutIn { get; init; }

    public required decimal MinUsefulOffcutMm { get; init; }
}

/// <summary>A plane left without insulation.</summary>
public sealed record UncoveredLine
{
    public required string Plane { get; init; }

    public required string Title { get; init; }

    public required string Kind { get; init; }

    public required IReadOnlyList<decimal[]> OutlineIn { get; init; }
}

public sealed record AreaGoodsLine
{
    public required string Product { get; init; }

    public required string Title { get; init; }

    public required IReadOnlyList<string> Planes { get; init; }

    public required double NetFt2 { get; init; }

    public required decimal ThicknessIn { get; init; }

    public required double Quantity { get; init; }

    /// <summary>Board feet (m³ where the job is metric), bags or sheets.</summary>
    public required string Unit { get; init; }

    public required string How { get; init; }

    public required string Mark { get; init; }
}

public sealed record AccessoryLine
{
    public required string Id { get; init; }

    public required string Title { get; init; }

    /// <summary>Before rounding to what can be bought.</summary>
    public required double Needed { get; init; }

    public required string NeededUnit { get; init; }

    public required int Quantity { get; init; }

    public required string Unit { get; init; }

    public required string How { get; init; }

    public required string Mark { get; init; }
}

/// <summary>How the pieces travel.</summary>
public sealed record PackingLine
{
    public required IReadOnlyList<BagLine> Bags { get; init; }

    public required int Pallets { get; init; }

    public required IReadOnlyList<PalletLine> PalletLoads { get; init; }

    public required double FreightFt3 { get; init; }

    public required double TrailerFt { get; init; }

    public required double WeightLb { get; init; }

    public required string How { get; init; }

    public required string Mark { get; init; }
}

/// <summary>The bags on one pallet, by number.</summary>
public sealed record PalletLine
{
    public required int Number { get; init; }

    public required IReadOnlyList<int> Bags { get; init; }

    public required double WeightLb { get; init; }
}

public sealed record BagLine
{
    public required int Number { get; init; }

    public required IReadOnlyList<string> Marks { get; init; }

    public required decimal CoilDiameterIn { get; init; }

    public required decimal WidthIn { get; init; }

    public required double WeightLb { get; init; }

    public required string Handling { get; init; }
}

public sealed record SavingLine
{
    public required string Opening { get; init; }

    public required string Plane { get; init; }

    public required int Strips { get; init; }

    public required decimal LengthIn { get; init; }

    public required double GrossFt2 { get; init; }

    public required string Text { get; init; }
}

public sealed record ChoiceLine
{
    public required string Plane { get; init; }

    public required string Choice { get; init; }

    public required bool Taken { get; init; }

    public required decimal CutLengthIn { get; init; }

    public required double GrossFt2 { get; init; }

    public required string Text { get; init; }
}

/// <summary>The job by the shop's own price list.</summary>
public sealed record PriceBlock
{
    public required string ListId { get; init; }

    public required string ListVersion { get; init; }

    public required string Currency { get; init; }

    public string? Note { get; init; }

    public required IReadOnlyList<PriceLineBody> Lines { get; init; }

    public required decimal Total { get; init; }

    /// <summary>What the list has no price for.</summary>
    public required IReadOnlyList<string> NotPriced { get; init; }
}

public sealed record PriceLineBody(
    string Item, decimal Quantity, string Unit, decimal UnitPrice, decimal Amount);
