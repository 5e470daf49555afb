namespace PostFrame.Engine.Heat;

/// <summary>The season a heat flow is computed for.</summary>
public enum Season
{
    /// <summary>Heat leaves the room; outside film at the winter design wind.</summary>
    Winter,

    /// <summary>Heat enters the room; outside film at the summer design wind.</summary>
    Summer,
}
