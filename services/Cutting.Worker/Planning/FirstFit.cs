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
            int[] bins, WorkMeter? meter = null)
    {
        var rolls = chosen.ToList();
        var (left, stock) = ((int[])demand.Clone(), (int[])bins.Clone());
        var filled = new Filled?[bins.Length];
        while (Best(instance, left, stock, filled, meter) is { } best)
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

    private sealed record Filled(Pattern Pattern, long Used)
    {
        /// <summary>
        /// True while as many of its pieces are left; it is then still what filling the roll anew
        /// would give.
        /// </summary>
        public bool Holds(int[] left)
        {
            for (var k = 0; k < Pattern.Item.Length; k++)
            {
                if (left[Pattern.Item[k]] < Pattern.Count[k])
                    return false;
            }

            return true;
        }
    }

    private static Pattern? Best(
        Instance instance, int[] left, int[] stock, Filled?[] filled, WorkMeter? meter)
    {
        Pattern? best = null;
        var (bestCost, bestUsed) = (0L, 0L);
        for (var b = 0; b < instance.Bins.Length; b++)
        {
            if (stock[b] == 0)
                continue;
            if (filled[b] is not { } known || !known.Holds(left))
            {
                var pattern = Fill(instance, left, b);
                filled[b] = known = new Filled(pattern, pattern.Used(instance));
                meter?.Steps(instance.Items * 5.0 + 200);
            }

            var (cost, used) = (instance.Bins[b].Cost, known.Used);
            if (used > 0 && (best is null || (Int128)cost * bestUsed < (Int128)bestCost * used))
                (best, bestCost, bestUsed) = (known.Pattern, cost, used);
        }

        meter?.Steps(instance.Bins.Length * 20.0);
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
