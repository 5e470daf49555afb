namespace PostFrame.CuttingWorker.Planning;

/// <summary>
/// Works on a complete list of the patterns that a plan within a cost could use: strikes off what
/// further duals rule out, cuts off fractions of plans and branches, until every branch is shown to
/// cost more, which proves that there is no such plan, or one is met.
/// </summary>
/// <remarks>
/// Branches on whether two pieces come from one roll (Ryan and Foster 1981), for pieces that are
/// wanted once. The linear program only suggests: what counts as shown is reckoned again in whole
/// numbers over every pattern left.
/// </remarks>
internal sealed class GapClosing : IDisposable
{
    private const int RootRounds = 30;
    private const int NodeRounds = 3;
    private const int RootTilts = 12;
    private const int TiltsAtOnce = 3;
    private const int CutsPerRound = 60;
    private const int MostCuts = 500;
    private const int MostDepth = 300;
    private const double Scale = 1L << 32;
    private const double Negligible = 1e-7;

    private readonly Instance _instance;
    private readonly long _target;
    private readonly WorkMeter _meter;
    private readonly double _costUnit;
    private readonly int[] _stock;
    private readonly MasterLp _master;
    private readonly CutSeparation _separation;
    private readonly Random _random;
    private readonly List<bool> _shut = [];
    private readonly List<(int, int)> _together = [];
    private int _nodes;
    private bool _open;

    public GapClosing(
        Instance instance, IReadOnlyList<Pattern> patterns, long target, int seed,
        WorkMeter meter)
    {
        (_instance, _target, _meter) = (instance, target, meter);
        _random = new Random(seed);
        _costUnit = Math.Max(1, instance.Bins.Max(b => b.Cost));
        _stock = [.. instance.Bins.Select(b => b.Count)];
        _master = new MasterLp(
            instance, instance.Demand, _stock,
            [.. instance.Bins.Select(b => b.Cost / _costUnit)],
            [.. instance.Length.Select(_ => 100.0)], meter);
        _master.EndSwaps();
        _separation = new CutSeparation(instance, meter);
        foreach (var pattern in patterns.TakeWhile(_ => !meter.Over))
            Add(pattern);
    }

    /// <summary>The patterns not struck off.</summary>
    public List<Pattern> Left => [.. _master.Patterns.Where((_, p) => !_shut[p])];

    /// <summary>A plan met on the way: patterns that cover the demand within the cost.</summary>
    public List<(Pattern, int)>? Found { get; private set; }

    /// <summary>True when no plan costs the target or less; at most so many branchings.</summary>
    public bool None(int nodes)
    {
        _nodes = nodes;
        return Closed(RootRounds, RootTilts) || !_open && Found is null && Branched(0);
    }

    private void Add(Pattern pattern)
    {
        _master.Add(pattern);
        _shut.Add(false);
    }

    private void Shut(int column, bool shut)
    {
        if (_shut[column] != shut)
            _master.Shut(column, shut);
        _shut[column] = shut;
    }

    /// <summary>True when no plan that the columns left allow costs the target or less.</summary>
    private bool Closed(int rounds, int tilts)
    {
        for (var round = 0; ; round++)
        {
            if (!Solved())
                return false;
            if (Proves() || tilts > 0 && TiltsProve(ref tilts))
                return true;
            if (_open)
                return false;
            var support = Enumerable.Range(0, _shut.Count)
                .Where(p => _master.Amount[p] > Negligible)
                .Select(p => (_master.Patterns[p], _master.Amount[p])).ToList();
            if (support.All(s => Math.Abs(s.Item2 - Math.Round(s.Item2)) < 1e-6)
                && _master.Objective * _costUnit < _target + 0.5)
            {
                Found = [.. support.Select(s => (s.Item1, (int)Math.Round(s.Item2)))];
                return false;
            }

            if (round == rounds || _master.Cuts.Count > MostCuts)
                return false;
            var cuts = _separation.Find(support, CutsPerRound);
            if (cuts.Count == 0)
                return false;
            foreach (var cut in cuts)
                _master.Add(cut, cut.Least(_instance.Demand));
        }
    }

    private bool Solved()
    {
        if (!_meter.Over && _master.Solve())
            return true;
        _open = true;
        return false;
    }

    /// <summary>
    /// Duals for slightly other demands strike off patterns that the first ones leave; goes on as
    /// long as that pays.
    /// </summary>
    private bool TiltsProve(ref int tilts)
    {
        var before = _shut.Count(s => !s);
        for (var t = 1; t <= tilts; t++)
        {
            _master.Tilt([.. _instance.Demand
                .Select(d => d * (1 + 0.1 * (2 * _random.NextDouble() - 1)))]);
            if (!Solved())
                break;
            if (Proves())
                return true;
            if (t % TiltsAtOnce == 0 && _shut.Count(s => !s) > before * 0.9)
                tilts = 0;
            if (t % TiltsAtOnce == 0)
                before = _shut.Count(s => !s);
        }

        _master.Set(_instance.Demand, _stock);
        return Solved() && Proves();
    }

    /// <summary>
    /// Reads the duals as whole numbers and reckons, over every pattern left, what they prove: true
    /// when every plan costs more than the target. Strikes off what no cheaper plan can use.
    /// </summary>
    private bool Proves()
    {
        var worth = Int128.Zero;
        var of = new long[_shut.Count];
        var value = _master.Dual.Select(d => (long)(d * Scale)).ToArray();
        for (var i = 0; i < value.Length; i++)
            worth += (Int128)value[i] * _instance.Demand[i];
        for (var p = 0; p < of.Length; p++)
        {
            var pattern = _master.Patterns[p];
            for (var k = 0; k < pattern.Item.Length && !_shut[p]; k++)
                of[p] += value[pattern.Item[k]] * pattern.Count[k];
        }

        _meter.Steps(of.Length * 25.0);
        for (var c = 0; c < _master.Cuts.Count; c++)
        {
            var extra = (long)(_master.CutDual[c] * Scale);
            if (extra == 0)
                continue;
            worth += (Int128)extra * _master.Cuts[c].Least;
            foreach (var (column, times) in _master.Cuts[c].Times)
                of[column] += extra * times;
            _meter.Steps(_master.Cuts[c].Times.Count * 2.0);
        }

        var top = new long[_stock.Length];
        for (var p = 0; p < of.Length; p++)
        {
            if (!_shut[p])
                top[_master.Patterns[p].Bin] = Math.Max(top[_master.Patterns[p].Bin], of[p]);
        }

        var point = DualPoint.Of(_instance, _stock, worth, top, _costUnit / Scale);
        if (point.Ceiling > _target)
            return true;
        var floor = Enumerable.Range(0, top.Length)
            .Select(b => point.LongFloor(_instance, b, _target)).ToArray();
        for (var p = 0; p < of.Length; p++)
        {
            if (!_shut[p] && of[p] < floor[_master.Patterns[p].Bin])
                Shut(p, true);
        }

        return false;
    }

    private bool Branched(int depth)
    {
        if (_meter.Over || _nodes-- <= 0 || depth > MostDepth || Pair() is not var (i, j))
        {
            _open = true;
            return false;
        }

        foreach (var together in new[] { true, false })
        {
            var before = _shut.ToArray();
            if (together)
                _together.Add((i, j));
            Restrict(i, j, together);
            var closed = Closed(NodeRounds, tilts: 0)
                || !_open && Found is null && Branched(depth + 1);
            if (together)
                _together.RemoveAt(_together.Count - 1);
            for (var p = 0; p < _shut.Count; p++)
                Shut(p, p >= before.Length || before[p]);
            if (!closed)
                return false;
        }

        return true;
    }

    /// <summary>
    /// The two pieces, each wanted once, whose sharing a roll is least decided.
    /// </summary>
    private (int, int)? Pair()
    {
        var share = new Dictionary<(int, int), double>();
        for (var p = 0; p < _shut.Count; p++)
        {
            if (_master.Amount[p] < Negligible)
                continue;
            var items = _master.Patterns[p].Item.Where(i => _instance.Demand[i] == 1).ToArray();
            for (var a = 0; a < items.Length; a++)
            {
                for (var b = a + 1; b < items.Length; b++)
                {
                    var pair = (Math.Min(items[a], items[b]), Math.Max(items[a], items[b]));
                    share[pair] = share.GetValueOrDefault(pair) + _master.Amount[p];
                }
            }
        }

        var open = share.Where(s => s.Value is > 0.01 and < 0.99)
            .OrderBy(s => Math.Abs(s.Value - 0.6)).ThenBy(s => s.Key)
            .Select(s => s.Key).ToList();
        return open.Count == 0 ? null : open[0];
    }

    /// <summary>
    /// Keeps only patterns that hold both pieces or neither, or not both. One that does not is
    /// replaced by what is left of it without the piece, so that the list stays complete.
    /// </summary>
    private void Restrict(int i, int j, bool together)
    {
        var count = _shut.Count;
        for (var p = 0; p < count; p++)
        {
            if (_shut[p])
                continue;
            var pattern = _master.Patterns[p];
            var (a, b) = (pattern.Item.Contains(i), pattern.Item.Contains(j));
            if (together ? a == b : !(a && b))
                continue;
            Shut(p, true);
            if (a)
                Add(Without(pattern, i));
            if (b)
                Add(Without(pattern, j));
        }

        _meter.Steps(count * 20.0);
    }

    /// <summary>The pattern without a piece and without all that must go with it.</summary>
    private Pattern Without(Pattern pattern, int item)
    {
        var gone = new HashSet<int> { item };
        for (var more = true; more;)
        {
            more = false;
            foreach (var (a, b) in _together)
            {
                if (gone.Contains(a) != gone.Contains(b))
                    more = gone.Add(a) | gone.Add(b);
            }
        }

        var keep = Enumerable.Range(0, pattern.Item.Length)
            .Where(k => !gone.Contains(pattern.Item[k])).ToArray();
        return new Pattern(
            pattern.Bin, [.. keep.Select(k => pattern.Item[k])],
            [.. keep.Select(k => pattern.Count[k])]);
    }

    public void Dispose() => _master.Dispose();
}
