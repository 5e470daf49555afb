using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.Heat;

/// <summary>One month outdoors.</summary>
/// <param name="Month">1 to 12.</param>
/// <param name="Mean">Mean air temperature.</param>
/// <param name="VapourPressurePa">Mean vapour pressure [Pa].</param>
public sealed record OutdoorMonth(int Month, Temperature Mean, double VapourPressurePa);
