namespace PostFrame.CuttingWorker.Planning;

/// <summary>
/// Betters a packing on the rolls it has: more left over worth keeping, then fewer patterns to set
/// up.
/// </summary>
/// <remarks>
/// Gathering further can leave more patterns, and what was gathered less can be lessened more. So
/// patterns are lessened again and again as gathering goes on, and the best result of all is taken.
/// How much work each round has does not depend on the limit; the limit says how many rounds there
/// are. Whoever has more work has the same rounds and further ones: the result is never worse.
/// </remarks>
internal static class Finishing
{
    private const double FirstRound = 0.1 / 1024;
    private const int Rounds = 11;

    /// <param name="instance">What is cut from what.</param>
    /// <param name="found">The packing to better.</param>
    /// <param name="minUsefulNm">Left-over worth keeping [nm].</param>
    /// <param name="rank">How good a packing is; null where it must not be taken.</param>
    /// <param name="meter">A fifth of its limit is spent at most, on top of it.</param>
    public static Packing Of(
        Instance instance, Packing found, long minUsefulNm, Func<Packing, PlanRank?> rank,
        WorkMeter meter)
    {
        var (best, least) = (found, rank(found));
        var polish = new Polish(instance, found, minUsefulNm);
        var (gathering, lessening, done) = (0.0, 0.0, false);
        for (var round = 0; round < Rounds && !done; round++)
        {
            // Rounds double: all lessening together has as much work as gathering has by then.
            var work = FirstRound * (1 << round);
            if (work > meter.Limit / 10)
                break;
            var gather = meter.Another(work - gathering);
            var whole = polish.Run(gather);
            gathering += gather.Spent;
            var lessen = meter.Another(work / 2);
            var fewer = FewerPatterns.Of(instance, polish.Packing, minUsefulNm, lessen);
            lessening += lessen.Spent;
            done = whole && !lessen.Over || lessen.Cancel.IsCancellationRequested;
            if (rank(fewer) is { } now && (least is null || now.CompareTo(least.Value) <= 0))
                (best, least) = (fewer, now);
        }

        meter.Steps((gathering + lessening) * 1e9);
        return best;
    }
}
