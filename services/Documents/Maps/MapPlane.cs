namespace PostFrame.Documents;

/// <summary>One covered plane of a <see cref="BuildingMap"/>, true to scale, in inches.</summary>
public sealed record MapPlane
{
    /// <summary>
    /// The plane's id, such as roof, roofA, sidewallB, endwall2, leanRoofA. A closing A, B, 1 or 2
    /// says on which side of the flat building it is drawn.
    /// </summary>
    public required string Id { get; init; }

    /// <summary>The words the crew reads, such as "Sidewall A".</summary>
    public required string Title { get; init; }

    /// <summary>
    /// Run and height in words, such as "40 ft 0 in × 10 ft 0 in"; empty prints none.
    /// </summary>
    public string SizeText { get; init; } = "";

    public required PlaneKind Kind { get; init; }

    /// <summary>
    /// The plane's edge as (across, up) points in order; not repeated at the end.
    /// </summary>
    public required IReadOnlyList<MapPoint> OutlineIn { get; init; }

    public IReadOnlyList<MapStrip> Strips { get; init; } = [];

    /// <summary>What covers a plane that nothing is cut for, such as spray foam.</summary>
    public string CoverText { get; init; } = "";

    /// <summary>
    /// Doors, windows, translucent panels: whatever the crew cuts out or goes round.
    /// </summary>
    public IReadOnlyList<MapOpening> Openings { get; init; } = [];

    /// <summary>Ridge, ridge vent, roof break, eave line within the plane.</summary>
    public IReadOnlyList<MapLine> Lines { get; init; } = [];

    /// <summary>
    /// Where the plane's run begins along the building [in]: a short lean-to's need not at
    /// endwall 1.
    /// </summary>
    public double StartIn { get; init; }

    /// <summary>
    /// Where the part of the plane on this sheet begins [in]; pieces that began before it are drawn
    /// without words.
    /// </summary>
    internal double PartFromIn { get; init; } = double.MinValue;

    internal bool IsCarriedOn(MapStrip strip) => strip.FromIn < PartFromIn - 0.01;

    /// <summary>How far a strip's tab laps over the next strip [in]; 0 draws no lap.</summary>
    public double LapIn { get; init; } = 3;
}
