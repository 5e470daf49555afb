using System.Numerics;

namespace PostFrame.CuttingWorker.Planning;

/// <summary>
/// Item values in whole numbers, and the lower bound on cost they prove. If no pattern of a bin is
/// worth more than λ⁻¹ times the bin's cost, cutting every piece costs at least λ times the value
/// of the demand, less what limited bins could be worth beyond their cost.
/// </summary>
/// <remarks>
/// Source: Farley's bound and Lagrangian relaxation of the stock limits, textbook.
/// </remarks>
internal sealed class DualPoint
{
    private DualPoint(
        int[] value, long[] top, Int128 worth, BigInteger p, BigInteger q, BigInteger numerator)
    {
        (Value, Top, Worth) = (value, top, worth);
        (P, Q, Numerator) = (p, q, numerator);
    }

    public int[] Value { get; }

    /// <summary>Per bin, a value no pattern of it exceeds.</summary>
    public long[] Top { get; }

    /// <summary>Value of the whole demand.</summary>
    public Int128 Worth { get; }

    /// <summary>λ = P / Q.</summary>
    public BigInteger P { get; }

    public BigInteger Q { get; }

    /// <summary>The bound times Q.</summary>
    public BigInteger Numerator { get; }

    public double Bound => (double)Numerator / (double)Q;

    /// <summary>The bound rounded up: costs are whole.</summary>
    public long Ceiling =>
        (long)BigInteger.Max(0, BigInteger.Divide(Numerator + Q - 1, Q));

    /// <summary>
    /// The least value a pattern of this bin must have to appear in any plan of cost up to
    /// <paramref name="cost"/>: with a lower value the bound plus the pattern's reduced cost passes
    /// it.
    /// </summary>
    public int Floor(Instance instance, int b, long cost) =>
        (int)Math.Min(int.MaxValue, LongFloor(instance, b, cost));

    /// <summary><see cref="Floor"/> where values may be larger than an int.</summary>
    public long LongFloor(Instance instance, int b, long cost)
    {
        // reduced cost = C + u − λ·value, u = max(0, λ·best − C) for limited bins, must be ≤ cost −
        // bound
        var bin = instance.Bins[b];
        var charge = Q * bin.Cost;
        if (bin.Count != int.MaxValue)
            charge = BigInteger.Max(charge, P * Top[b]);
        var least = charge - (Q * cost - Numerator);
        if (P.IsZero || least <= 0)
            return 0;
        var floor = (least + P - 1) / P;
        return floor > long.MaxValue ? long.MaxValue : (long)floor;
    }

    /// <param name="instance">Bins with their costs.</param>
    /// <param name="demand">Pieces to be cut.</param>
    /// <param name="stock">Bins left.</param>
    /// <param name="value">Values of the items.</param>
    /// <param name="best">Per bin, a value no pattern of it exceeds.</param>
    /// <param name="natural">λ where no unlimited bin forces one (cost per unit of value).</param>
    public static DualPoint Of(
        Instance instance, int[] demand, int[] stock, int[] value, long[] best, double natural)
    {
        var worth = Int128.Zero;
        for (var i = 0; i < demand.Length; i++)
            worth += (long)value[i] * demand[i];
        return Of(instance, stock, worth, best, natural, value);
    }

    /// <param name="instance">Bins with their costs.</param>
    /// <param name="stock">Bins left.</param>
    /// <param name="worth">Value of the whole demand, and of every cut that a plan keeps.</param>
    /// <param name="best">Per bin, a value no pattern of it exceeds.</param>
    /// <param name="natural">λ where no unlimited bin forces one.</param>
    /// <param name="value">Values of the items, where they say all.</param>
    public static DualPoint Of(
        Instance instance, int[] stock, Int128 worth, long[] best, double natural,
        int[]? value = null)
    {
        BigInteger p = new(Math.Round(natural * (1L << 40)));
        BigInteger q = 1L << 40;
        var free = false;
        for (var b = 0; b < best.Length; b++)
        {
            if (stock[b] != int.MaxValue || best[b] <= 0)
                continue;
            BigInteger cost = instance.Bins[b].Cost;
            if (!free || cost * q < p * best[b])
                (p, q) = (cost, best[b]);
            free = true;
        }

        var numerator = p * (BigInteger)worth;
        for (var b = 0; b < best.Length; b++)
        {
            if (stock[b] != int.MaxValue && stock[b] > 0)
                numerator -= stock[b] * BigInteger.Max(0, p * best[b] - q * instance.Bins[b].Cost);
        }

        return new DualPoint(value ?? [], best, worth, p, q, numerator);
    }
}
