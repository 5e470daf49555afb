using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.Heat;

/// <summary>What a plane resists in one season, films and framing included.</summary>
/// <param name="AssemblyR">Resistance from room air to outdoor air.</param>
/// <param name="AssemblyU">Its inverse, the U-factor.</param>
/// <param name="Direction">The way the heat flows.</param>
/// <param name="Method">How the value was found, in words.</param>
public sealed record SeasonHeat(
    ThermalResistance AssemblyR,
    ThermalTransmittance AssemblyU,
    FlowDirection Direction,
    string Method);
