using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.Buildings;

/// <summary>A stretch along a plane or building.</summary>
internal readonly record struct Interval(Length From, Length To)
{
    public Length Size => To - From;

    /// <summary>True when more than an edge is shared.</summary>
    public bool Overlaps(Interval other) => From < other.To && other.From < To;

    /// <summary>True when the other lies within, shared edges included.</summary>
    public bool Holds(Interval other) => From <= other.From && other.To <= To;

    public Interval ClippedTo(Interval other) => new(
        Length.Min(Length.Max(From, other.From), other.To),
        Length.Max(Length.Min(To, other.To), other.From));
}
