namespace PostFrame.CuttingWorker.Planning;

/// <summary>Plans again in the middle of a job without undoing a cut.</summary>
public static class Replanning
{
    /// <summary>
    /// What is left to plan: the demand less the pieces made, the stock less the rolls begun, and
    /// what remains of each begun roll as a remnant at no further cost. Change the items' demand
    /// first when the order itself changed.
    /// </summary>
    /// <param name="problem">The problem with the demand as it now stands.</param>
    /// <param name="rolls">Every roll begun so far.</param>
    /// <exception cref="ArgumentException">A roll names unknown stock or gave more than it
    /// had.</exception>
    public static CuttingProblem Remaining(
        CuttingProblem problem, IReadOnlyList<RollProgress> rolls)
    {
        ArgumentNullException.ThrowIfNull(problem);
        ArgumentNullException.ThrowIfNull(rolls);
        var lengths = problem.Items
            .ToDictionary(i => i.Key, i => i.LengthNm, StringComparer.Ordinal);
        var made = rolls.SelectMany(r => r.Made).GroupBy(m => m.Key, StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => g.Sum(m => m.Value), StringComparer.Ordinal);
        var begun = rolls.GroupBy(r => r.StockKey, StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => g.Count(), StringComparer.Ordinal);
        var rest = new List<StockType>();
        for (var r = 0; r < rolls.Count; r++)
        {
            if (Rest(problem, lengths, rolls[r], r) is { } remnant)
                rest.Add(remnant);
        }

        return problem with
        {
            Items = [.. problem.Items.Select(i => i with
            {
                Demand = Math.Max(0, i.Demand - made.GetValueOrDefault(i.Key)),
            })],
            Stock =
            [
                .. problem.Stock.Select(s => s with
                {
                    Count = s.Count is null ? null
                        : Math.Max(0, s.Count.Value - begun.GetValueOrDefault(s.Key)),
                }),
                .. rest,
            ],
        };
    }

    private static StockType? Rest(
        CuttingProblem problem, Dictionary<string, long> lengths, RollProgress roll, int number)
    {
        var type = problem.Stock.FirstOrDefault(s => s.Key == roll.StockKey)
            ?? throw new ArgumentException($"Roll {number + 1}: no stock type {roll.StockKey}.");
        if (roll.Made.Keys.FirstOrDefault(k => !lengths.ContainsKey(k)) is { } unknown)
            throw new ArgumentException($"Roll {number + 1}: no item {unknown}.");
        var left = type.UsableNm - roll.LostNm - roll.Made.Sum(m => lengths[m.Key] * m.Value);
        if (left < 0)
            throw new ArgumentException($"Roll {number + 1} gave {-left} nm more than it had.");
        if (roll.Finished || left == 0)
            return null;
        return type with
        {
            Key = $"{type.Key} begun {number + 1}",
            LengthNm = left,
            EndTrimNm = 0,
            Count = 1,
            Cost = 0,
            IsRemnant = true,
            AgeDays = int.MaxValue,
        };
    }
}
