using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.Buildings;

/// <summary>A point in a plane: across from its start, up its slope or height.</summary>
public readonly record struct PlanePoint(Length Across, Length Up);
