namespace PostFrame.CuttingWorker.Planning;

/// <summary>
/// How hard to try. The search follows one path whatever the limit and only stops earlier or later
/// on it, so more work never gives a worse plan, and equal limits give an equal plan. Worse is, in
/// this order: less demand met, a higher cost, more rolls, less length kept for the rack, more
/// scrap, more patterns to set up.
/// </summary>
public sealed record PlanLimits
{
    /// <summary>
    /// Work allowed [work seconds]: counted in steps, not by a clock, and scaled so that one is
    /// about a second of one ordinary core. With 0 the first plan that holds is returned at once.
    /// Gathering offcuts and lessening patterns afterwards takes at most a tenth more each, of one
    /// work second at most.
    /// </summary>
    public double WorkSeconds { get; init; } = 5;

    /// <summary>Starts every random choice.</summary>
    public int Seed { get; init; } = 1;

    /// <summary>Five work seconds, seed 1.</summary>
    public static PlanLimits Default { get; } = new();
}
