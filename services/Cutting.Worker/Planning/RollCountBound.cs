namespace PostFrame.CuttingWorker.Planning;

/// <summary>
/// How many rolls and remnants any plan takes that costs no more than a given one. Cost brings
/// remnants in, so they count here.
/// </summary>
internal static class RollCountBound
{
    private const double Rounding = 1e-6;

    /// <param name="instance">What is cut from what.</param>
    /// <param name="worths">
    /// For each way to value the pieces: the value of the whole demand, and for each bin a value no
    /// pattern of it exceeds.
    /// </param>
    /// <param name="cost">What a plan may cost; null when any may.</param>
    public static long Of(
        Instance instance, IEnumerable<(Int128 Demand, long[] Top)> worths, long? cost)
    {
        if (instance.Items == 0 || instance.Bins.Length == 0)
            return 0;
        var length = Int128.Zero;
        for (var i = 0; i < instance.Items; i++)
            length += (Int128)instance.Length[i] * instance.Demand[i];
        var longest = new Instance
        {
            Length = instance.Length,
            Demand = instance.Demand,
            Bins = [instance.Bins.MaxBy(b => b.Capacity)! with { Cost = 1, Count = int.MaxValue }],
            UnitNm = instance.UnitNm,
        };
        var least = DualBounds.Of(longest).Cost;
        var all = worths.Append((length, [.. instance.Bins.Select(b => b.Capacity)])).ToList();
        var dearest = Math.Max(1.0, instance.Bins.Max(b => b.Cost));
        foreach (var (demand, top) in all)
        {
            least = Math.Max(least, Rolls(instance, (double)demand, top, 0, 0));
            for (var k = -20; k <= 20 && cost is not null; k++)
            {
                var weight = Math.Pow(2, k) / dearest;
                least = Math.Max(
                    least, Rolls(instance, (double)demand, top, weight, cost.Value));
            }
        }

        return least;
    }

    /// <summary>
    /// Lagrangian relaxation of the limit on cost: rolls counted with their cost at the weight,
    /// filled in the order of what they carry for that, the last one in part.
    /// </summary>
    private static long Rolls(
        Instance instance, double demand, long[] top, double weight, double cost)
    {
        var rolls = -weight * cost;
        double Price(int b) => 1 + weight * instance.Bins[b].Cost;
        foreach (var b in Enumerable.Range(0, top.Length).Where(b => top[b] > 0)
            .OrderByDescending(b => top[b] / Price(b)))
        {
            var take = Math.Min(Math.Max(0, demand / top[b]), instance.Bins[b].Count);
            rolls += take * Price(b);
            demand -= take * top[b];
        }

        return (long)Math.Ceiling(rolls * (1 - Rounding) - Rounding);
    }
}
