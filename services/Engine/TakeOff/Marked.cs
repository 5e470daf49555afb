namespace PostFrame.Engine.TakeOff;

/// <summary>A product figure with where it comes from.</summary>
/// <param name="Value">The figure, in the unit its property names.</param>
/// <param name="Mark">P published, C common practice, M from memory, D derived.</param>
/// <param name="Source">What was read or why the figure is fair.</param>
public sealed record Marked<T>(T Value, string Mark, string Source);
