namespace PostFrame.CuttingWorker.Planning;

/// <summary>
/// The problem in the search's own terms: distinct lengths from the longest down, divided by their
/// greatest common divisor; stock of equal capacity and cost taken together.
/// </summary>
internal sealed class Instance
{
    public required long[] Length { get; init; }

    public required int[] Demand { get; init; }

    public required Bin[] Bins { get; init; }

    /// <summary>One unit of <see cref="Length"/> [nm].</summary>
    public required long UnitNm { get; init; }

    /// <summary>How a cost reads, with its unit.</summary>
    public Func<long, string> CostText { get; init; } = Wording.Cost;

    public int Items => Length.Length;

    /// <summary>What a roll with so much room, in units, has left [nm].</summary>
    public long LeftNm(int bin, long room) => room * UnitNm + Bins[bin].Slack;

    public long Pieces => Demand.Sum(d => (long)d);

    /// <summary>Rolls alike to the search.</summary>
    /// <param name="Capacity">Usable length, in units.</param>
    /// <param name="Cost">Cost of one.</param>
    /// <param name="Count">How many there are; <see cref="int.MaxValue"/> when always more.</param>
    /// <param name="Slack">Usable length beyond the capacity, lost to the unit [nm].</param>
    public sealed record Bin(long Capacity, long Cost, int Count, long Slack);

    public static Instance From(
        IReadOnlyList<(long LengthNm, int Demand)> items, IReadOnlyList<StockType> stock,
        Func<long, string>? costText = null)
    {
        var lengths = items.Where(i => i.Demand > 0).GroupBy(i => i.LengthNm)
            .Select(g => (Length: g.Key, Demand: g.Sum(i => i.Demand)))
            .OrderByDescending(g => g.Length).ToArray();
        var unit = lengths.Select(l => l.Length).Aggregate(0L, Gcd);
        var shortest = lengths.Length == 0 ? long.MaxValue : lengths[^1].Length;
        var bins = stock.Where(s => s.Count is null or > 0 && s.UsableNm >= shortest)
            .GroupBy(s => (s.UsableNm, s.Cost))
            .Where(g => g.Key.UsableNm >= shortest)
            .OrderByDescending(g => g.Key.UsableNm).ThenBy(g => g.Key.Cost)
            .Select(g => new Bin(
                g.Key.UsableNm / unit, g.Key.Cost, Total(g), g.Key.UsableNm % unit))
            .ToArray();
        return new Instance
        {
            Length = [.. lengths.Select(l => l.Length / unit)],
            Demand = [.. lengths.Select(l => l.Demand)],
            Bins = bins,
            UnitNm = Math.Max(unit, 1),
            CostText = costText ?? Wording.Cost,
        };
    }

    private static int Total(IEnumerable<StockType> alike) =>
        alike.Any(s => s.Count is null)
            ? int.MaxValue
            : (int)Math.Min(alike.Sum(s => (long)s.Count!.Value), int.MaxValue);

    private static long Gcd(long a, long b) => b == 0 ? a : Gcd(b, a % b);
}
