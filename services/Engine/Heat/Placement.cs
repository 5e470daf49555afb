namespace PostFrame.Engine.Heat;

/// <summary>Where the insulation lies against purlins or girts.</summary>
public enum Placement
{
    /// <summary>Over the members under the cladding, squeezed at each.</summary>
    OverFraming,

    /// <summary>Between the members, which cross it.</summary>
    BetweenFraming,

    /// <summary>Across the room side of the members, not squeezed.</summary>
    UnderFraming,
}
