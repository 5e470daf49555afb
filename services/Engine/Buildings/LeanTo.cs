using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.Buildings;

/// <summary>A lean-to along a sidewall or a part of it.</summary>
internal sealed record LeanTo
{
    public required BuildingSide Side { get; init; }

    /// <summary>From where to where it stands along the building.</summary>
    public required Interval Along { get; init; }

    /// <summary>True when it reaches endwall 1.</summary>
    public required bool AtEndwall1 { get; init; }

    /// <summary>True when it reaches endwall 2.</summary>
    public required bool AtEndwall2 { get; init; }

    public required Length Width { get; init; }

    public required Slope Slope { get; init; }

    public required Length Drop { get; init; }

    public required LeanToInside Inside { get; init; }

    /// <summary>Where its roof meets the main wall, above the strip base.</summary>
    public required Length Top { get; init; }

    /// <summary>Its own eave line, above the strip base.</summary>
    public required Length LowEave { get; init; }

    /// <summary>True when it stands along the whole sidewall.</summary>
    public bool IsWholeLength => AtEndwall1 && AtEndwall2;

    /// <summary>Its roof continues the main eave and no wall lies between.</summary>
    public bool IsFlushAndOpen => Inside == LeanToInside.Open && Drop == Length.Zero;

    /// <summary>
    /// True when one endwall runs from its outer girt over the main building; a step or a set-back
    /// makes separate runs.
    /// </summary>
    public bool SharesEndwall(int end) =>
        IsFlushAndOpen && (end == 1 ? AtEndwall1 : AtEndwall2);
}
