namespace PostFrame.CuttingWorker.Planning;

/// <summary>
/// Counts work instead of time, so that a limit cuts every run of a problem at the same step.
/// </summary>
internal sealed class WorkMeter(PlanLimits limits, CancellationToken cancel)
{
    /// <summary>Spent so far [work seconds].</summary>
    public double Spent { get; private set; }

    public CancellationToken Cancel => cancel;

    /// <summary>Allowed in all [work seconds].</summary>
    public double Limit => limits.WorkSeconds;

    public double Left => Math.Max(0, limits.WorkSeconds - Spent);

    public bool Over => Spent >= limits.WorkSeconds || cancel.IsCancellationRequested;

    /// <summary>Starts anew, with so many work seconds.</summary>
    public WorkMeter Another(double workSeconds) =>
        new(limits with { WorkSeconds = workSeconds }, cancel);

    /// <summary>
    /// Counts all that is left as spent. A step that the limit cut short is the last: what came
    /// after it would not be what comes after the whole step when there is more work.
    /// </summary>
    public void End() => Spent = Math.Max(Spent, limits.WorkSeconds);

    /// <summary>Adds elementary steps of about a nanosecond each.</summary>
    public void Steps(double steps) => Spent += steps * 1e-9;
}
