using System.ComponentModel;

namespace PostFrame.Operations.Pipeline;

/// <summary>Where the orders stand: those that wait, the longest first; then the
/// finished.</summary>
public sealed record PipelineBody
{
    public required IReadOnlyList<TrackedOrder> Orders { get; init; }

    [Description("Send as after for the orders behind these; null when there are none.")]
    public string? Next { get; init; }

    public required PipelineSummary Summary { get; init; }

    [Description("Send as Last-Event-ID to /v1/pipeline/events for every change since.")]
    public required string LastEventId { get; init; }

    [Description("The service's clock when this was read.")]
    public required DateTimeOffset AsOf { get; init; }

    public required PipelineLinks Links { get; init; }
}

public sealed record TrackedOrder
{
    public required string OrderNumber { get; init; }

    [Description("The newest confirmed one; everything here is about it.")]
    public required int Revision { get; init; }

    public required string ShipTo { get; init; }

    public required string Building { get; init; }

    public required string BuildingSummary { get; init; }

    public required DateOnly NeededBy { get; init; }

    public required int Pieces { get; init; }

    [Description("Rolls that hold a piece of it; null until it is planned.")]
    public int? Rolls { get; init; }

    [Description("Labels printed; null until they are.")]
    public int? Labels { get; init; }

    [Description("confirmed (waits for its plan), planned (waits for its labels), labelled "
        + "(finished here), parked (cannot be planned; reasons says why).")]
    public required string State { get; init; }

    [Description("Why it is parked; empty otherwise.")]
    public required IReadOnlyList<string> Reasons { get; init; }

    [Description("When its wait began: when the revision was confirmed. Null when finished.")]
    public DateTimeOffset? WaitingSince { get; init; }

    [Description("Age of the wait in seconds. Null when finished.")]
    public long? WaitingSeconds { get; init; }

    public required DateTimeOffset ConfirmedAt { get; init; }

    public DateTimeOffset? PlannedAt { get; init; }

    [Description("When it was last refused; null unless parked.")]
    public DateTimeOffset? ParkedAt { get; init; }

    public DateTimeOffset? FinishedAt { get; init; }

    public required OrderLinks Links { get; init; }
}

public sealed record OrderLinks
{
    public required string Order { get; init; }

    public string? Plan { get; init; }

    [Description("PDF, one page per label.")]
    public string? Labels { get; init; }

    [Description("PDF, packing list and checklist.")]
    public string? Checklist { get; init; }

    [Description("POST takes it up again; null unless parked.")]
    public string? TryAgain { get; init; }
}

public sealed record PipelineSummary
{
    public required int Orders { get; init; }

    public required int Confirmed { get; init; }

    public required int Planned { get; init; }

    public required int Labelled { get; init; }

    public required int Parked { get; init; }

    [Description("The longest wait began then; null when no order waits.")]
    public DateTimeOffset? OldestWaitingSince { get; init; }
}

public sealed record PipelineLinks
{
    public required string Desk { get; init; }

    public required string CuttingQueue { get; init; }

    [Description("GET compares cutting orders together, POST chooses.")]
    public required string Shift { get; init; }
}
