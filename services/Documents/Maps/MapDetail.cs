namespace PostFrame.Documents.Maps;

/// <summary>How much of a map is drawn, and how heavily [pt].</summary>
internal sealed record MapDetail(
    bool HasText, double OutlinePt, double JointPt, double MostTextPt, double LeastTextPt)
{
    /// <summary>Between planes; room for their words where there are any.</summary>
    public double GapPt => HasText ? 19 : 2.5;

    /// <summary>The mark of the one strip drawn filled; none when null.</summary>
    public string? FilledMark { get; init; }

    /// <summary>Whether marks may stand below the plane's foot.</summary>
    public bool HasFootRoom { get; init; }

    /// <summary>A lap drawn nearer to its joint than this would run into it.</summary>
    public double LeastLapPt => 2;

    public static readonly MapDetail Overview = new(true, 1.2, 0.5, 9, 4.2);

    public static readonly MapDetail OnePlane = new(true, 1.6, 0.7, 16, 6) { HasFootRoom = true };

    /// <summary>The small map on a label: shapes only.</summary>
    public static readonly MapDetail Small = new(false, 0.9, 0.25, 0, 0);
}
