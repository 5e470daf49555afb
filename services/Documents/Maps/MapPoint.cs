namespace PostFrame.Documents;

/// <summary>A point in a plane's own frame [in].</summary>
public readonly record struct MapPoint(double AcrossIn, double UpIn);
