namespace PostFrame.CuttingWorker.Planning;

/// <summary>
/// Looks for the cheapest packing and for the proof that none is cheaper, in one fixed order of
/// steps that the work limit only cuts short.
/// </summary>
internal sealed class Search
{
    private const int MostListed = 200_000;
    private const double NearlyWhole = 1e-4;
    private const int DivesFirst = 3;

    private readonly Instance _instance;
    private readonly WorkMeter _meter;
    private readonly int _seed;
    private readonly long _step;
    private readonly Func<Packing, bool> _keeps;
    private readonly List<(Int128 Demand, long[] Top)> _worths = [];

    private Search(
        Instance instance, WorkMeter meter, int seed, Func<Packing, bool> keeps)
    {
        _keeps = keeps;
        _instance = instance;
        _meter = meter;
        _seed = seed;
        _step = Math.Max(1, instance.Bins.Select(b => b.Cost).Aggregate(0L, Gcd));
        Best = FirstFit.Decreasing(instance);
        Kept = keeps(Best) ? Best : null;
        Method = "first-fit decreasing";
        (Bound, Why) = DualBounds.Of(instance);
    }

    public Packing Best { get; private set; }

    /// <summary>The best packing that was asked to be kept; null when there was none.</summary>
    public Packing? Kept { get; private set; }

    /// <summary>No packing that meets the demand costs less.</summary>
    public long Bound { get; private set; }

    /// <summary>No packing that meets the demand and costs no more takes fewer rolls.</summary>
    public long LeastRolls(Packing than) => RollCountBound.Of(
        _instance, _worths, than.UnmetLength > 0 ? null : than.Cost);

    public string Method { get; private set; }

    public string Why { get; private set; }

    private bool Done => Best.UnmetLength == 0 && Best.Cost <= Bound;

    private long Target => Best.UnmetLength > 0 ? long.MaxValue / 4 : Best.Cost - _step;

    public static Search Run(
        Instance instance, WorkMeter meter, int seed, Func<Packing, bool> keeps)
    {
        var search = new Search(instance, meter, seed, keeps);
        if (!search.Done && !meter.Over && instance.Bins.Length > 0)
            search.Go();
        return search;
    }

    private void Go()
    {
        using var columns = new ColumnGeneration(_instance, _meter);
        foreach (var (pattern, _) in Best.Rolls)
            columns.Add(pattern);
        var solved = columns.Run(whole: false, long.MaxValue);
        Raise(columns);
        if (!solved)
            return;
        var dive = new Diving(_instance, columns, _meter, Offer);
        dive.Run(0, _seed, Target);
        var listing = new PlanPatterns(_instance, columns, _seed, _meter);
        for (var round = 0; !Done && !_meter.Over && round < 1000; round++)
        {
            columns.Set(_instance.Demand, [.. _instance.Bins.Select(b => b.Count)]);
            solved = columns.Run(whole: true, long.MaxValue);
            Raise(columns);
            if (!solved)
                return;
            if (!Done)
                Exact(columns, listing, round);
            if (!Done)
                dive.Run(round + 1, _seed, Target);
        }
    }

    private void Raise(ColumnGeneration columns)
    {
        if (columns.Best is not { } best)
            return;
        _worths.Add((best.Worth, best.Top));
        var bound = (best.Ceiling + _step - 1) / _step * _step;
        if (bound > Bound)
            (Bound, Why) = (bound, Wording.Relaxation(_instance, best, bound));
        // Duals cut short can give a better cover than the last ones do: more work would lose it.
        if (_instance.Bins.Length == 1 || Best.UnmetLength > 0 || _meter.Over)
            return;
        bound = RollCover.Bound(
            _instance, best.Top, best.Worth, Bound, Best.Cost, _step, _meter);
        if (bound > Bound)
            (Bound, Why) = (bound, Wording.Relaxation(_instance, best, bound)
                + " Rolls are counted whole: no cheaper set of whole rolls could carry that much.");
    }

    /// <summary>
    /// Takes a packing that is better in demand met, cost or rolls. Whatever finishes it afterwards
    /// leaves the rolls as they are, so two runs that end with equal ones have the same packing.
    /// </summary>
    private void Offer(Packing packing, string method)
    {
        if (!packing.Beats(Best))
            return;
        Best = packing;
        Method = method;
        if (_keeps(Best))
            Kept = Best;
    }

    /// <summary>
    /// Lists every pattern that a cheaper plan could use and decides whether a selection of them is
    /// one; where there are too many, tries with the best known ones and proves nothing.
    /// </summary>
    private void Exact(ColumnGeneration columns, PlanPatterns listing, int round)
    {
        if (columns.Best is not { } dual || Best.UnmetLength > 0)
            return;
        var target = Target;
        var near = target - dual.Bound < NearlyWhole * _instance.Bins.Max(b => b.Cost);
        var all = near
            ? listing.Within(target, MostListed, 3 << Math.Min(round, 2))
            : listing.Within(target, MostListed / 4, presses: 0);
        if (all is null && round < DivesFirst)
            return;
        var work = Math.Pow(2, Math.Min(round, 8));
        var patterns = all ?? columns.Cheapest(1500);
        if (Decided(patterns, all is not null, target, 0.15 * work))
            return;
        if (all is not null)
        {
            patterns = Closed(all, target, (int)(50 * work), _seed + round);
            if (Done || Target != target || _meter.Over)
                return;
        }

        if (patterns.Count > 4000 || near && round < DivesFirst - 1)
            return;
        var found = Selection.Find(
            _instance, patterns, target, (int)(300 * work), _seed + round, _meter);
        Offer(Trim.Of(_instance, found.Rolls), Selected(all is not null));
        if (found.None && !Done)
            Decided(patterns, all is not null, target, 4 * work);
    }

    /// <summary>
    /// Looks for a plan, or for the proof that there is none; the patterns that are left.
    /// </summary>
    private List<Pattern> Closed(List<Pattern> all, long target, int nodes, int seed)
    {
        using var closing = new GapClosing(_instance, all, target, seed, _meter);
        if (closing.None(nodes))
            Rule(target, all.Count);
        if (closing.Found is { } plan)
            Offer(Trim.Of(_instance, plan), Selected(true));
        return closing.Left;
    }

    private void Rule(long target, int patterns)
    {
        Bound = target + _step;
        Why = (patterns == 0 ? "No pattern could be in a cheaper plan"
                : $"Every pattern that could be in a cheaper plan was listed ({patterns:#,0} in "
                    + "all); no selection of them meets the demand")
            + $", so no plan takes less than {_instance.CostText(Bound)}.";
    }

    /// <summary>True when the selection was found or, of all patterns, shown not to be.</summary>
    private bool Decided(List<Pattern> patterns, bool all, long target, double work)
    {
        if (_meter.Over)
            return true;
        var (outcome, plans) = ExactCover.Within(
            _instance, patterns, target, Bound, work, _seed, _meter);
        foreach (var plan in plans)
            Offer(Trim.Of(_instance, plan), Selected(all));
        if (outcome != ExactCover.Outcome.Impossible || !all)
            return outcome != ExactCover.Outcome.Open;
        Rule(target, patterns.Count);
        return true;
    }

    private static string Selected(bool all) =>
        all ? "all patterns, exact selection" : "column generation, best selection";

    private static long Gcd(long a, long b) => b == 0 ? a : Gcd(b, a % b);
}
