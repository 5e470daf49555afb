namespace PostFrame.Documents.Maps;

/// <summary>How much of a map is drawn, and how heavily [pt].</summary>
internal sealed record MapDetail(
    double OutlinePt, double JointPt, double MostTextPt, double LeastTextPt)
{
    /// <summary>Between planes: room for their words.</summary>
    public double GapPt => 22;

    /// <summary>A lap drawn nearer to its joint than this would run into it.</summary>
    public double LeastLapPt => 2;

    public static readonly MapDetail Overview = new(1.2, 0.5, 9, 5);

    public static readonly MapDetail OnePlane = new(1.6, 0.7, 16, 6);
}
