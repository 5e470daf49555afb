namespace PostFrame.CuttingWorker.Planning;

/// <summary>
/// Looks for the cheapest packing and for the proof that none is cheaper, in one fixed order of
/// steps that the work limit only cuts short.
/// </summary>
internal sealed class Search
{
    private const int MostListed = 50_000;
    private const int DivesFirst = 3;

    private readonly Instance _instance;
    private readonly WorkMeter _meter;
    private readonly int _seed;
    private readonly long _step;
    private readonly long _minUsefulNm;

    private Search(Instance instance, long minUsefulNm, WorkMeter meter, int seed)
    {
        _minUsefulNm = minUsefulNm;
        _instance = instance;
        _meter = meter;
        _seed = seed;
        _step = Math.Max(1, instance.Bins.Select(b => b.Cost).Aggregate(0L, Gcd));
        Best = Polish.Offcuts(instance, FirstFit.Decreasing(instance), minUsefulNm, meter);
        Method = "first-fit decreasing";
        (Bound, Why) = DualBounds.Of(instance);
    }

    public Packing Best { get; private set; }

    /// <summary>No packing that meets the demand costs less.</summary>
    public long Bound { get; private set; }

    public string Method { get; private set; }

    public string Why { get; private set; }

    private bool Done => Best.UnmetLength == 0 && Best.Cost <= Bound;

    private long Target => Best.UnmetLength > 0 ? long.MaxValue / 4 : Best.Cost - _step;

    public static Search Run(
        Instance instance, long minUsefulNm, WorkMeter meter, int seed)
    {
        var search = new Search(instance, minUsefulNm, meter, seed);
        if (!search.Done && !meter.Over && instance.Bins.Length > 0)
            search.Go();
        return search;
    }

    private void Go()
    {
        using var columns = new ColumnGeneration(_instance, _meter);
        foreach (var (pattern, _) in Best.Rolls)
            columns.Add(pattern);
        if (!columns.Run(whole: false, long.MaxValue))
            return;
        Raise(columns);
        var dive = new Diving(_instance, columns, _meter, Offer);
        dive.Run(0, _seed, Target);
        for (var round = 0; !Done && !_meter.Over && round < 1000; round++)
        {
            columns.Set(_instance.Demand, [.. _instance.Bins.Select(b => b.Count)]);
            if (!columns.Run(whole: true, long.MaxValue))
                return;
            Raise(columns);
            if (!Done)
                Exact(columns, round);
            if (!Done)
                dive.Run(round + 1, _seed, Target);
        }
    }

    private void Raise(ColumnGeneration columns)
    {
        if (columns.Best is not { } best)
            return;
        var bound = (best.Ceiling + _step - 1) / _step * _step;
        if (bound > Bound)
            (Bound, Why) = (bound, Wording.Relaxation(_instance, best, bound));
        if (_instance.Bins.Length == 1 || Best.UnmetLength > 0)
            return;
        bound = RollCover.Bound(
            _instance, best.Top, best.Worth, Bound, Best.Cost, _step, _meter);
        if (bound > Bound)
            (Bound, Why) = (bound, Wording.Relaxation(_instance, best, bound)
                + " Rolls are counted whole: no cheaper set of whole rolls could carry that much.");
    }

    private void Offer(Packing packing, string method)
    {
        if (!packing.Beats(Best))
            return;
        Best = Polish.Offcuts(_instance, packing, _minUsefulNm, _meter);
        Method = method;
    }

    /// <summary>
    /// Lists every pattern that a cheaper plan could use and decides whether a selection of them is
    /// one; where there are too many, tries with the best known ones and proves nothing.
    /// </summary>
    private void Exact(ColumnGeneration columns, int round)
    {
        if (columns.Best is not { } dual || Best.UnmetLength > 0)
            return;
        var target = Target;
        var all = Listed(columns, dual, target);
        if (all is null && round < DivesFirst)
            return;
        var patterns = all ?? columns.Cheapest(1500);
        var work = Math.Pow(2, Math.Min(round, 8));
        if (Decided(patterns, all is not null, target, 0.15 * work) || patterns.Count > 4000)
            return;
        var found = Selection.Find(
            _instance, patterns, target, (int)(300 * work), _seed + round, _meter);
        Offer(Trim.Of(_instance, found.Rolls), Selected(all is not null));
        if (found.None && !Done)
            Decided(patterns, all is not null, target, 4 * work);
    }

    /// <summary>True when the selection was found or, of all patterns, shown not to be.</summary>
    private bool Decided(List<Pattern> patterns, bool all, long target, double work)
    {
        if (_meter.Over)
            return true;
        var (outcome, rolls) = ExactCover.Within(
            _instance, patterns, target, Bound, work, _seed, _meter);
        if (outcome == ExactCover.Outcome.Found)
            Offer(Trim.Of(_instance, rolls), Selected(all));
        if (outcome != ExactCover.Outcome.Impossible || !all)
            return outcome != ExactCover.Outcome.Open;
        Bound = target + _step;
        Why = $"All {patterns.Count} patterns that could be in a cheaper plan were listed; "
            + "no selection of them meets the demand.";
        return true;
    }

    private static string Selected(bool all) =>
        all ? "all patterns, exact selection" : "column generation, best selection";

    private List<Pattern>? Listed(ColumnGeneration columns, DualPoint dual, long target)
    {
        columns.Table.Fill(dual.Value, _instance.Demand);
        var patterns = new List<Pattern>();
        for (var b = 0; b < _instance.Bins.Length; b++)
        {
            var bin = _instance.Bins[b];
            var all = columns.Table.All(
                bin.Capacity, dual.Floor(_instance, b, target), MostListed - patterns.Count,
                    5_000_000);
            if (all is null)
                return null;
            patterns.AddRange(all.Select(p => new Pattern(b, p.Item, p.Count)));
        }

        return patterns;
    }

    private static long Gcd(long a, long b) => b == 0 ? a : Gcd(b, a % b);
}
