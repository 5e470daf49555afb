using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.Heat;

/// <summary>A place in the clear section, from room air outwards.</summary>
/// <param name="Name">What lies between this node and the next; "outdoors" at the last.</param>
/// <param name="Temperature">Temperature at the node.</param>
/// <param name="ToNext">Resistance from this node to the next; zero at the last.</param>
/// <param name="SdToNextM">Vapour sd from this node to the next [m].</param>
public sealed record ProfileNode(
    string Name, Temperature Temperature, ThermalResistance ToNext, double SdToNextM);
