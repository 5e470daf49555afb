namespace PostFrame.Documents;

/// <summary>The labels of one revision of an order, in the order they are cut.</summary>
public sealed record LabelSet
{
    public required string OrderNumber { get; init; }

    public required int Revision { get; init; }

    public required string ShipTo { get; init; }

    /// <summary>Whether weights stand in kilograms, as a metric job's do, or in pounds.</summary>
    public bool IsMetric { get; init; }

    /// <summary>
    /// The building drawn small on every label; a label's strip is found by its mark.
    /// </summary>
    public required BuildingMap Map { get; init; }

    public required IReadOnlyList<PieceLabel> Labels { get; init; }

    /// <summary>
    /// The label printer's dots [per mm]: 8 for a 203 dpi head, 11.811 for 300 dpi. Bars and
    /// squares are whole dots wide.
    /// </summary>
    public double PrinterDotsPerMm { get; init; } = 8;
}
