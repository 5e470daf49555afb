namespace PostFrame.Engine;

/// <summary>
/// One expected mistake in what was asked for, said so that a person can correct it.
/// </summary>
/// <param name="Path">JSON Pointer (RFC 6901) into the request, such as
/// <c>/building/openings/0/width</c>.</param>
/// <param name="Rule">Kebab-case id of the rule, stable for programs.</param>
/// <param name="Actual">What was given, as text; empty when nothing was.</param>
/// <param name="Limit">What is accepted, as text, or null when no single bound says it.</param>
/// <param name="Unit">
/// Unit of <paramref name="Actual"/> and <paramref name="Limit"/>, or null.
/// </param>
/// <param name="Message">One sentence for a person.</param>
public sealed record Violation(
    string Path, string Rule, string Actual, string? Limit, string? Unit, string Message);
