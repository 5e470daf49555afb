namespace PostFrame.Engine.TakeOff;

/// <summary>
/// What a roll's nominal width means; it decides what one strip covers of the run.
/// Source: takeoff.md 2.6, common practice.
/// </summary>
public enum StripConstruction
{
    /// <summary>Not in strips.</summary>
    None,

    /// <summary>
    /// Fibre of the nominal width, one tab of facing beyond it: covers the width.
    /// </summary>
    TabOutside,

    /// <summary>Fibre of the nominal width, a tab on each side: covers the width.</summary>
    TwoTabs,

    /// <summary>The lap lies inside the nominal width: covers the width less the lap.</summary>
    LapInside,

    /// <summary>A self-adhesive flange beyond the nominal width: covers the width.</summary>
    FlangeOutside,
}
