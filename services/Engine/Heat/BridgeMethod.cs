namespace PostFrame.Engine.Heat;

/// <summary>How sections with and without framing become one resistance.</summary>
public enum BridgeMethod
{
    /// <summary>Heat flows straight through each section: the upper limit R′.</summary>
    ParallelPath,

    /// <summary>Every layer boundary has one temperature: the lower limit R″.</summary>
    IsothermalPlanes,

    /// <summary>The mean of both limits. Source: ISO 6946:2017 clause 6.7.2.</summary>
    Combined,
}
