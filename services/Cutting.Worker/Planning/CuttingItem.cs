namespace PostFrame.CuttingWorker.Planning;

/// <summary>One demand: so many pieces of one length.</summary>
/// <param name="Key">
/// The caller's own name for it (a piece id, an order line); unique in a problem.
/// </param>
/// <param name="LengthNm">
/// Cut length [nm], from 1 to <see cref="CuttingProblem.LongestNm"/>.
/// </param>
/// <param name="Demand">Pieces wanted, from 0 to 10,000,000.</param>
/// <param name="LotGroup">
/// Pieces of one group must all come from one lot (a plane whose colour must match); null when
/// free.
/// </param>
public sealed record CuttingItem(string Key, long LengthNm, int Demand, string? LotGroup = null);
