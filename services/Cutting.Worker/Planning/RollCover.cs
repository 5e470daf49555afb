namespace PostFrame.CuttingWorker.Planning;

/// <summary>
/// Rolls come whole. Given what each bin's patterns can be worth at most, the cheapest whole number
/// of each bin that could be worth the demand bounds the cost of every plan from below, and more
/// tightly than the fraction of a roll that the relaxation allows.
/// </summary>
internal static class RollCover
{
    private const int MostCells = 4_000_000;
    private const double MostSteps = 2e8;

    /// <summary>
    /// The least cost of whole bins worth at least <paramref name="worth"/>, not below
    /// <paramref name="from"/>; <paramref name="from"/> itself where the table would be too large.
    /// </summary>
    public static long Bound(
        Instance instance, long[] best, Int128 worth, long from, long to, long step,
            WorkMeter meter)
    {
        var cells = to / step + 1;
        if (from >= to || cells > MostCells
            || (double)cells * best.Length > MostSteps || worth > long.MaxValue / 4)
            return from;
        var most = new long[cells];
        for (var b = 0; b < best.Length; b++)
        {
            var bin = instance.Bins[b];
            var shift = bin.Cost / step;
            if (best[b] <= 0)
                continue;
            if (meter.Over)
                return from;
            if (shift == 0)
                worth -= (Int128)best[b] * bin.Count;
            else
                Add(most, shift, best[b], Math.Min(bin.Count, cells / shift), meter);
        }

        for (var c = (from + step - 1) / step; c < cells; c++)
        {
            if (most[c] >= worth)
                return c * step;
        }

        return to;
    }

    private static void Add(long[] most, long shift, long gain, long count, WorkMeter meter)
    {
        for (long part = 1; count > 0; part *= 2)
        {
            var take = Math.Min(part, count);
            count -= take;
            for (var c = most.Length - 1; c >= take * shift; c--)
                most[c] = Math.Max(most[c], most[c - take * shift] + take * gain);
            meter.Steps(most.Length * 1.0);
        }
    }
}
