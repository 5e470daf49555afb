namespace PostFrame.CuttingWorker.Planning;

/// <summary>One piece as the bench sees it.</summary>
/// <param name="Key">The piece; unique.</param>
/// <param name="LengthNm">
/// Cut length [nm]. Pieces of one length, from rolls of one lot, may change places.
/// </param>
/// <param name="Order">The order it belongs to.</param>
/// <param name="Plane">The plane of the building it covers.</param>
/// <param name="Lot">The lot of the roll it is planned on; null when lots do not matter.</param>
public sealed record BenchPiece(
    string Key, long LengthNm, string Order, string Plane, string? Lot = null);
