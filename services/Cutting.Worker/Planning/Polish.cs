namespace PostFrame.CuttingWorker.Planning;

/// <summary>
/// Betters a packing without changing its rolls: packs two rolls afresh at a time so that what is
/// left over gathers on few rolls, in lengths worth keeping, instead of being scrap on many; then
/// makes the lengths kept alike. Stops wherever the work is over, and goes on from there.
/// </summary>
internal sealed class Polish
{
    private const int MostRolls = 60;
    private const int MostPasses = 3;
    private const int MostSums = 3_000;
    private const double StepsPerPair = 20_000;

    private readonly Instance _instance;
    private readonly int[] _unmet;
    private readonly long _leastNm;
    private readonly List<(Pattern, int)> _full;
    private readonly List<Roll> _rolls;
    private readonly IEnumerator<bool> _steps;

    public Polish(Instance instance, Packing packing, long leastNm)
    {
        (_instance, _unmet, _leastNm) = (instance, packing.Unmet, leastNm);
        (_full, _rolls) = Roomiest(instance, packing);
        _steps = Steps().GetEnumerator();
    }

    /// <summary>As far as it has come: the same rolls, and never less kept than before.</summary>
    public Packing Packing => Packing.Of(
        _instance, [.. _full, .. _rolls.Select(r => (r.Pattern(), 1))], _unmet);

    /// <summary>Goes on from where it stopped; true when there is nothing more to do.</summary>
    public bool Run(WorkMeter meter)
    {
        while (!meter.Over)
        {
            if (!_steps.MoveNext())
                return true;
            meter.Steps(_rolls.Count * StepsPerPair);
        }

        return false;
    }

    /// <summary>One step for every roll, which says nothing but that more may follow.</summary>
    private IEnumerable<bool> Steps()
    {
        var any = _rolls.Count > 1;
        for (var pass = 0; pass < MostPasses && any; pass++)
        {
            any = false;
            _rolls.Sort((a, b) => b.Room.CompareTo(a.Room));
            foreach (var roomy in _rolls)
            {
                yield return true;
                any |= Gather(roomy);
            }
        }

        any = _rolls.Count > 1;
        for (var pass = 0; pass < MostPasses && any; pass++)
        {
            any = false;
            foreach (var one in _rolls)
            {
                yield return true;
                any |= Alike(one);
            }
        }
    }

    /// <summary>What counts of a roll's left-over [nm].</summary>
    private long Worth(Roll roll, long room) =>
        _instance.LeftNm(roll.Bin, room) is var left && left >= _leastNm ? left : 0;

    /// <summary>Packs the roll afresh with every other; false when none got better.</summary>
    private bool Gather(Roll roomy)
    {
        var any = false;
        foreach (var other in _rolls)
        {
            if (roomy != other && other.Room > 0 && roomy.Room >= other.Room)
                any |= Repack(roomy, other);
        }

        return any;
    }

    /// <summary>The rolls with most room, one by one, and the patterns of all others.</summary>
    private static (List<(Pattern, int)> Full, List<Roll> Roomy) Roomiest(
        Instance instance, Packing packing)
    {
        var (full, roomy) = (new List<(Pattern, int)>(), new List<Roll>());
        foreach (var (pattern, times) in packing.Rolls
            .OrderByDescending(r => r.Pattern.Room(instance)))
        {
            var some = Math.Min(times, MostRolls - roomy.Count);
            for (var n = 0; n < some; n++)
                roomy.Add(new Roll(pattern.Bin, instance, pattern));
            if (times > some)
                full.Add((pattern, times - some));
        }

        return (full, roomy);
    }

    private sealed class Roll
    {
        public Roll(int bin, Instance instance, Pattern pattern)
        {
            Bin = bin;
            Room = pattern.Room(instance);
            for (var k = 0; k < pattern.Item.Length; k++)
                Add(pattern.Item[k], pattern.Count[k]);
        }

        public int Bin { get; }

        public long Room { get; set; }

        /// <summary>How many of each item, none of which is 0.</summary>
        public Dictionary<int, int> Pieces { get; } = [];

        public void Add(int item, int count)
        {
            var now = Pieces.GetValueOrDefault(item) + count;
            if (now == 0)
                Pieces.Remove(item);
            else
                Pieces[item] = now;
        }

        /// <summary>The pieces of both rolls, by item.</summary>
        public List<(int Item, int Count)> With(Roll other) =>
            [.. Pieces.Concat(other.Pieces).GroupBy(p => p.Key).OrderBy(g => g.Key)
                .Select(g => (g.Key, g.Sum(p => p.Value)))];

        public Pattern Pattern()
        {
            var pieces = Pieces.OrderBy(p => p.Key).ToList();
            return new Pattern(
                Bin, [.. pieces.Select(p => p.Key)], [.. pieces.Select(p => p.Value)]);
        }
    }

    /// <summary>
    /// Fills <paramref name="other"/> with another choice of both rolls' pieces, so that more room
    /// comes together on <paramref name="roomy"/>. Room worth keeping counts first, room in one
    /// place second.
    /// </summary>
    private bool Repack(Roll roomy, Roll other)
    {
        var pool = roomy.With(other);
        var capacity = _instance.Bins[other.Bin].Capacity;
        var sums = Sums(_instance, pool, capacity);
        var used = capacity - other.Room;
        var (best, worth) = (used, Worth(roomy, roomy.Room) + Worth(other, other.Room));
        var all = Total(_instance, pool);
        foreach (var sum in sums.Keys.Where(s => s > used && s < all).Order())
        {
            var now = Worth(roomy, roomy.Room + sum - used) + Worth(other, capacity - sum);
            if (now >= worth)
                (best, worth) = (sum, now);
        }

        if (best == used)
            return false;
        Refill(roomy, other, sums, best, capacity);
        return true;
    }

    /// <summary>
    /// Evens out offcuts of different lengths, so that few lengths lie on the rack; as many
    /// offcuts stay, and as much in them. False when nothing changed.
    /// </summary>
    private bool Alike(Roll one)
    {
        long Left(Roll r, long room) => _instance.LeftNm(r.Bin, room);
        var any = false;
        foreach (var other in _rolls)
        {
            if (one == other || Left(one, one.Room) < _leastNm || one.Room <= other.Room
                || Left(other, other.Room) < _leastNm)
                continue;
            var rest = _rolls.Where(r => r != one && r != other)
                .Select(r => Left(r, r.Room)).Where(l => l >= _leastNm).ToHashSet();
            (int Distinct, Int128 Squares) Price(long a, long b) =>
                (rest.Append(a).Append(b).Distinct().Count(), (Int128)a * a + (Int128)b * b);
            var pool = one.With(other);
            var capacity = _instance.Bins[other.Bin].Capacity;
            var sums = Sums(_instance, pool, capacity);
            var (used, all) = (capacity - other.Room, Total(_instance, pool));
            var best = sums.Keys.Where(sum => sum > 0 && sum < all)
                .Select(sum => (Sum: sum, A: Left(one, one.Room + sum - used),
                    B: Left(other, capacity - sum)))
                .Where(s => s.A >= _leastNm && s.B >= _leastNm)
                .OrderBy(s => Price(s.A, s.B)).ThenBy(s => s.Sum)
                .Select(s => (s.Sum, Price: Price(s.A, s.B))).FirstOrDefault((used, default));
            if (best.Sum == used || best.Price.CompareTo(
                Price(Left(one, one.Room), Left(other, other.Room))) >= 0)
                continue;
            Refill(one, other, sums, best.Sum, capacity);
            any = true;
        }

        return any;
    }

    /// <summary>Puts the pieces of one sum on <paramref name="other"/>, the rest on the first.
    /// </summary>
    private static void Refill(
        Roll roomy, Roll other, Dictionary<long, (long From, int Item, int Count)> sums, long best,
        long capacity)
    {
        var used = capacity - other.Room;
        foreach (var (item, count) in other.Pieces)
            roomy.Add(item, count);
        other.Pieces.Clear();
        for (var at = best; at > 0; at = sums[at].From)
        {
            roomy.Add(sums[at].Item, -sums[at].Count);
            other.Add(sums[at].Item, sums[at].Count);
        }

        roomy.Room += best - used;
        other.Room = capacity - best;
    }

    private static long Total(Instance instance, List<(int Item, int Count)> pool) =>
        pool.Sum(p => p.Count * instance.Length[p.Item]);

    /// <summary>
    /// Every total the pieces can make up to the capacity, with the last step to it.
    /// </summary>
    private static Dictionary<long, (long From, int Item, int Count)> Sums(
        Instance instance, List<(int Item, int Count)> pool, long capacity)
    {
        var sums = new Dictionary<long, (long From, int Item, int Count)> { [0] = (0, -1, 0) };
        foreach (var (item, count) in pool)
        {
            foreach (var sum in sums.Keys.ToList())
            {
                for (var n = 1; n <= count && sums.Count < MostSums; n++)
                {
                    var next = sum + n * instance.Length[item];
                    if (next > capacity)
                        break;
                    sums.TryAdd(next, (sum, item, n));
                }
            }
        }

        return sums;
    }
}
