namespace PostFrame.Documents;

/// <summary>A hole in a plane's cladding [in], drawn crossed out with its word.</summary>
public sealed record MapOpening(
    string Word, double FromIn, double ToIn, double BottomIn, double TopIn);
