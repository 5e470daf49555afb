namespace PostFrame.Documents;

/// <summary>
/// A hole in a plane's cladding [in], drawn crossed out with its word; of a panel in a roof
/// (<paramref name="IsPanel"/>), which nobody may step on, the word is told beside the drawing
/// where it does not fit.
/// </summary>
public sealed record MapOpening(
    string Word, double FromIn, double ToIn, double BottomIn, double TopIn, bool IsPanel = false);
