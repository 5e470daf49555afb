namespace PostFrame.Engine.Heat;

/// <summary>One input of a working step.</summary>
/// <param name="Symbol">As in the formula.</param>
/// <param name="Value">Its value.</param>
/// <param name="Unit">Its unit; empty for a ratio.</param>
public sealed record WorkingInput(string Symbol, double Value, string Unit);
