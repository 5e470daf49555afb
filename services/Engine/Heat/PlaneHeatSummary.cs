using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.Heat;

/// <summary>The product's own resistance beside what the plane delivers in each season.</summary>
/// <param name="NominalR">The product alone.</param>
/// <param name="Winter">Heat leaving the room.</param>
/// <param name="Summer">Heat entering the room.</param>
/// <param name="Basis">The one system both seasons are computed by.</param>
/// <param name="BasisTitle">That system's name for print.</param>
public sealed record PlaneHeatSummary(
    ThermalResistance NominalR,
    SeasonHeat Winter,
    SeasonHeat Summer,
    CalculationBasis Basis,
    string BasisTitle);
