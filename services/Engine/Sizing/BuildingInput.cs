using PostFrame.Engine.Buildings;
using PostFrame.Engine.Quantities;

namespace PostFrame.Engine;

/// <summary>/building</summary>
public sealed record BuildingInput
{
    /// <summary>What people call the building.</summary>
    public string? Name { get; init; }

    /// <summary>Across the building, measured as <see cref="WidthBasis"/> says.</summary>
    public Length? Width { get; init; }

    /// <summary>Along the ridge, out to out of the endwall girts.</summary>
    public Length? Length { get; init; }

    /// <summary>Up to the eave line (or the bearing), from <see cref="EaveHeightDatum"/>.</summary>
    public Length? EaveHeight { get; init; }

    /// <summary>Default: outside of girts.</summary>
    public WidthBasis? WidthBasis { get; init; }

    /// <summary>Default: strip base.</summary>
    public EaveHeightDatum? EaveHeightDatum { get; init; }

    /// <summary>How far girts stand outside the posts; 0 when set between them.</summary>
    public Length? GirtThickness { get; init; }

    /// <summary>Depth of a post across the building; needed for a clear span.</summary>
    public Length? PostDepth { get; init; }

    /// <summary>
    /// Depth of truss or rafter at the outside of the bearing; for datum bearing.
    /// </summary>
    public Length? HeelHeight { get; init; }

    /// <summary>Purlin depth on top of the chord, 0 when recessed; for datum bearing.</summary>
    public Length? PurlinDepth { get; init; }

    /// <summary>How far the base of the wall strips lies above the datum. Default 0.</summary>
    public Length? StripBaseAboveDatum { get; init; }

    /// <summary>Masonry or concrete wall below the wall strips, above the strip base.</summary>
    public Length? StemWallHeight { get; init; }

    /// <summary>The main roof.</summary>
    public RoofInput? Roof { get; init; }

    /// <summary>Doors, windows and the like; order does not matter.</summary>
    public IReadOnlyList<OpeningInput>? Openings { get; init; }

    /// <summary>At most one on each side.</summary>
    public IReadOnlyList<LeanToInput>? LeanTos { get; init; }

    /// <summary>Wall across the building between an insulated and a cold part.</summary>
    public PartitionInput? Partition { get; init; }

    /// <summary>
    /// Rows of purlins across a roof slope and girts up a wall, for heat and fixings.
    /// </summary>
    public FramingInput? Framing { get; init; }
}

/// <summary>/building/roof. Which members count depends on the form.</summary>
public sealed record RoofInput
{
    /// <summary>Asked, never guessed.</summary>
    public RoofForm? Form { get; init; }

    /// <summary>Gable, monoslope.</summary>
    public Slope? Slope { get; init; }

    /// <summary>Offset ridge; double pitch with the break on side B.</summary>
    public Slope? SlopeA { get; init; }

    /// <summary>Offset ridge; double pitch with the break on side A.</summary>
    public Slope? SlopeB { get; init; }

    /// <summary>Horizontal distance of the ridge; offset ridge, double pitch.</summary>
    public Length? RidgeFromSidewallA { get; init; }

    /// <summary>
    /// Eave height of sidewall B, from the same datum; offset ridge, double pitch.
    /// </summary>
    public Length? EaveHeightB { get; init; }

    /// <summary>Peak height from the same datum, instead of a slope or as a check.</summary>
    public Length? RidgeHeight { get; init; }

    /// <summary>Gambrel, double pitch: the part that starts at the eave.</summary>
    public Slope? LowerSlope { get; init; }

    /// <summary>Gambrel, double pitch: horizontal run of the lower part.</summary>
    public Length? LowerRun { get; init; }

    /// <summary>Gambrel, double pitch: the part that ends at the ridge.</summary>
    public Slope? UpperSlope { get; init; }

    /// <summary>Gambrel: horizontal run of the upper part, as a check.</summary>
    public Length? UpperRun { get; init; }

    /// <summary>Gambrel: four equal chords in a half circle; no slopes or runs needed.</summary>
    public bool HalfOctagon { get; init; }

    /// <summary>Double pitch: the side that changes slope. Default A.</summary>
    public BrokenSide? BrokenSide { get; init; }

    /// <summary>Profile: the cross-section, heights from the strip base.</summary>
    public IReadOnlyList<ProfilePointInput>? Points { get; init; }

    /// <summary>Default closed.</summary>
    public RidgeKind? Ridge { get; init; }

    /// <summary>Start of a vent on part of the ridge, from endwall 1. Default 0.</summary>
    public Length? VentFrom { get; init; }

    /// <summary>End of a vent on part of the ridge, from endwall 1. Default the length.</summary>
    public Length? VentTo { get; init; }

    /// <summary>Total horizontal width of the ridge slot, instead of a set-back.</summary>
    public Length? VentSlotWidth { get; init; }

    /// <summary>Horizontal, from the eave line to the outside of the sub-fascia.</summary>
    public Length? EaveOverhang { get; init; }

    /// <summary>Horizontal, beyond each endwall.</summary>
    public Length? RakeOverhang { get; init; }

    /// <summary>True: blanket reaches over the overhangs to the fascia. Default false.</summary>
    public bool CoverOverhangs { get; init; }

    /// <summary>Translucent panels in the main roof.</summary>
    public IReadOnlyList<TranslucentPanelInput>? TranslucentPanels { get; init; }
}

/// <summary>/building/roof/points/n</summary>
public sealed record ProfilePointInput
{
    /// <summary>From sidewall A's girts; 0 first, the width last.</summary>
    public Length? Across { get; init; }

    /// <summary>Height of the purlin tops, from the same datum as the eave.</summary>
    public Length? Up { get; init; }
}

/// <summary>/building/roof/translucentPanels/n: a full-slope panel in the roof.</summary>
public sealed record TranslucentPanelInput
{
    /// <summary>roof, roofA or roofB. Default roof: both slopes.</summary>
    public string? Plane { get; init; }

    /// <summary>From endwall 1.</summary>
    public Length? FromStart { get; init; }

    /// <summary>Along the ridge.</summary>
    public Length? Width { get; init; }

    /// <summary>Default cover and cut.</summary>
    public TranslucentTreatment? Treatment { get; init; }
}

/// <summary>/building/openings/n</summary>
public sealed record OpeningInput
{
    /// <summary>Plane id of the wall.</summary>
    public string? Wall { get; init; }

    /// <summary>Decides whether strips inside it are deducted.</summary>
    public OpeningKind? Kind { get; init; }

    /// <summary>Framed width; null for an eave light: the whole wall.</summary>
    public Length? Width { get; init; }

    /// <summary>
    /// Framed height; of a window from its sill, of an eave light down from the eave.
    /// </summary>
    public Length? Height { get; init; }

    /// <summary>
    /// Near jamb from endwall 1 (sidewalls) or sidewall A, on a wall of a lean-to from where that
    /// wall starts; null: place not fixed.
    /// </summary>
    public Length? FromStart { get; init; }

    /// <summary>Bottom of the opening above the datum. Default 0.</summary>
    public Length? Sill { get; init; }
}

/// <summary>/building/leanTos/n</summary>
public sealed record LeanToInput
{
    /// <summary>The side it stands at.</summary>
    public BuildingSide? Side { get; init; }

    /// <summary>Horizontal, from the main girt line to the lean-to's outer girts.</summary>
    public Length? Width { get; init; }

    /// <summary>Falling away from the building.</summary>
    public Slope? Slope { get; init; }

    /// <summary>How far its roof meets the main wall below the main eave line. Default 0.</summary>
    public Length? Drop { get; init; }

    /// <summary>Where it starts along the building. Default 0.</summary>
    public Length? FromEndwall1 { get; init; }

    /// <summary>How long it is. Default to the far endwall.</summary>
    public Length? Length { get; init; }

    /// <summary>Asked, never guessed: what lies between it and the main building.</summary>
    public LeanToInside? Inside { get; init; }
}

/// <summary>/building/partition</summary>
public sealed record PartitionInput
{
    /// <summary>Distance from endwall 1.</summary>
    public Length? FromEndwall1 { get; init; }

    /// <summary>The endwall at the insulated part's end: 1 or 2. Default 1.</summary>
    public int? InsulatedEndwall { get; init; }
}

/// <summary>/building/framing</summary>
public sealed record FramingInput
{
    /// <summary>Default 24 in or 600 mm.</summary>
    public Length? PurlinSpacing { get; init; }

    /// <summary>Default 24 in or 600 mm.</summary>
    public Length? GirtSpacing { get; init; }

    /// <summary>Width of the face against the cladding. Default 1.5 in or 38 mm.</summary>
    public Length? MemberWidth { get; init; }

    /// <summary>Depth across the plane. Default 3.5 in or 89 mm.</summary>
    public Length? MemberDepth { get; init; }
}
