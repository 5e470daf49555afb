namespace PostFrame.CuttingWorker.Planning;

/// <summary>Finds the rank-one cuts that a fractional solution breaks most.</summary>
internal sealed class CutSeparation(Instance instance, WorkMeter meter)
{
    private const double LeastBroken = 0.02;

    private readonly HashSet<string> _known = [];
    private List<(Pattern Pattern, double Amount)> _support = [];
    private List<int>[] _near = [];

    /// <summary>The most broken cuts not given before, at most so many.</summary>
    public List<RankOneCut> Find(IEnumerable<(Pattern, double)> support, int most)
    {
        _support = [.. support];
        _near = new List<int>[instance.Items];
        var beside = new HashSet<int>[instance.Items];
        for (var i = 0; i < beside.Length; i++)
            (_near[i], beside[i]) = ([], []);
        for (var p = 0; p < _support.Count; p++)
        {
            foreach (var i in _support[p].Pattern.Item)
            {
                _near[i].Add(p);
                beside[i].UnionWith(_support[p].Pattern.Item);
            }
        }

        var found = new List<(double Broken, RankOneCut Cut)>();
        for (var i = 0; i < beside.Length; i++)
        {
            var next = beside[i].Where(j => j != i).Order().ToList();
            for (var a = 0; a < next.Count; a++)
            {
                for (var b = a + 1; b < next.Count; b++)
                    Try([i, next[a], next[b]], found);
            }
        }

        var uses = new int[instance.Items];
        var chosen = new List<RankOneCut>();
        foreach (var (_, cut) in found.OrderByDescending(f => f.Broken))
        {
            if (chosen.Count >= most)
                break;
            if (cut.Item.Any(i => uses[i] > 4))
                continue;
            foreach (var i in cut.Item)
                uses[i]++;
            _known.Add(Key(cut));
            chosen.Add(cut);
        }

        return chosen;
    }

    private void Try(int[] items, List<(double, RankOneCut)> found)
    {
        Array.Sort(items);
        var cut = new RankOneCut(items, [1, 1, 1], 2);
        if (Broken(cut) is var broken && broken < LeastBroken)
            return;
        if (_known.Contains(Key(cut)))
            return;
        found.Add((broken, cut));
    }

    private double Broken(RankOneCut cut)
    {
        var least = cut.Least(instance.Demand);
        var sum = 0.0;
        for (var k = 0; k < cut.Item.Length; k++)
        {
            foreach (var p in _near[cut.Item[k]])
            {
                var (pattern, amount) = _support[p];
                if (First(cut, pattern) == k)
                    sum += amount * cut.Of(pattern);
            }
        }

        meter.Steps(100);
        return least - sum;
    }

    /// <summary>Which of the cut's items the pattern holds first, so that it counts once.</summary>
    private static int First(RankOneCut cut, Pattern pattern)
    {
        for (var k = 0; k < cut.Item.Length; k++)
        {
            if (Array.IndexOf(pattern.Item, cut.Item[k]) >= 0)
                return k;
        }

        return -1;
    }

    private static string Key(RankOneCut cut) =>
        $"{string.Join(',', cut.Item)}:{string.Join(',', cut.Weight)}:{cut.Divisor}";
}
