namespace PostFrame.Operations.Pipeline;

/// <summary>An order as the board's table keeps it.</summary>
internal sealed record OrderRow
{
    public const string Confirmed = "confirmed";
    public const string Planned = "planned";
    public const string Labelled = "labelled";
    public const string Parked = "parked";

    /// <summary>Larger than any instant in use [ms since 1970]: finished orders sort behind, the
    /// newest first.</summary>
    public const long AfterAllWaiting = 1L << 52;

    public required string OrderNumber { get; init; }

    public required long Revision { get; init; }

    public required string ShipTo { get; init; }

    public required string Building { get; init; }

    public required string Summary { get; init; }

    public required string NeededBy { get; init; }

    public required long Pieces { get; init; }

    public required long? Rolls { get; init; }

    public required long? Labels { get; init; }

    public required string State { get; init; }

    /// <summary>A list in JSON.</summary>
    public required string Reasons { get; init; }

    public required long ConfirmedAt { get; init; }

    /// <summary>When cutting planned or refused it.</summary>
    public required long? DecidedAt { get; init; }

    public required long? FinishedAt { get; init; }

    public required long Place { get; init; }

    public long Change { get; init; }
}
