using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.Heat;

/// <summary>
/// One plane as it is built most often: steel outside, the product where its kind usually lies, the
/// product's room face open to the room, no air space counted.
/// </summary>
public sealed record PlaneConstruction
{
    /// <summary>Slope of the plane from the horizontal [°]: 0 flat, 90 a wall.</summary>
    public required double SlopeDegrees { get; init; }

    /// <summary>The product's own resistance, without films, framing and air spaces.</summary>
    public required ThermalResistance NominalR { get; init; }

    /// <summary>The product's thickness between the members [mm], above 0.</summary>
    public required double ThicknessMm { get; init; }

    /// <summary>
    /// Emittance of the face the room sees, 0.01 to 1 (bright foil 0.05, white 0.9).
    /// </summary>
    public required double RoomFaceEmittance { get; init; }

    /// <summary>
    /// What the product is, which tells where it usually lies: blanket and sheet over the members,
    /// batt and foam between them, board unbroken under them.
    /// </summary>
    public MaterialKind Kind { get; init; } = MaterialKind.Blanket;

    /// <summary>
    /// The members the product lies over, between or under; null when nothing crosses the plane.
    /// </summary>
    public Framing? Framing { get; init; }

    /// <summary>
    /// What is left of the product's thickness over a member [mm]. The default of 3 lies in the
    /// 2 to 5 mm of blanket under screwed steel (common practice, no source).
    /// </summary>
    public double SqueezedThicknessMm { get; init; } = 3;

    /// <summary>The units the summary's words are in; they change no figure.</summary>
    public UnitWords Words { get; init; } = UnitWords.Us;

    /// <summary>The system to compute by.</summary>
    public CalculationBasis Basis { get; init; } = CalculationBasis.Ashrae;
}
