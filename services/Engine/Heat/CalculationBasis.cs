namespace PostFrame.Engine.Heat;

/// <summary>
/// The system of films, air spaces and bridging a result is computed by. The two differ most where
/// reflective products live, so a result uses one of them throughout and names it.
/// </summary>
public enum CalculationBasis
{
    /// <summary>ASHRAE Handbook—Fundamentals 2021, chapters 26 and 27: parallel path.</summary>
    Ashrae,

    /// <summary>ISO 6946:2017: the combined method, mean of the upper and lower limit.</summary>
    Iso6946,
}
