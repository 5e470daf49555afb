using PostFrame.CuttingWorker.Planning;

namespace PostFrame.PlanningTests;

/// <summary>
/// Tries everything: the first piece left goes on some roll with any others that fit.
/// </summary>
internal sealed class BruteForce(CuttingProblem problem)
{
    private readonly Dictionary<string, long?> _known = [];

    /// <summary>Least cost that meets the whole demand; null when no stock can.</summary>
    public long? LeastCost() => Least(
        [.. problem.Items.Select(i => i.Demand)], [.. problem.Stock.Select(s => s.Count ?? 99)]);

    private long? Least(int[] demand, int[] stock)
    {
        var first = Array.FindIndex(demand, d => d > 0);
        if (first < 0)
            return 0;
        var key = string.Join(',', demand) + '|' + string.Join(',', stock);
        if (_known.TryGetValue(key, out var known))
            return known;
        long? best = null;
        for (var s = 0; s < stock.Length; s++)
        {
            if (stock[s] == 0)
                continue;
            var type = problem.Stock[s];
            var left = (int[])stock.Clone();
            left[s]--;
            var room = type.LengthNm - type.EndTrimNm;
            if (problem.Items[first].LengthNm > room)
                continue;
            var rest = (int[])demand.Clone();
            rest[first]--;
            foreach (var after in Fillings(rest, first, room - problem.Items[first].LengthNm))
            {
                if (Least(after, left) is { } more && (best is null || more + type.Cost < best))
                    best = more + type.Cost;
            }
        }

        return _known[key] = best;
    }

    private IEnumerable<int[]> Fillings(int[] demand, int from, long room)
    {
        if (from == demand.Length)
        {
            yield return demand;
            yield break;
        }

        for (var take = 0; take <= demand[from]
            && take * problem.Items[from].LengthNm <= room; take++)
        {
            var rest = (int[])demand.Clone();
            rest[from] -= take;
            foreach (var after in Fillings(rest, from + 1,
                room - take * problem.Items[from].LengthNm))
                yield return after;
        }
    }
}
