namespace PostFrame.Documents;

/// <summary>
/// A line across a plane [in]: the ridge of an over-the-ridge roof, a break, or a ridge vent
/// (<paramref name="IsVent"/>), which no blanket may cross.
/// </summary>
public sealed record MapLine(
    string Word, double FromIn, double ToIn, double UpIn, bool IsVent = false);
