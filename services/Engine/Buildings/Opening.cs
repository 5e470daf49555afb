using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.Buildings;

/// <summary>An opening in a wall, heights from the strip base.</summary>
internal sealed record Opening
{
    public required string Plane { get; init; }

    public required OpeningKind Kind { get; init; }

    public required Length Width { get; init; }

    /// <summary>Jamb to jamb along the wall; null while its place is not fixed.</summary>
    public required Interval? Along { get; init; }

    public required Length Bottom { get; init; }

    public required Length Top { get; init; }

    /// <summary>
    /// Wide openings are deducted strip by strip; the others are covered and cut out on site.
    /// </summary>
    /// <remarks>Source: takeoff.md 2.9 and 3, common practice.</remarks>
    public bool IsWide => Kind is OpeningKind.OverheadDoor or OpeningKind.SlidingDoor
        or OpeningKind.BifoldDoor or OpeningKind.FramedOpening;

    /// <summary>True when strips of this coverage wholly inside it are left out.</summary>
    public bool Deducts(Length coverage) =>
        IsWide || (Kind == OpeningKind.Window && Width > coverage * 2);

    /// <summary>Its area.</summary>
    public Area Area => Area.Of(Width, Top - Bottom);
}
