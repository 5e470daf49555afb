namespace PostFrame.Engine.Heat;

/// <summary>What a claimed R turns out to be.</summary>
public enum ClaimOutcome
{
    /// <summary>The material, or the system as stated with heat flowing out, reaches it.</summary>
    Supported,

    /// <summary>Only the whole system with heat flowing down reaches it.</summary>
    SummerOnlySystemValue,

    /// <summary>An enclosed air space would be needed that is not there or not stated.</summary>
    NeedsAirSpaceNotThere,

    /// <summary>Neither the material nor any usual air space beside it reaches it.</summary>
    NotReachableByMaterial,
}
