namespace PostFrame.CuttingWorker.Planning;

/// <summary>
/// Bounds that need no search: total length, and dual feasible functions, which give each piece a
/// weight such that nothing that fits a roll weighs more than one roll.
/// </summary>
/// <remarks>
/// Sources, from memory: Martello and Toth 1990 (bound L2, here as a family of functions); Fekete
/// and Schepers 2001 (<c>u(k)</c>); Carlier, Clautiaux and Moukrim 2007 (rounding about one half).
/// </remarks>
internal static class DualBounds
{
    private const int MostTried = 2_000;

    public static (long Cost, string Why) Of(Instance instance)
    {
        if (instance.Items == 0 || instance.Bins.Length == 0)
            return (0, "Nothing is to be cut.");
        return instance.Bins.Length == 1 ? OneLength(instance) : SeveralLengths(instance);
    }

    private static (long, string) SeveralLengths(Instance instance)
    {
        var total = Total(instance, x => x);
        var (left, bound) = (total, Int128.Zero);
        foreach (var bin in instance.Bins.OrderBy(b => (double)b.Cost / b.Capacity))
        {
            var take = Int128.Min(bin.Count, left / bin.Capacity);
            (left, bound) = (left - take * bin.Capacity, bound + take * bin.Cost);
            if (take == bin.Count)
                continue;
            bound += (left * bin.Cost + bin.Capacity - 1) / bin.Capacity;
            break;
        }

        bound = Int128.Min(bound, long.MaxValue / 8);
        return ((long)bound,
            $"The pieces come to {Wording.Length(instance, total)}. Cut without any loss from what "
            + "costs least for its length they would take that much, so no plan takes less than "
            + $"{instance.CostText((long)bound)}.");
    }

    private static (long, string) OneLength(Instance instance)
    {
        var (capacity, cost) = (instance.Bins[0].Capacity, instance.Bins[0].Cost);
        var total = Total(instance, x => x);
        var bound = Rolls(total, capacity);
        var why = $"The pieces come to {Wording.Length(instance, total)} and a roll gives "
            + $"{Wording.Length(instance, capacity)}: {(double)total / capacity:0.00} rolls, so "
            + $"no fewer than {Wording.Counted(bound, "roll")}.";
        foreach (var k in instance.Length.Where(l => l <= capacity / 2).Take(MostTried))
        {
            if (Rolls(Total(instance, x => Large(x, k, capacity)), capacity) is var large
                && large > bound)
                (bound, why) = (large, LargeWhy(instance, k, large));
            var half = Rolls(Total(instance, x => Half(x, k, capacity)), 2 * (capacity / k));
            if (half > bound)
                (bound, why) = (half, "Count each piece in steps of "
                    + $"{Wording.Length(instance, k)}, rounded about half a roll: a roll holds "
                    + $"at most {2 * (capacity / k)} such counts, the pieces have enough "
                    + $"for {Wording.Counted(half, "roll")}.");
        }

        for (var k = 1; k <= 100; k++)
        {
            var steps = Rolls(Total(instance, x => Steps(x, k, capacity)), (Int128)k * capacity);
            if (steps > bound)
                (bound, why) = (steps,
                    $"Count each piece in parts of a roll, {k + 1} to the roll, rounded down, {k} "
                    + "of which no roll exceeds: the pieces have enough for "
                    + $"{Wording.Counted(steps, "roll")}.");
        }

        return ((long)Int128.Min(bound * cost, long.MaxValue / 8), why);
    }

    private static string LargeWhy(Instance instance, long k, Int128 bound)
    {
        var capacity = instance.Bins[0].Capacity;
        long alone = 0, middle = 0;
        for (var i = 0; i < instance.Items; i++)
        {
            if (instance.Length[i] > capacity - k)
                alone += instance.Demand[i];
            else if (instance.Length[i] >= k)
                middle += instance.Demand[i];
        }

        var many = middle == 1 ? "is at least that long and takes"
            : "are at least that long and fill";
        var further = middle == 0 ? "" : $"; {Wording.Counted(middle, "further piece")} {many} "
            + Wording.Counted(bound - alone, "more roll");
        return $"{Wording.Counted(alone, "piece")} {(alone == 1 ? "is" : "are")} too long to share "
            + $"a roll with any of {Wording.Length(instance, k)} or more{further}: "
            + $"no fewer than {Wording.Counted(bound, "roll")}.";
    }

    private static Int128 Total(Instance instance, Func<long, Int128> weight)
    {
        var total = Int128.Zero;
        for (var i = 0; i < instance.Items; i++)
            total += weight(instance.Length[i]) * instance.Demand[i];
        return total;
    }

    private static Int128 Rolls(Int128 weight, Int128 roll) => roll <= 0 ? 0
        : (weight + roll - 1) / roll;

    private static Int128 Large(long x, long k, long capacity) =>
        x > capacity - k ? capacity : x >= k ? x : 0;

    private static Int128 Half(long x, long k, long capacity) =>
        2 * x > capacity ? 2 * (capacity / k - (capacity - x) / k)
        : 2 * x == capacity ? capacity / k
        : 2 * (x / k);

    private static Int128 Steps(long x, int k, long capacity)
    {
        var parts = (Int128)(k + 1) * x;
        return parts % capacity == 0 ? (Int128)k * x : parts / capacity * capacity;
    }
}
