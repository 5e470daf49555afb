namespace PostFrame.CuttingWorker.Planning;

/// <summary>
/// Rounds the relaxation one decision at a time: cut the whole parts of the amounts, then the
/// pattern nearest to a whole one, solve the relaxation of what is left with fresh patterns, go on.
/// A dive stops as soon as its own bound shows that it cannot beat the target.
/// </summary>
internal sealed class Diving(
    Instance instance, ColumnGeneration columns, WorkMeter meter, Action<Packing, string> offer)
{
    public void Run(int variant, int seed, long target)
    {
        var random = new Random(seed * 7919 + variant);
        var left = (int[])instance.Demand.Clone();
        var stock = instance.Bins.Select(b => b.Count).ToArray();
        var chosen = new List<(Pattern, int)>();
        long cost = 0;
        var noise = variant == 0 ? 0 : 0.1 + 0.4 * random.NextDouble();
        for (var step = 0; step < 100_000 && !meter.Over; step++)
        {
            if (!Choose(left, stock, chosen, noise, random, ref cost))
                break;
            offer(
                FirstFit.Complete(instance, chosen, left, stock, meter),
                "column generation, diving");
            if (left.All(d => d == 0))
                return;
            columns.Set(left, stock);
            if (!columns.Run(whole: false, target - cost + 1, rounds: 40))
                return;
            if (columns.Best is not { } bound || cost + bound.Ceiling > target)
                return;
        }
    }

    /// <summary>Takes all whole amounts; where there are none, one pattern rounded up.</summary>
    private bool Choose(
        int[] left, int[] stock, List<(Pattern, int)> chosen, double noise, Random random,
        ref long cost)
    {
        var any = false;
        var (best, score) = (-1, 0.0);
        var order = Enumerable.Range(0, columns.Patterns.Count)
            .Where(p => columns.Amount[p] > 1e-6).OrderByDescending(p => columns.Amount[p])
            .ToList();
        foreach (var p in order)
        {
            var most = Most(columns.Patterns[p], left, stock);
            var whole = (int)Math.Min(columns.Amount[p] + 1e-6, most);
            if (whole > 0)
            {
                Take(columns.Patterns[p], whole, left, stock, chosen, ref cost);
                any = true;
            }
            else if (most > 0)
            {
                var now = columns.Amount[p] + noise * random.NextDouble();
                if (now > score)
                    (best, score) = (p, now);
            }
        }

        if (any || best < 0)
            return any;
        Take(columns.Patterns[best], 1, left, stock, chosen, ref cost);
        return true;
    }

    private void Take(
        Pattern pattern, int times, int[] left, int[] stock, List<(Pattern, int)> chosen,
        ref long cost)
    {
        for (var k = 0; k < pattern.Item.Length; k++)
            left[pattern.Item[k]] -= times * pattern.Count[k];
        if (stock[pattern.Bin] != int.MaxValue)
            stock[pattern.Bin] -= times;
        cost += times * instance.Bins[pattern.Bin].Cost;
        chosen.Add((pattern, times));
    }

    private static int Most(Pattern pattern, int[] left, int[] stock)
    {
        var most = stock[pattern.Bin];
        for (var k = 0; k < pattern.Item.Length; k++)
            most = Math.Min(most, left[pattern.Item[k]] / pattern.Count[k]);
        return most;
    }
}
