namespace PostFrame.CuttingWorker.Planning;

/// <summary>
/// A Chvátal-Gomory cut of rank one over a few demands: each demand is taken with a fraction, the
/// sum rounded up. Every whole plan keeps it; fractions of plans often do not.
/// </summary>
/// <remarks>
/// Sum over patterns of ⌈Σ wᵢ·aᵢ / d⌉ ≥ ⌈Σ wᵢ·demandᵢ / d⌉. Rounding up never falls when a pattern
/// holds more, so patterns to which nothing can be added still stand for all others. Source, from
/// memory: Jepsen, Petersen, Spoorendonk and Pisinger 2008 (subset rows); turned here from packing
/// to covering.
/// </remarks>
internal sealed record RankOneCut(int[] Item, int[] Weight, int Divisor)
{
    public int Least(int[] demand)
    {
        long sum = 0;
        for (var k = 0; k < Item.Length; k++)
            sum += (long)Weight[k] * demand[Item[k]];
        return (int)((sum + Divisor - 1) / Divisor);
    }

    public int Of(Pattern pattern)
    {
        var sum = 0;
        for (var k = 0; k < pattern.Item.Length; k++)
        {
            var at = Array.IndexOf(Item, pattern.Item[k]);
            if (at >= 0)
                sum += Weight[at] * pattern.Count[k];
        }

        return (sum + Divisor - 1) / Divisor;
    }
}
