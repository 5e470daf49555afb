namespace PostFrame.Engine.Buildings;

/// <summary>What lies between a lean-to and the main building.</summary>
public enum LeanToInside
{
    /// <summary>One room: no wall between; the lean-to is insulated with the main part.</summary>
    Open,

    /// <summary>Outdoors as far as heat goes: the main sidewall is the envelope.</summary>
    Cold,

    /// <summary>
    /// A room of its own: both the wall between and the lean-to may be insulated.
    /// </summary>
    Separate,
}
