namespace PostFrame.CuttingWorker.Planning;

/// <summary>Why a problem cannot be planned as it stands.</summary>
/// <param name="Code">
/// <c>too-long-for-any-roll</c>, <c>bad-length</c>, <c>bad-demand</c>, <c>bad-stock</c>,
/// <c>duplicate-key</c> or <c>too-large</c>.
/// </param>
/// <param name="Key">The item or stock type meant; null when it is the whole problem.</param>
/// <param name="Text">A sentence with the value, the bound and the unit.</param>
public sealed record PlanRefusal(string Code, string? Key, string Text);
