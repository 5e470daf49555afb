using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.Heat;

/// <summary>A point of the vapour profile.</summary>
/// <param name="Place">Where it lies.</param>
/// <param name="Temperature">Its temperature.</param>
/// <param name="SdM">sd from the room [m].</param>
/// <param name="SaturationPa">Saturation pressure there [Pa].</param>
/// <param name="PressurePa">Vapour pressure there [Pa].</param>
/// <param name="CondensationKgPerM2S">Condensing, negative evaporating [kg/(m²·s)].</param>
public sealed record VapourPoint(
    string Place,
    Temperature Temperature,
    double SdM,
    double SaturationPa,
    double PressurePa,
    double CondensationKgPerM2S)
{
    /// <summary>The least saturation pressure of all points of the same sd [Pa].</summary>
    public required double StationSaturationPa { get; init; }

    /// <summary>
    /// What the pressure is told from; null at both ends and where it is held at saturation.
    /// </summary>
    public required VapourLeg? Leg { get; init; }
}
