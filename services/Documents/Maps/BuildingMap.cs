namespace PostFrame.Documents;

/// <summary>
/// A building laid out flat, ready to draw: every covered plane with its strips. Plain data; all
/// coordinates are inches in the plane's own frame: across the run from strip 1, up from the
/// plane's lower edge (along the slope on a roof).
/// </summary>
public sealed record BuildingMap
{
    /// <summary>The building's own name, or the order's.</summary>
    public required string Title { get; init; }

    /// <summary>One line below the title, such as "30 × 40 × 10 ft, gable 4:12".</summary>
    public string Summary { get; init; } = "";

    /// <summary>Whether the scale bar counts metres, as a metric job's does, or feet.</summary>
    public bool IsMetric { get; init; }

    /// <summary>What the crew must know beside the drawing, such as doors not placed yet.</summary>
    public IReadOnlyList<string> Notes { get; init; } = [];

    /// <summary>
    /// The planes to draw. Where several planes lie on the same side of the building (roof, wall,
    /// lean-to roof, lean-to wall), they are listed from the ridge outward.
    /// </summary>
    public required IReadOnlyList<MapPlane> Planes { get; init; }
}
