using PostFrame.Engine.Quantities;

namespace PostFrame.Problems;

/// <summary>A length read from text, or the rule the text breaks.</summary>
public readonly record struct LengthReading
{
    public Length Length { get; private init; }

    /// <summary>True when it was written in metric units.</summary>
    public bool IsMetric { get; private init; }

    /// <summary>Null when the text was read.</summary>
    public string? Rule { get; private init; }

    public string Message { get; private init; }

    public string? Limit { get; private init; }

    public string? Unit { get; private init; }

    internal static LengthReading Of(long nanometres, bool isMetric) => new()
    {
        Length = Length.FromNanometres(nanometres),
        IsMetric = isMetric,
        Message = "",
    };

    internal static LengthReading Broken(
        string rule, string message, string? limit = null, string? unit = null) =>
        new() { Rule = rule, Message = message, Limit = limit, Unit = unit };
}
