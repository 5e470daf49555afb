namespace PostFrame.CuttingWorker.Planning;

/// <summary>
/// Solves the linear relaxation over all patterns, making patterns as the duals ask for them, and
/// proves lower bounds in whole numbers on the way. The duals are smoothed towards the best bound's
/// (Wentges) and every round brings several patterns that share few items.
/// </summary>
internal sealed class ColumnGeneration : IDisposable
{
    private const int ColumnsForEachBin = 60;
    private const int ColumnsPerRound = 1200;
    private const double Smoothing = 0.7;
    private const double Negligible = 1e-8;
    private const double PressedBelow = 0.001;
    private const double MostPressed = 0.0001;
    private const int PressRounds = 60;

    private readonly Instance _instance;
    private readonly WorkMeter _meter;
    private readonly MasterLp _master;
    private readonly PatternTable _table;
    private readonly double[] _cost;
    private readonly double _costUnit;
    private readonly HashSet<string> _known = [];
    private double[] _center = [];
    private DualPoint? _last;

    public ColumnGeneration(Instance instance, WorkMeter meter)
    {
        _instance = instance;
        _meter = meter;
        _costUnit = Math.Max(1, instance.Bins.Max(b => b.Cost));
        _cost = [.. instance.Bins.Select(b => b.Cost / _costUnit)];
        Demand = instance.Demand;
        Stock = [.. instance.Bins.Select(b => b.Count)];
        var longest = (double)instance.Bins.Max(b => b.Capacity);
        _master = new MasterLp(
            instance, Demand, Stock, _cost,
            [.. instance.Length.Select(l => 4 + 100 * l / longest)], meter);
        _table = new PatternTable(instance.Length, instance.Bins.Max(b => b.Capacity), meter);
    }

    public int[] Demand { get; private set; }

    public int[] Stock { get; private set; }

    /// <summary>The relaxation's cost, in the instance's cost; exact only to rounding.</summary>
    public double Relaxed => _master.Objective * _costUnit;

    public IReadOnlyList<Pattern> Patterns => _master.Patterns;

    public double[] Amount => _master.Amount;

    /// <summary>The best bound proven for the demand and stock as set.</summary>
    public DualPoint? Best { get; private set; }

    public PatternTable Table => _table;

    public bool Add(Pattern pattern)
    {
        var key = string.Join(
            ',', pattern.Item.Zip(pattern.Count, (i, c) => $"{i}x{c}").Prepend($"{pattern.Bin}"));
        if (!_known.Add(key))
            return false;
        _master.Add(pattern);
        return true;
    }

    /// <summary>Sets what is left to cut, and shuts the patterns that would overshoot it.</summary>
    public void Set(int[] demand, int[] stock)
    {
        (Demand, Stock) = (demand, stock);
        _master.Set(demand, stock);
        Best = null;
        for (var p = 0; p < Patterns.Count; p++)
            _master.Shut(p, !Fits(Patterns[p]));
    }

    public bool Fits(Pattern pattern)
    {
        if (Stock[pattern.Bin] == 0)
            return false;
        for (var k = 0; k < pattern.Item.Length; k++)
        {
            if (pattern.Count[k] > Demand[pattern.Item[k]])
                return false;
        }

        return true;
    }

    /// <summary>
    /// Runs until the relaxation is solved, its bound rounds up to the same whole cost as the
    /// relaxation itself (unless <paramref name="whole"/>), the bound passes
    /// <paramref name="enough"/>, or the work is over. False when the library failed.
    /// </summary>
    public bool Run(bool whole, long enough, int rounds = 10_000)
    {
        var smooth = Smoothing;
        if (Best is null)
            _center = [.. _instance.Length.Select(l => l / (double)_instance.Bins[0].Capacity)];
        for (var round = 0; round < rounds; round++)
        {
            if (!_master.Solve())
                return false;
            if (Finished(whole, enough))
            {
                if (!_master.Swaps || Best!.Ceiling >= enough)
                    return true;
                _master.EndSwaps();
                continue;
            }

            if (_meter.Over)
                return true;
            var weight = Best is null ? 1 : smooth;
            var added = Price(weight);
            if (_meter.Over)
                return true;
            if (added > 0 || weight == 1)
                smooth = Math.Max(smooth, Smoothing / 2);
            else if (weight > 0)
                smooth = smooth < 0.1 ? 0 : smooth / 2;
            else if (_master.Swaps)
                _master.EndSwaps();
            else
                return true;
        }

        return true;
    }

    private bool Finished(bool whole, long enough) => Best is { } known
        && (known.Ceiling >= enough
            || !whole && known.Ceiling >= Math.Ceiling(Relaxed - 1e-6)
            || Relaxed - known.Bound < 1e-7 * Math.Max(1, _costUnit));

    /// <summary>
    /// Prices at the smoothed duals, proves what they prove, adds patterns; how many.
    /// </summary>
    private int Price(double smooth)
    {
        var dual = new double[_instance.Items];
        for (var i = 0; i < dual.Length; i++)
            dual[i] = Demand[i] == 0 ? 0
                : smooth == 0 ? _master.Dual[i]
                : smooth * _center[i] + (1 - smooth) * _master.Dual[i];
        if (Point(dual) is not var (point, scale))
            return 0;
        _last = point;
        if (Best is null || point.Bound > Best.Bound)
        {
            Best = point;
            _center = dual;
        }

        var added = 0;
        for (var b = 0; b < _instance.Bins.Length && !_meter.Over; b++)
        {
            if (Stock[b] > 0)
                added += Columns(b, scale);
        }

        return added;
    }

    /// <summary>
    /// The duals as whole numbers with what they prove; fills the table with them. Null when the
    /// work is over before every bin was looked at.
    /// </summary>
    private (DualPoint Point, double Scale)? Point(double[] dual)
    {
        var scale = Scale(dual);
        var value = new int[dual.Length];
        for (var i = 0; i < value.Length; i++)
            value[i] = (int)(dual[i] * scale);
        _table.Fill(value, Demand);
        var best = new long[_instance.Bins.Length];
        for (var b = 0; b < best.Length; b++)
        {
            if (_meter.Over)
                return null;
            best[b] = _table.Top(_instance.Bins[b].Capacity, 200_000);
        }

        _meter.Steps(best.Length * 500.0);
        return (
            DualPoint.Of(_instance, Demand, Stock, value, best, _costUnit / scale), scale);
    }

    /// <summary>
    /// Other duals that prove nearly as much, but under which as many as possible of the patterns
    /// given are worth less than they cost. Null when the library failed.
    /// </summary>
    public DualPoint? Pressed(IReadOnlyList<Pattern> patterns)
    {
        _master.Press(MostPressed);
        _master.Press(patterns, PressedBelow, MostPressed);
        _last = null;
        for (var round = 0; round < PressRounds && !_meter.Over; round++)
        {
            if (!_master.Solve() || Price(0) == 0)
                break;
        }

        _master.Press(0);
        return _last;
    }

    /// <summary>Whole-number scale that keeps every table entry below 2³⁰.</summary>
    private double Scale(double[] dual)
    {
        var (density, total) = (0.0, 0.0);
        for (var i = 0; i < dual.Length; i++)
        {
            density = Math.Max(density, dual[i] / _instance.Length[i]);
            total += dual[i] * Demand[i];
        }

        var full = 1.1 * density * _instance.Bins.Max(b => b.Capacity);
        var most = Math.Min(total, full + dual.Max());
        return Math.Min(1 << 29, (1 << 30) / Math.Max(most, 1e-9));
    }

    private int Columns(int bin, double scale)
    {
        var capacity = _instance.Bins[bin].Capacity;
        var price = _cost[bin] + _master.StockDual[bin];
        var floor = (int)Math.Min(int.MaxValue, price * scale);
        _meter.Steps(_instance.Items * 10.0 + 100);
        var first = new List<(int Bound, int Item)>();
        for (var i = 0; i < _instance.Items; i++)
        {
            if (Demand[i] == 0 || _instance.Length[i] > capacity)
                continue;
            if (_table.Bound(i, capacity) <= floor)
                break;
            var bound = _table.FirstBound(i, capacity);
            if (bound > floor)
                first.Add((bound, i));
        }

        first.Sort((a, b) => b.Bound != a.Bound ? b.Bound.CompareTo(a.Bound) : a.Item - b.Item);
        var most = Math.Clamp(ColumnsPerRound / Stock.Length, 1, ColumnsForEachBin);
        var covered = new int[_instance.Items];
        var added = 0;
        foreach (var (_, item) in first)
        {
            if (added >= most)
                break;
            if (covered[item] > 1 || _table.Best(item, capacity, floor, 20_000) is not { } found)
                continue;
            var pattern = new Pattern(bin, found.Item, found.Count);
            if (Worth(pattern) <= price + Negligible)
                continue;
            foreach (var i in found.Item)
                covered[i]++;
            if (Add(pattern))
                added++;
        }

        return added;
    }

    /// <summary>The known patterns of least reduced cost, at most so many.</summary>
    public List<Pattern> Cheapest(int most) =>
        [.. Patterns.Where(Fits)
            .OrderBy(p => _cost[p.Bin] + _master.StockDual[p.Bin] - Worth(p)).Take(most)];

    private double Worth(Pattern pattern)
    {
        var worth = 0.0;
        for (var k = 0; k < pattern.Item.Length; k++)
            worth += _master.Dual[pattern.Item[k]] * pattern.Count[k];
        return worth;
    }

    public void Dispose() => _master.Dispose();
}
