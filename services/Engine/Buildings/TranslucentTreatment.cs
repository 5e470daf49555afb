namespace PostFrame.Engine.Buildings;

/// <summary>How blanket passes a translucent roof panel.</summary>
public enum TranslucentTreatment
{
    /// <summary>Strips run across it and are cut out on site; no deduction.</summary>
    CoverAndCut,

    /// <summary>The run ends at the panel and starts again beyond it.</summary>
    SplitRun,
}
