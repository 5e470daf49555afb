namespace PostFrame.Engine.Heat;

/// <summary>Something that was not said and is needed.</summary>
/// <param name="Fact">Its name in the request, such as "thickness".</param>
/// <param name="Question">What to ask.</param>
public sealed record MissingFact(string Fact, string Question);
