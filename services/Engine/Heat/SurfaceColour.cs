namespace PostFrame.Engine.Heat;

/// <summary>How much sun the outside takes up. Paint colour, not emittance.</summary>
public enum SurfaceColour
{
    /// <summary>White and light colours.</summary>
    Light,

    /// <summary>Between light and dark.</summary>
    Medium,

    /// <summary>Dark colours.</summary>
    Dark,
}
