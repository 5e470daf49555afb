namespace PostFrame.CuttingWorker.Planning;

/// <summary>
/// Lists every pattern that a plan within a cost could use. A roll of such a plan can be worth less
/// than it costs by no more than the plan's gap, and that holds for every set of duals there is: a
/// pattern that one of them rules out is out.
/// </summary>
/// <remarks>
/// Where the relaxation is degenerate, one dual rules out next to nothing while another leaves a
/// few hundred patterns. Others are found by pressing: patterns listed are offered a little below
/// their cost, which moves the duals to where they are worth less.
/// </remarks>
internal sealed class PlanPatterns(
    Instance instance, ColumnGeneration columns, int seed, WorkMeter meter)
{
    private const int Few = 20_000;
    private const int Many = 60_000;
    private const int NodesForEach = 8;
    private const int FromFront = 200;
    private const int FromAll = 400;
    private const int ForEachLongest = 30;

    private readonly Random _random = new(seed);
    private readonly List<DualPoint> _pressed = [];
    private readonly PatternTable?[] _tables = new PatternTable?[2];
    private readonly List<Pattern> _sample = [];
    private List<Pattern>? _listed;

    /// <summary>
    /// The patterns, or null where there are more than so many even after so many further sets of
    /// duals. The columns' demand and stock must be the instance's own, their relaxation solved.
    /// </summary>
    public List<Pattern>? Within(long target, int most, int presses)
    {
        if (columns.Best is not { } best)
            return null;
        for (var press = 0; !meter.Over; press++)
        {
            _listed ??= Listed(best, target, most);
            _listed = _listed?.Where(p => Fits(p, best, target)).ToList();
            if (_listed is { Count: <= Few } || press >= presses)
                break;
            Press();
        }

        return _listed is { Count: <= Many } ? _listed : null;
    }

    private bool Fits(Pattern pattern, DualPoint best, long target) =>
        _pressed.Append(best).All(d =>
        {
            var worth = 0L;
            for (var k = 0; k < pattern.Item.Length; k++)
                worth += (long)d.Value[pattern.Item[k]] * pattern.Count[k];
            return worth >= d.Floor(instance, pattern.Bin, target);
        });

    private void Press()
    {
        if (_listed is not null)
        {
            _sample.Clear();
            Draw(_listed, FromAll);
        }

        if (columns.Pressed(_sample) is { } point)
            _pressed.Add(point);
    }

    private List<Pattern>? Listed(DualPoint best, long target, int most)
    {
        var (tables, points) = Tables(best);
        var (patterns, nodes) = (new List<Pattern>(), most * NodesForEach);
        for (var b = 0; b < instance.Bins.Length; b++)
        {
            if (meter.Over)
                return null;
            var capacity = instance.Bins[b].Capacity;
            int[] floor = [.. points.Select(p => p.Floor(instance, b, target))];
            var nodeSteps = 80.0 * points.Count;
            var allowed = (int)Math.Min(nodes, meter.Left * 1e9 / nodeSteps + 1);
            var listing = new PatternListing(
                tables, floor, most - patterns.Count, allowed);
            var whole = listing.Run(capacity);
            meter.Steps((allowed - listing.Nodes) * nodeSteps + 1000);
            if (!whole && meter.Over)
                return null;
            if (!whole)
            {
                var spread = new PatternListing(tables, floor, 0, 0);
                spread.Spread(capacity, ForEachLongest);
                meter.Steps(spread.Patterns.Count * 400.0 * points.Count);
                _sample.Clear();
                Draw([.. listing.Patterns.Select(p => new Pattern(b, p.Item, p.Count))], FromFront);
                Draw([.. spread.Patterns.Select(p => new Pattern(b, p.Item, p.Count))], FromAll);
                return null;
            }

            patterns.AddRange(listing.Patterns.Select(p => new Pattern(b, p.Item, p.Count)));
        }

        return patterns;
    }

    /// <summary>
    /// Bounds for the newest duals, for those that prove most, and for the best of the others.
    /// </summary>
    private (List<PatternTable> Tables, List<DualPoint> Points) Tables(DualPoint best)
    {
        var points = new List<DualPoint> { best };
        if (_pressed.Count > 0)
            points.Insert(0, _pressed[^1]);
        if (_pressed.Count > 1)
            points.Add(_pressed.SkipLast(1).MaxBy(d => d.Bound)!);
        columns.Table.Fill(points[0].Value, instance.Demand);
        List<PatternTable> tables = [columns.Table];
        for (var t = 1; t < points.Count; t++)
        {
            var table = _tables[t - 1] ??= new PatternTable(
                instance.Length, instance.Bins.Max(b => b.Capacity), meter);
            table.Fill(points[t].Value, instance.Demand);
            tables.Add(table);
        }

        return (tables, points);
    }

    private void Draw(List<Pattern> patterns, int most)
    {
        for (var k = 0; k < most && patterns.Count > 0; k++)
            _sample.Add(patterns[_random.Next(patterns.Count)]);
    }
}
