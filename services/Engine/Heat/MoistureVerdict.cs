namespace PostFrame.Engine.Heat;

/// <summary>What a year of moisture amounts to.</summary>
public enum MoistureVerdict
{
    /// <summary>Nothing condenses inside the assembly.</summary>
    Dry,

    /// <summary>What condenses in the cold season dries within the year.</summary>
    WetsAndDries,

    /// <summary>A few grams a square metre are left when the next cold season begins.</summary>
    NearlyDries,

    /// <summary>Water is left when the next cold season begins.</summary>
    Accumulates,
}
