using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.Heat;

/// <summary>The one plane, frame and weather every line of a comparison is rebuilt on.</summary>
public sealed record PlaneSite
{
    /// <summary>Slope from the horizontal [°]: 0 flat, 90 a wall.</summary>
    public required double SlopeDegrees { get; init; }

    /// <summary>Purlins or girts; null where none cross the plane.</summary>
    public Framing? Framing { get; init; }

    /// <summary>The system to compute by.</summary>
    public CalculationBasis Basis { get; init; } = CalculationBasis.Ashrae;

    /// <summary>Winter design: room and outdoor air.</summary>
    public required Conditions Winter { get; init; }

    /// <summary>Summer design: room and sol-air temperature.</summary>
    public required Conditions Summer { get; init; }

    /// <summary>Blanket left over a member [mm].</summary>
    public double SqueezedThicknessMm { get; init; } = 3;

    /// <summary>How its findings are worded.</summary>
    public UnitWords Words { get; init; } = UnitWords.Us;

    /// <summary>True for an upright plane.</summary>
    public bool IsWall => SlopeDegrees >= 90;
}
