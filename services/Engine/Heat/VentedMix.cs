namespace PostFrame.Engine.Heat;

/// <summary>What a slightly ventilated assembly lies between.</summary>
/// <param name="Share">Share of the open one: (openings − 500)/1000.</param>
/// <param name="Closed">With the space unventilated.</param>
/// <param name="Open">Without the space and all outside it, under a still-air film.</param>
public sealed record VentedMix(double Share, AssemblyHeat Closed, AssemblyHeat Open);
