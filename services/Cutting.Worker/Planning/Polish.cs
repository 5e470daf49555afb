namespace PostFrame.CuttingWorker.Planning;

/// <summary>
/// Betters a packing without changing its rolls: packs two rolls afresh at a time so that what is
/// left over gathers on few rolls, in lengths worth keeping, instead of being scrap on many; then
/// makes the lengths kept alike.
/// </summary>
internal static class Polish
{
    private const int MostRolls = 60;
    private const int MostPasses = 3;
    private const int MostSums = 3_000;
    private const double StepsPerPair = 20_000;

    public static Packing Offcuts(Instance instance, Packing packing, long leastNm, WorkMeter meter)
    {
        if (packing.RollCount < 2 || meter.Over)
            return packing;
        var (full, rolls) = Roomiest(instance, packing);
        long Gain(Roll r, long room)
        {
            var left = instance.LeftNm(r.Bin, room);
            return left >= leastNm && left > 0 ? left : 0;
        }

        bool More()
        {
            meter.Steps(rolls.Count * StepsPerPair);
            return !meter.Over;
        }

        for (var pass = 0; pass < MostPasses && Pass(instance, rolls, Gain, More); pass++)
        {
        }

        for (var pass = 0; pass < MostPasses && Alike(instance, rolls, leastNm, More); pass++)
        {
        }

        full.AddRange(rolls.Where(r => r.Pieces.Count > 0).Select(r => (r.Pattern(), 1)));
        return Packing.Of(instance, full, packing.Unmet);
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
    /// One round of packing every two rolls afresh; false when none got better. A roll that came
    /// free stays free.
    /// </summary>
    private static bool Pass(
        Instance instance, List<Roll> rolls, Func<Roll, long, long> gain, Func<bool> more)
    {
        var any = false;
        rolls.Sort((a, b) => b.Room.CompareTo(a.Room));
        foreach (var roomy in rolls.TakeWhile(_ => more()))
        {
            foreach (var other in rolls)
            {
                if (roomy != other && other.Room > 0 && roomy.Room >= other.Room
                    && other.Pieces.Count > 0)
                    any |= Repack(instance, roomy, other, gain);
            }
        }

        return any;
    }

    /// <summary>
    /// Fills <paramref name="other"/> with another choice of both rolls' pieces, so that more room
    /// comes together on <paramref name="roomy"/>. Room worth keeping counts first, room in one
    /// place second.
    /// </summary>
    private static bool Repack(
        Instance instance, Roll roomy, Roll other, Func<Roll, long, long> gain)
    {
        var pool = roomy.With(other);
        var capacity = instance.Bins[other.Bin].Capacity;
        var sums = Sums(instance, pool, capacity);
        var used = capacity - other.Room;
        var (best, worth) = (used, gain(roomy, roomy.Room) + gain(other, other.Room));
        foreach (var sum in sums.Keys.Where(s => s > used).Order())
        {
            var now = gain(roomy, roomy.Room + sum - used) + gain(other, capacity - sum);
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
    private static bool Alike(
        Instance instance, List<Roll> rolls, long leastNm, Func<bool> more)
    {
        long Left(Roll r, long room) => instance.LeftNm(r.Bin, room);
        var any = false;
        foreach (var one in rolls.TakeWhile(_ => more()))
        {
            foreach (var other in rolls)
            {
                if (one == other || Left(one, one.Room) < leastNm || one.Room <= other.Room
                    || Left(other, other.Room) < leastNm || one.Pieces.Count == 0
                    || other.Pieces.Count == 0)
                    continue;
                var rest = rolls.Where(r => r != one && r != other)
                    .Select(r => Left(r, r.Room)).Where(l => l >= leastNm).ToHashSet();
                (int Distinct, Int128 Squares) Price(long a, long b) =>
                    (rest.Append(a).Append(b).Distinct().Count(), (Int128)a * a + (Int128)b * b);
                var pool = one.With(other);
                var capacity = instance.Bins[other.Bin].Capacity;
                var sums = Sums(instance, pool, capacity);
                var used = capacity - other.Room;
                var best = sums.Keys
                    .Select(sum => (Sum: sum, A: Left(one, one.Room + sum - used),
                        B: Left(other, capacity - sum)))
                    .Where(s => s.A >= leastNm && s.B >= leastNm)
                    .OrderBy(s => Price(s.A, s.B)).ThenBy(s => s.Sum)
                    .Select(s => (s.Sum, Price: Price(s.A, s.B))).FirstOrDefault((used, default));
                if (best.Sum == used || best.Price.CompareTo(
                    Price(Left(one, one.Room), Left(other, other.Room))) >= 0)
                    continue;
                Refill(one, other, sums, best.Sum, capacity);
                any = true;
            }
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
