namespace PostFrame.CuttingWorker.Planning;

/// <summary>Turns patterns that cover the demand into a packing that meets it exactly.</summary>
internal static class Trim
{
    public static Packing Of(Instance instance, IReadOnlyList<(Pattern Pattern, int Times)> rolls)
    {
        var left = (int[])instance.Demand.Clone();
        var kept = new List<(Pattern, int)>();
        foreach (var (pattern, times) in rolls)
        {
            var most = times;
            while (most > 0)
            {
                var fitted = Fit(pattern, left);
                if (fitted.Item.Length == 0)
                    break;
                var run = most;
                for (var k = 0; k < fitted.Item.Length; k++)
                    run = Math.Min(run, left[fitted.Item[k]] / fitted.Count[k]);
                for (var k = 0; k < fitted.Item.Length; k++)
                    left[fitted.Item[k]] -= run * fitted.Count[k];
                kept.Add((fitted, run));
                most -= run;
            }
        }

        return Packing.Of(instance, kept, left);
    }

    private static Pattern Fit(Pattern pattern, int[] left)
    {
        var (item, count) = (new List<int>(), new List<int>());
        for (var k = 0; k < pattern.Item.Length; k++)
        {
            var fits = Math.Min(pattern.Count[k], left[pattern.Item[k]]);
            if (fits == 0)
                continue;
            item.Add(pattern.Item[k]);
            count.Add(fits);
        }

        return new Pattern(pattern.Bin, [.. item], [.. count]);
    }
}
