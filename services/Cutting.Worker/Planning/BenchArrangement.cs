namespace PostFrame.CuttingWorker.Planning;

/// <summary>
/// Keeps what belongs together together at the bench, at no price in material: pieces of equal
/// length change places, and rolls their turn, so that orders close one after another in the order
/// they are needed and each plane's pieces come in a row.
/// </summary>
/// <remarks>
/// Greedy: of the rolls left, the next is the one that opens fewest further orders, then fewest
/// further planes. Rolls that hold the same lengths are weighed once.
/// </remarks>
public sealed class BenchArrangement
{
    private const int MostLookedAt = 12;

    private readonly Dictionary<(long, string?), List<Group>> _waiting;
    private readonly HashSet<(string, string)> _openPlanes = [];
    private readonly HashSet<string> _openOrders = [];
    private readonly Dictionary<(string, string), int> _left;
    private readonly Dictionary<string, int> _leftOfOrder;

    private BenchArrangement(IEnumerable<BenchPiece> pieces, IReadOnlyList<string> orders)
    {
        var rank = orders.Select((o, k) => (o, k))
            .ToDictionary(p => p.o, p => p.k, StringComparer.Ordinal);
        var all = pieces.ToList();
        _left = all.GroupBy(p => (p.Order, p.Plane)).ToDictionary(g => g.Key, g => g.Count());
        _leftOfOrder = all.GroupBy(p => p.Order).ToDictionary(g => g.Key, g => g.Count());
        _waiting = all.GroupBy(p => (p.LengthNm, p.Lot)).ToDictionary(
            g => g.Key,
            g => g.GroupBy(p => (p.Order, p.Plane))
                .OrderBy(p => rank.GetValueOrDefault(p.Key.Order, int.MaxValue))
                .ThenBy(p => p.Key.Order, StringComparer.Ordinal)
                .ThenBy(p => p.Key.Plane, StringComparer.Ordinal)
                .Select(p => new Group(
                    p.Key, rank.GetValueOrDefault(p.Key.Order, int.MaxValue),
                    new Queue<string>(p.OrderBy(q => q.Key, StringComparer.Ordinal)
                        .Select(q => q.Key))))
                .ToList());
    }

    /// <summary>
    /// The rolls in cutting order: which roll, and the pieces cut from it one after another. Each
    /// roll keeps its lengths.
    /// </summary>
    /// <param name="rolls">The pieces of each roll.</param>
    /// <param name="orders">The orders, soonest needed first.</param>
    public static IReadOnlyList<(int Roll, IReadOnlyList<string> Pieces)> Of(
        IReadOnlyList<IReadOnlyList<BenchPiece>> rolls, IReadOnlyList<string> orders)
    {
        ArgumentNullException.ThrowIfNull(rolls);
        ArgumentNullException.ThrowIfNull(orders);
        var arrangement = new BenchArrangement(rolls.SelectMany(r => r), orders);
        var alike = rolls.Select((r, k) => (Roll: k, Lengths: Lengths(r)))
            .GroupBy(r => string.Join(',', r.Lengths.Select(l => $"{l.Kind}x{l.Count}")))
            .Select(g => (g.First().Lengths, Rolls: new Queue<int>(g.Select(r => r.Roll))))
            .ToList();
        var arranged = new List<(int, IReadOnlyList<string>)>();
        while (alike.Count > 0)
        {
            var next = alike.MinBy(a => arrangement.Price(a.Lengths));
            arranged.Add((next.Rolls.Dequeue(), arrangement.Cut(next.Lengths)));
            if (next.Rolls.Count == 0)
                alike.Remove(next);
        }

        return arranged;
    }

    private static List<Alike> Lengths(IReadOnlyList<BenchPiece> roll) =>
        [.. roll.GroupBy(p => (p.LengthNm, p.Lot)).OrderByDescending(g => g.Key.LengthNm)
            .Select(g => new Alike(g.Key, g.Count()))];

    /// <summary>Pieces of a roll that may be any of their length and lot.</summary>
    private sealed record Alike((long Nm, string? Lot) Kind, int Count);

    private sealed record Group((string Order, string Plane) Plane, int Rank, Queue<string> Keys);

    /// <summary>What cutting such a roll next would open, and how soon its orders are needed.
    /// </summary>
    private (int Orders, int Planes, long Rank, int StillLeft) Price(
        List<Alike> lengths)
    {
        var chosen = Choose(lengths);
        var planes = chosen.GroupBy(c => c.Group.Plane)
            .Select(g => (Plane: g.Key, Count: g.Sum(c => c.Count), g.First().Group.Rank)).ToList();
        return (
            planes.Select(p => p.Plane.Order).Distinct().Count(o => !_openOrders.Contains(o)),
            planes.Count(p => !_openPlanes.Contains(p.Plane)),
            planes.Max(p => p.Rank),
            planes.Min(p => _left[p.Plane] - p.Count));
    }

    /// <summary>
    /// Whose pieces such a roll would give: of planes open already, or already on this roll, before
    /// the soonest needed.
    /// </summary>
    private List<(Group Group, int Count)> Choose(List<Alike> lengths)
    {
        var chosen = new List<(Group Group, int Count)>();
        foreach (var (kind, count) in lengths)
        {
            var wanted = count;
            var here = _waiting[kind];
            var first = here.Take(MostLookedAt)
                .OrderBy(g => !_openPlanes.Contains(g.Plane)
                    && chosen.TrueForAll(c => c.Group.Plane != g.Plane))
                .ThenBy(g => !_openOrders.Contains(g.Plane.Order)).ToList();
            foreach (var group in first.Concat(here.Skip(MostLookedAt)))
            {
                if (wanted == 0)
                    break;
                var take = Math.Min(wanted, group.Keys.Count);
                chosen.Add((group, take));
                wanted -= take;
            }
        }

        return chosen;
    }

    private List<string> Cut(List<Alike> lengths)
    {
        var chosen = Choose(lengths);
        var pieces = chosen
            .OrderBy(c => !_openPlanes.Contains(c.Group.Plane)).ThenBy(c => c.Group.Rank)
            .ThenBy(c => c.Group.Plane.Plane, StringComparer.Ordinal)
            .SelectMany(c => Enumerable.Range(0, c.Count).Select(_ => c.Group.Keys.Dequeue()))
            .ToList();
        foreach (var (group, count) in chosen)
        {
            _openPlanes.Add(group.Plane);
            _openOrders.Add(group.Plane.Order);
            _left[group.Plane] -= count;
            _leftOfOrder[group.Plane.Order] -= count;
        }

        foreach (var (group, _) in chosen.Where(c => _left[c.Group.Plane] == 0))
            _openPlanes.Remove(group.Plane);
        foreach (var (group, _) in chosen.Where(c => _leftOfOrder[c.Group.Plane.Order] == 0))
            _openOrders.Remove(group.Plane.Order);
        foreach (var (kind, _) in lengths)
            _waiting[kind].RemoveAll(g => g.Keys.Count == 0);
        return pieces;
    }
}
