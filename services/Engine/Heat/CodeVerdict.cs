namespace PostFrame.Engine.Heat;

/// <summary>An assembly against a code row. Only a row that was read can be met outright.</summary>
public enum CodeVerdict
{
    /// <summary>At or below the limit of a row read in a copy that names its edition.</summary>
    Meets,

    /// <summary>Above the limit of such a row.</summary>
    Misses,

    /// <summary>At or below a limit from memory, or of unsure edition: look it up.</summary>
    MeetsIfRowIsRight,

    /// <summary>Above a limit from memory, or of unsure edition: look it up.</summary>
    MissesIfRowIsRight,

    /// <summary>No such row is held.</summary>
    NoRow,
}
