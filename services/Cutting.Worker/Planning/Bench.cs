namespace PostFrame.CuttingWorker.Planning;

/// <summary>Puts rolls in cutting order: the minimisation of open stacks.</summary>
/// <remarks>
/// Searches over the order in which orders are finished, not over the order of rolls: to finish an
/// order, all its rolls are cut, which opens every order that shares one. Sets of finished orders
/// that cannot be continued are remembered. Source of the idea: Chu and Stuckey, "Minimizing the
/// maximum number of open stacks by customer search", CP 2009.
/// </remarks>
public static class Bench
{
    /// <summary>
    /// Finds a sequence with few orders open at once, and the proof that none has fewer where the
    /// limit allows it.
    /// </summary>
    /// <param name="ordersOfRoll">For each roll, the orders that have a piece on it.</param>
    /// <param name="limits">Work allowed.</param>
    /// <param name="cancel">Ends the search early with the best sequence so far.</param>
    public static BenchSequence Sequence(
        IReadOnlyList<IReadOnlyCollection<string>> ordersOfRoll, PlanLimits limits,
        CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(ordersOfRoll);
        ArgumentNullException.ThrowIfNull(limits);
        var names = ordersOfRoll.SelectMany(o => o).Distinct(StringComparer.Ordinal).ToList();
        var index = names.Select((n, i) => (n, i))
            .ToDictionary(p => p.n, p => p.i, StringComparer.Ordinal);
        var rolls = ordersOfRoll.Select(o => o.Select(n => index[n]).Distinct().ToArray())
            .ToArray();
        var touches = OrderSet.Neighbours(names.Count, rolls);
        var meter = new WorkMeter(limits, cancel);
        var (closing, bound) = (new List<int>(), rolls.Select(r => r.Length).DefaultIfEmpty(0)
            .Max());
        foreach (var part in Parts(touches))
        {
            var search = new ClosingSearch(part, touches, meter);
            search.Run(bound);
            closing.AddRange(search.Best);
            bound = Math.Max(bound, search.Bound);
        }

        var order = RollOrder(closing, rolls);
        return new BenchSequence
        {
            Rolls = order,
            Closing = [.. closing.Select(c => names[c])],
            MostOpen = MostOpen(ordersOfRoll, order),
            LowerBound = bound,
        };
    }

    /// <summary>The rolls in the order that finishes the orders as listed.</summary>
    public static BenchSequence InOrder(
        IReadOnlyList<IReadOnlyCollection<string>> ordersOfRoll, IReadOnlyList<string> closing)
    {
        ArgumentNullException.ThrowIfNull(ordersOfRoll);
        ArgumentNullException.ThrowIfNull(closing);
        var index = closing.Select((n, i) => (n, i))
            .ToDictionary(p => p.n, p => p.i, StringComparer.Ordinal);
        var rolls = ordersOfRoll.Select(o => o.Select(n => index[n]).ToArray()).ToArray();
        var order = RollOrder([.. Enumerable.Range(0, closing.Count)], rolls);
        return new BenchSequence
        {
            Rolls = order,
            Closing = closing,
            MostOpen = MostOpen(ordersOfRoll, order),
            LowerBound = rolls.Select(r => r.Length).DefaultIfEmpty(0).Max(),
        };
    }

    /// <summary>The most orders open at once when the rolls are cut in this order.</summary>
    public static int MostOpen(
        IReadOnlyList<IReadOnlyCollection<string>> ordersOfRoll, IReadOnlyList<int> order)
    {
        ArgumentNullException.ThrowIfNull(ordersOfRoll);
        ArgumentNullException.ThrowIfNull(order);
        var last = new Dictionary<string, int>(StringComparer.Ordinal);
        for (var at = 0; at < order.Count; at++)
        {
            foreach (var name in ordersOfRoll[order[at]])
                last[name] = at;
        }

        var (open, most) = (new HashSet<string>(StringComparer.Ordinal), 0);
        for (var at = 0; at < order.Count; at++)
        {
            open.UnionWith(ordersOfRoll[order[at]]);
            most = Math.Max(most, open.Count);
            foreach (var name in ordersOfRoll[order[at]])
            {
                if (last[name] == at)
                    open.Remove(name);
            }
        }

        return most;
    }

    private static List<int> RollOrder(List<int> closing, int[][] rolls)
    {
        var waiting = new List<int>[closing.Count];
        foreach (var c in closing)
            waiting[c] = [];
        for (var r = 0; r < rolls.Length; r++)
        {
            foreach (var c in rolls[r])
                waiting[c].Add(r);
        }

        var (order, cut) = (new List<int>(), new bool[rolls.Length]);
        foreach (var roll in closing.SelectMany(c => waiting[c])
            .Concat(Enumerable.Range(0, rolls.Length)).Where(r => !cut[r]))
        {
            if (cut[roll])
                continue;
            cut[roll] = true;
            order.Add(roll);
        }

        return order;
    }

    /// <summary>
    /// Groups of orders that share no roll with others: they can follow one another.
    /// </summary>
    private static IEnumerable<List<int>> Parts(OrderSet[] touches)
    {
        var seen = new bool[touches.Length];
        for (var start = 0; start < touches.Length; start++)
        {
            if (seen[start])
                continue;
            var part = new List<int> { start };
            seen[start] = true;
            for (var at = 0; at < part.Count; at++)
            {
                for (var c = 0; c < touches.Length; c++)
                {
                    if (seen[c] || !touches[part[at]].Has(c))
                        continue;
                    seen[c] = true;
                    part.Add(c);
                }
            }

            yield return part;
        }
    }
}
