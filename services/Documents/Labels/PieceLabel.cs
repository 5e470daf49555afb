namespace PostFrame.Documents;

/// <summary>
/// What stands on one piece's label. Texts are printed as given, cleaned and fitted.
/// </summary>
public sealed record PieceLabel
{
    /// <summary>What the scanner reads; printable ASCII, at most 20 characters.</summary>
    public required string PieceId { get; init; }

    /// <summary>What the crew reads: plane and strip, such as "E1-03H".</summary>
    public required string Mark { get; init; }

    public required PlaneKind Kind { get; init; }

    /// <summary>The plane's words, such as "Endwall 1".</summary>
    public required string PlaneTitle { get; init; }

    /// <summary>Such as "strip 3 of 8, header above the opening".</summary>
    public required string StripText { get; init; }

    /// <summary>Cut length as the crew measures, such as "33 ft 0 in".</summary>
    public required string CutText { get; init; }

    /// <summary>The same length in other units, such as "396 in · 10058 mm"; of a metric job in
    /// another metric one.</summary>
    public required string CutAlsoText { get; init; }

    /// <summary>Nominal width, such as "48 in".</summary>
    public required string WidthText { get; init; }

    /// <summary>The same width in another unit, metric if the job is.</summary>
    public required string WidthAlsoText { get; init; }

    /// <summary>The product's words with its nominal R.</summary>
    public required string ProductText { get; init; }

    /// <summary>Which face goes where.</summary>
    public required string FacingText { get; init; }

    /// <summary>Mass [lb]; above 50 lb the label shows two people.</summary>
    public required double WeightLb { get; init; }
}
