namespace PostFrame.CuttingWorker.Planning;

/// <summary>
/// Finds in which order to finish a group of connected orders. Starts from a greedy order and asks
/// for one open order less until the answer is no.
/// </summary>
internal sealed class ClosingSearch(List<int> part, OrderSet[] touches, WorkMeter meter)
{
    private const int MostRemembered = 3_000_000;

    private readonly HashSet<OrderSet> _dead = [];
    private readonly List<int> _path = [];
    private bool _stopped;

    public List<int> Best { get; private set; } = [];

    /// <summary>No order keeps fewer open.</summary>
    public int Bound { get; private set; }

    /// <param name="enough">Fewer open than this gains nothing: another group has as many.</param>
    public void Run(int enough)
    {
        Best = Greedy(out var open);
        Bound = Degeneracy();
        while (open > Math.Max(Bound, enough) && !_stopped)
        {
            _path.Clear();
            var none = OrderSet.Empty(touches.Length);
            if (Close(none, none, open - 1))
            {
                Best = [.. _path];
                open = Open(Best);
            }
            else if (!_stopped)
            {
                Bound = open;
            }
        }
    }

    private List<int> Greedy(out int most)
    {
        var (closed, opened) = (OrderSet.Empty(touches.Length), OrderSet.Empty(touches.Length));
        var (left, order) = (new List<int>(part), new List<int>());
        most = 0;
        while (left.Count > 0)
        {
            var next = left.MinBy(c => opened.CountUnion(touches[c], closed));
            most = Math.Max(most, opened.CountUnion(touches[next], closed));
            opened = opened.Union(touches[next]);
            closed = closed.With(next);
            left.Remove(next);
            order.Add(next);
        }

        return order;
    }

    private int Open(List<int> order)
    {
        var (closed, opened) = (OrderSet.Empty(touches.Length), OrderSet.Empty(touches.Length));
        var most = 0;
        foreach (var c in order)
        {
            opened = opened.Union(touches[c]);
            most = Math.Max(most, opened.CountUnion(opened, closed));
            closed = closed.With(c);
        }

        return most;
    }

    /// <summary>
    /// Largest least degree met while contracting the sharing graph, plus one: a minor-based bound
    /// on the graph's path width, which open stacks cannot go below.
    /// </summary>
    private int Degeneracy()
    {
        var near = part.ToDictionary(
            c => c, c => part.Where(d => d != c && touches[c].Has(d)).ToHashSet());
        var most = 0;
        while (near.Count > 1)
        {
            var (least, its) = near.MinBy(p => p.Value.Count);
            most = Math.Max(most, its.Count);
            near.Remove(least);
            foreach (var other in its)
                near[other].Remove(least);
            if (its.Count == 0)
                continue;
            var into = its.MinBy(d => near[d].Count);
            foreach (var other in its.Where(d => d != into))
            {
                near[into].Add(other);
                near[other].Add(into);
            }
        }

        return most + 1;
    }

    private bool Close(OrderSet closed, OrderSet opened, int limit)
    {
        var from = _path.Count;
        foreach (var c in part)
        {
            if (closed.Has(c) || !opened.Holds(touches[c]))
                continue;
            closed = closed.With(c);
            _path.Add(c);
        }

        if (_path.Count == part.Count)
            return true;
        meter.Steps(part.Count * 8.0);
        if (meter.Over)
            _stopped = true;
        if (!_stopped && !_dead.Contains(closed))
        {
            var next = part.Where(c => !closed.Has(c))
                .Select(c => (Order: c, Open: opened.CountUnion(touches[c], closed)))
                .Where(n => n.Open <= limit).OrderBy(n => n.Open).ToList();
            foreach (var (order, _) in next)
            {
                _path.Add(order);
                if (Close(closed.With(order), opened.Union(touches[order]), limit))
                    return true;
                _path.RemoveAt(_path.Count - 1);
                if (_stopped)
                    break;
            }

            if (!_stopped && _dead.Count < MostRemembered)
                _dead.Add(closed);
        }

        _path.RemoveRange(from, _path.Count - from);
        return false;
    }
}
