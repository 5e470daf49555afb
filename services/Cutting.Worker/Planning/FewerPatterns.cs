namespace PostFrame.CuttingWorker.Planning;

/// <summary>
/// Lessens the different patterns of a packing on the rolls it has: two patterns become one, three
/// become two, wherever the same pieces can be spread evenly over as many rolls. What is kept for
/// the rack gets no less and no more different lengths (pattern combination as the literature on
/// cutting stock has it; from memory).
/// </summary>
internal sealed class FewerPatterns
{
    private const int MostNodes = 400;

    private readonly Instance _instance;
    private readonly long _leastNm;
    private readonly WorkMeter _meter;
    private readonly List<(Pattern Pattern, int Times)> _rolls;

    private FewerPatterns(Instance instance, Packing packing, long leastNm, WorkMeter meter)
    {
        (_instance, _leastNm, _meter) = (instance, leastNm, meter);
        _rolls = [.. packing.Rolls.OrderBy(r => r.Times)];
    }

    public static Packing Of(Instance instance, Packing packing, long leastNm, WorkMeter meter)
    {
        var fewer = new FewerPatterns(instance, packing, leastNm, meter);
        while (fewer.TwoToOne() || fewer.ThreeToTwo())
        {
        }

        return fewer._rolls.Count == packing.Rolls.Count
            ? packing
            : Packing.Of(instance, fewer._rolls, packing.Unmet);
    }

    private bool TwoToOne()
    {
        for (var i = 0; i < _rolls.Count; i++)
        {
            for (var j = i + 1; j < _rolls.Count && !_meter.Over; j++)
            {
                if (_rolls[i].Pattern.Bin != _rolls[j].Pattern.Bin)
                    continue;
                _meter.Steps(1_500);
                var times = _rolls[i].Times + _rolls[j].Times;
                var pieces = Pieces(i, j);
                if (pieces.All(p => p.Total % times == 0) && Replaced(
                    [i, j], (Each(i, pieces.Select(p => (p.Item, p.Total / times))), times)))
                    return true;
            }
        }

        return false;
    }

    private bool ThreeToTwo()
    {
        for (var i = 0; i < _rolls.Count; i++)
        {
            for (var j = i + 1; j < _rolls.Count; j++)
            {
                if (_rolls[i].Pattern.Bin != _rolls[j].Pattern.Bin)
                    continue;
                for (var k = j + 1; k < _rolls.Count && !_meter.Over; k++)
                {
                    if (_rolls[j].Pattern.Bin == _rolls[k].Pattern.Bin && Halved(i, j, k))
                        return true;
                }
            }
        }

        return false;
    }

    /// <summary>Three patterns' pieces on two, one cut so often, the other the rest.</summary>
    private bool Halved(int i, int j, int k)
    {
        var pieces = Pieces(i, j, k);
        int[] often = [_rolls[i].Times, _rolls[j].Times, _rolls[k].Times];
        var times = often.Sum();
        _meter.Steps(2_000);
        foreach (var few in often.Concat([1, 2, times / 2]).Select(t => Math.Min(t, times - t))
            .Where(t => t > 0).Distinct())
        {
            _meter.Steps(200 * pieces.Count);
            if (Spread(pieces, few, times - few, i) is { } two
                && Replaced([i, j, k], (two.Few, few), (two.Many, times - few)))
                return true;
        }

        return false;
    }

    /// <summary>
    /// How many of each length go on each of the rolls cut <paramref name="few"/> times, the rest
    /// on each of those cut <paramref name="many"/> times; null when nothing fits both.
    /// </summary>
    private (Pattern Few, Pattern Many)? Spread(
        List<(int Item, long Total)> pieces, int few, int many, int like)
    {
        var ways = new List<List<long>>();
        foreach (var (_, total) in pieces)
        {
            _meter.Steps(5.0 * (total / many));
            var way = new List<long>();
            for (var onMany = total / many; onMany >= 0; onMany--)
            {
                if ((total - onMany * many) % few == 0)
                    way.Add((total - onMany * many) / few);
            }

            if (way.Count == 0)
                return null;
            ways.Add(way);
        }

        var capacity = _instance.Bins[_rolls[like].Pattern.Bin].Capacity;
        var used = pieces.Sum(p => p.Total * _instance.Length[p.Item]);
        var least = Math.Max(0, (used - many * capacity + few - 1) / few);
        var chosen = new long[pieces.Count];
        if (!new Choice(_instance, pieces, ways, chosen, _meter).Fits(least, capacity))
            return null;
        var onFew = pieces.Select((p, n) => (p.Item, chosen[n]));
        var rest = pieces.Select((p, n) => (p.Item, (p.Total - chosen[n] * few) / many));
        if (chosen.All(c => c == 0))
            return null;
        return (Each(like, onFew), Each(like, rest));
    }

    /// <summary>Chooses one way for each length so that the sum falls into a range.</summary>
    private sealed class Choice
    {
        private readonly Instance _instance;
        private readonly List<(int Item, long Total)> _pieces;
        private readonly List<List<long>> _ways;
        private readonly long[] _chosen;
        private readonly WorkMeter _meter;
        private readonly long[] _least;
        private readonly long[] _most;
        private int _nodes = MostNodes;

        public Choice(
            Instance instance, List<(int Item, long Total)> pieces, List<List<long>> ways,
            long[] chosen, WorkMeter meter)
        {
            (_instance, _pieces, _ways, _chosen, _meter) = (instance, pieces, ways, chosen, meter);
            (_least, _most) = (new long[pieces.Count + 1], new long[pieces.Count + 1]);
            for (var n = pieces.Count - 1; n >= 0; n--)
            {
                _least[n] = _least[n + 1] + ways[n].Min() * instance.Length[pieces[n].Item];
                _most[n] = _most[n + 1] + ways[n].Max() * instance.Length[pieces[n].Item];
            }
        }

        public bool Fits(long least, long most, int from = 0)
        {
            if (_least[from] > most || _most[from] < least || _nodes-- < 0)
                return false;
            if (from == _pieces.Count)
                return true;
            _meter.Steps(30);
            foreach (var way in _ways[from])
            {
                _chosen[from] = way;
                var length = way * _instance.Length[_pieces[from].Item];
                if (Fits(least - length, most - length, from + 1))
                    return true;
            }

            return false;
        }
    }

    /// <summary>Puts the new patterns for the old, unless the rack would lose by it.</summary>
    private bool Replaced(int[] old, params (Pattern Pattern, int Times)[] fresh)
    {
        var others = _rolls.Where((_, n) => !old.Contains(n)).ToList();
        var (kept, lengths) = Rack(_rolls);
        var after = Rack([.. others, .. fresh]);
        if (after.Kept < kept || after.Lengths > lengths)
            return false;
        _rolls.Clear();
        _rolls.AddRange(others.Concat(fresh).OrderBy(r => r.Times));
        return true;
    }

    /// <summary>What goes back to the rack in all, and in how many different lengths.</summary>
    private (Int128 Kept, int Lengths) Rack(List<(Pattern Pattern, int Times)> rolls)
    {
        var left = rolls.Select(r => (r.Times, Nm: _instance.LeftNm(
                r.Pattern.Bin, r.Pattern.Room(_instance))))
            .Where(l => l.Nm > 0 && l.Nm >= _leastNm).ToList();
        return (
            left.Aggregate((Int128)0, (sum, l) => sum + (Int128)l.Nm * l.Times),
            left.Select(l => l.Nm).Distinct().Count());
    }

    private List<(int Item, long Total)> Pieces(params int[] which) =>
        [.. which.SelectMany(n => _rolls[n].Pattern.Item.Select((item, k) =>
                (Item: item, Total: (long)_rolls[n].Pattern.Count[k] * _rolls[n].Times)))
            .GroupBy(p => p.Item).OrderBy(g => g.Key)
            .Select(g => (g.Key, g.Sum(p => p.Total)))];

    private Pattern Each(int like, IEnumerable<(int Item, long Count)> pieces)
    {
        var some = pieces.Where(p => p.Count > 0).ToList();
        return new Pattern(
            _rolls[like].Pattern.Bin, [.. some.Select(p => p.Item)],
            [.. some.Select(p => (int)p.Count)]);
    }
}
