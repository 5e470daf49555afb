namespace PostFrame.Engine.Buildings;

/// <summary>A full-slope translucent roof panel.</summary>
internal sealed record TranslucentPanel(
    string Plane, Interval Along, TranslucentTreatment Treatment);
