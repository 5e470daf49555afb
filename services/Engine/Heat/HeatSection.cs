using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.Heat;

/// <summary>One of the sections framing cuts an assembly into.</summary>
/// <param name="Share">Its share of the area, 0 to 1.</param>
/// <param name="Parts">Films and layers from the room outwards [m²·K/W].</param>
public sealed record HeatSection(double Share, IReadOnlyList<WorkingInput> Parts)
{
    /// <summary>The parts in series.</summary>
    public ThermalResistance R => ThermalResistance.FromSi(Parts.Sum(part => part.Value));
}
