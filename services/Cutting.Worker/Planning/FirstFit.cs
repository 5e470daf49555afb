namespace PostFrame.CuttingWorker.Planning;

/// <summary>
/// First-fit decreasing, a whole pattern at a time: fill a roll from the longest piece down, cut it
/// that way as often as demand and stock allow, go on with what is left. Of several roll lengths it
/// takes the one that costs least for the length it fills.
/// </summary>
internal static class FirstFit
{
    public static Packing Decreasing(Instance instance) => Complete(
        instance, [], instance.Demand, [.. instance.Bins.Select(b => b.Count)]);

    /// <summary>Goes on from rolls already chosen.</summary>
    public static Packing Complete(
        Instance instance, IEnumerable<(Pattern Pattern, int Times)> chosen, int[] demand,
            int[] bins)
    {
        var rolls = chosen.ToList();
        var (left, stock) = ((int[])demand.Clone(), (int[])bins.Clone());
        while (Best(instance, left, stock) is { } best)
        {
            var times = stock[best.Bin];
            for (var k = 0; k < best.Item.Length; k++)
                times = Math.Min(times, left[best.Item[k]] / best.Count[k]);
            for (var k = 0; k < best.Item.Length; k++)
                left[best.Item[k]] -= times * best.Count[k];
            if (stock[best.Bin] != int.MaxValue)
                stock[best.Bin] -= times;
            rolls.Add((best, times));
        }

        return Packing.Of(instance, rolls, left);
    }

    private static Pattern? Best(Instance instance, int[] left, int[] stock)
    {
        Pattern? best = null;
        var (bestCost, bestUsed) = (0L, 0L);
        for (var b = 0; b < instance.Bins.Length; b++)
        {
            if (stock[b] == 0)
                continue;
            var pattern = Fill(instance, left, b);
            var (cost, used) = (instance.Bins[b].Cost, pattern.Used(instance));
            if (used > 0 && (best is null || (Int128)cost * bestUsed < (Int128)bestCost * used))
                (best, bestCost, bestUsed) = (pattern, cost, used);
        }

        return best;
    }

    private static Pattern Fill(Instance instance, int[] left, int bin)
    {
        var room = instance.Bins[bin].Capacity;
        var (item, count) = (new List<int>(), new List<int>());
        for (var i = 0; i < instance.Items && room > 0; i++)
        {
            var fits = (int)Math.Min(left[i], room / instance.Length[i]);
            if (fits == 0)
                continue;
            item.Add(i);
            count.Add(fits);
            room -= fits * instance.Length[i];
        }

        return new Pattern(bin, [.. item], [.. count]);
    }
}
