namespace PostFrame.Engine.Heat;

/// <summary>A change that was computed, and what comes of it.</summary>
/// <param name="Id">Kebab-case name of the change.</param>
/// <param name="Text">In words, with amounts.</param>
/// <param name="Cures">True where the year is then dry, or dries again.</param>
public sealed record MoistureCure(string Id, string Text, bool Cures);
