using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.Buildings;

/// <summary>One segment of a roof slope: horizontal run, slope and length along it.</summary>
internal sealed record SlopePart(Length Run, Slope Slope, Length Along);
