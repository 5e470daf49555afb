namespace PostFrame.CuttingWorker.Planning;

/// <summary>Bounds that need no search.</summary>
internal static class DualBounds
{
    public static (long Cost, string Why) Of(Instance instance)
    {
        if (instance.Items == 0 || instance.Bins.Length == 0)
            return (0, "Nothing is to be cut.");
        var total = Int128.Zero;
        for (var i = 0; i < instance.Items; i++)
            total += (Int128)instance.Length[i] * instance.Demand[i];
        // Every roll gives at most its capacity: cost ≥ total × the least cost per length.
        var bound = instance.Bins.Min(b => (total * b.Cost + b.Capacity - 1) / b.Capacity);
        if (instance.Bins.Length == 1)
            bound = (total + instance.Bins[0].Capacity - 1) / instance.Bins[0].Capacity
                * instance.Bins[0].Cost;
        return ((long)bound, "Total length over roll length, rounded up.");
    }
}
