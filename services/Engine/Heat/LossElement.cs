using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.Heat;

/// <summary>A part of the envelope that passes heat.</summary>
/// <param name="Name">What it is.</param>
/// <param name="AreaM2">Its area [m²], 0 and above.</param>
/// <param name="U">Its U-factor, films and framing included.</param>
public sealed record LossElement(string Name, double AreaM2, ThermalTransmittance U);
