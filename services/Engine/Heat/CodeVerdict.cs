namespace PostFrame.Engine.Heat;

/// <summary>
/// An assembly against a code row. Only a row that was read, for a known zone and U, can be met
/// outright.
/// </summary>
public enum CodeVerdict
{
    /// <summary>At or below the limit of a row read in a copy that names its edition.</summary>
    Meets,

    /// <summary>Above the limit of such a row.</summary>
    Misses,

    /// <summary>
    /// At or below a limit from memory or of unsure edition, or where the zone or U is unsure.
    /// </summary>
    MeetsIfRowIsRight,

    /// <summary>Above such a limit.</summary>
    MissesIfRowIsRight,

    /// <summary>Nothing conditions the building; the official says whether a row holds.</summary>
    MayBeExempt,

    /// <summary>No such row is held.</summary>
    NoRow,
}
