namespace PostFrame.Engine.TakeOff;

/// <summary>What becomes of a last strip that would cover less than 6 in.</summary>
public enum LastStrip
{
    /// <summary>Make it, full width.</summary>
    Make,

    /// <summary>Use one wider strip before it instead.</summary>
    Wider,

    /// <summary>
    /// Add another strip-width of wrap: make it and use the surplus at both ends.
    /// </summary>
    Wrap,
}
