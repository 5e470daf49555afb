namespace PostFrame.Engine.TakeOff;

/// <summary>How roof strips pass a break of slope.</summary>
public enum BreakLayout
{
    /// <summary>One piece from eave over the break to ridge.</summary>
    Continuous,

    /// <summary>Two pieces per side, lapped at the break.</summary>
    Split,
}
