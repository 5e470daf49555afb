namespace PostFrame.Operations.Pipeline;

/// <summary>What a message said of a revision, reduced to what the board needs.</summary>
internal sealed record ToldOrder(
    string ShipTo, string Building, string Summary, DateOnly NeededBy, int Pieces,
    long ConfirmedAtUnixMs);

/// <summary>The cutting service's decision: rolls, or the reasons why it cannot be planned.</summary>
internal sealed record ToldPlan(long DecidedAtUnixMs, int? Rolls, IReadOnlyList<string> Reasons);

internal sealed record ToldLabels(long PrintedAtUnixMs, int Labels);
