namespace PostFrame.SizingApi.Climate;

/// <param name="Share">Part of the ZIP's population in this county, 0 to 1.</param>
public sealed record Zip(
    string Code, string CountyFips, double Share, bool Ambiguous, IReadOnlyList<string> Zones);
