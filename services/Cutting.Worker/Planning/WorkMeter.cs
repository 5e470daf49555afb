namespace PostFrame.CuttingWorker.Planning;

/// <summary>
/// Counts work instead of time, so that a limit cuts every run of a problem at the same step.
/// </summary>
internal sealed class WorkMeter(PlanLimits limits, CancellationToken cancel)
{
    /// <summary>Spent so far [work seconds].</summary>
    public double Spent { get; private set; }

    public CancellationToken Cancel => cancel;

    public double Left => Math.Max(0, limits.WorkSeconds - Spent);

    public bool Over => Spent >= limits.WorkSeconds || cancel.IsCancellationRequested;

    /// <summary>Starts anew, with a tenth of the limit or so many work seconds if that is less.
    /// </summary>
    public WorkMeter Another(double workSeconds) =>
        new(limits with { WorkSeconds = Math.Min(limits.WorkSeconds / 10, workSeconds) }, cancel);

    /// <summary>Adds elementary steps of about a nanosecond each.</summary>
    public void Steps(double steps) => Spent += steps * 1e-9;
}
