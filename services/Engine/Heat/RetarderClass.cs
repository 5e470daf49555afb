namespace PostFrame.Engine.Heat;

/// <summary>Vapour retarder class by dry-cup permeance.</summary>
public enum RetarderClass
{
    /// <summary>At most 0.1 perm: a vapour barrier in daily speech.</summary>
    I,

    /// <summary>Above 0.1, at most 1.0 perm.</summary>
    II,

    /// <summary>Above 1.0, at most 10 perm.</summary>
    III,

    /// <summary>Above 10 perm: not a retarder.</summary>
    None,
}
