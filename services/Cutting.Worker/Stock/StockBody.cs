using System.ComponentModel;
using System.Text.Json.Serialization;
using PostFrame.CuttingWorker.Plans;

namespace PostFrame.CuttingWorker.Stock;

/// <summary>What lies on the rack, oldest first within a product and width.</summary>
public sealed record RackBody
{
    public required IReadOnlyList<StockBody> Stock { get; init; }

    [Description("There is more than is listed.")]
    public required bool HasMore { get; init; }
}

public sealed record StockBody
{
    [Description("As on the label of the roll or offcut.")]
    public required string StockId { get; init; }

    [Description("roll, or offcut: what a roll left and was long enough to keep.")]
    public required string Kind { get; init; }

    public required string Product { get; init; }

    public required double WidthIn { get; init; }

    public required double WidthMm { get; init; }

    public required double LengthIn { get; init; }

    public required double LengthMm { get; init; }

    public required string LengthText { get; init; }

    [Description("Lost once to square the end.")]
    public required double EndTrimIn { get; init; }

    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Lot { get; init; }

    [Description("The roll with a flaw that this is a sound part of.")]
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? PartOf { get; init; }

    [Description("Where on that roll the part begins, from its outer end.")]
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? PartFromText { get; init; }

    public required DateTime ReceivedAt { get; init; }

    [Description("The roll of a plan that has taken it; absent while it is free.")]
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public long? RollId { get; init; }

    internal static StockBody Of(StockRow row) => new()
    {
        StockId = row.StockId,
        Kind = row.Kind,
        Product = row.Product,
        WidthIn = Words.Inches(row.WidthNm),
        WidthMm = Words.Millimetres(row.WidthNm),
        LengthIn = Words.Inches(row.LengthNm),
        LengthMm = Words.Millimetres(row.LengthNm),
        LengthText = Words.Length(row.LengthNm),
        EndTrimIn = Words.Inches(row.EndTrimNm),
        Lot = row.Lot,
        PartOf = row.PartOf,
        PartFromText = row.StartsNm is { } starts ? Words.Length(starts) : null,
        ReceivedAt = DateTimeOffset.FromUnixTimeMilliseconds(row.ReceivedAt).UtcDateTime,
        RollId = row.RollId,
    };
}
