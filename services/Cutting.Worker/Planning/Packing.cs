namespace PostFrame.CuttingWorker.Planning;

/// <summary>A whole answer to an instance: patterns with how often each is cut.</summary>
internal sealed class Packing
{
    public required List<(Pattern Pattern, int Times)> Rolls { get; init; }

    public required int[] Unmet { get; init; }

    public required long Cost { get; init; }

    public required long UnmetLength { get; init; }

    public long RollCount => Rolls.Sum(r => (long)r.Times);

    /// <summary>Less unmet length first, then less cost, then fewer rolls.</summary>
    public bool Beats(Packing? other) =>
        other is null || (UnmetLength, Cost, RollCount).CompareTo(
            (other.UnmetLength, other.Cost, other.RollCount)) < 0;

    public static Packing Of(
        Instance instance, List<(Pattern Pattern, int Times)> rolls, int[] unmet) => new()
        {
            Rolls = Merged(rolls),
            Unmet = unmet,
            Cost = rolls.Sum(r => r.Times * instance.Bins[r.Pattern.Bin].Cost),
            UnmetLength = unmet.Select((u, i) => u * instance.Length[i]).Sum(),
        };

    /// <summary>Rolls cut alike stand together: fewer patterns to set up.</summary>
    private static List<(Pattern, int)> Merged(List<(Pattern Pattern, int Times)> rolls)
    {
        var (merged, at) = (new List<(Pattern, int)>(), new Dictionary<string, int>());
        foreach (var (pattern, times) in rolls)
        {
            var order = Enumerable.Range(0, pattern.Item.Length).OrderBy(k => pattern.Item[k])
                .ToArray();
            var alike = new Pattern(
                pattern.Bin, [.. order.Select(k => pattern.Item[k])],
                    [.. order.Select(k => pattern.Count[k])]);
            var key = $"{alike.Bin}:{string.Join(',', alike.Item)}:{string.Join(',', alike.Count)}";
            if (at.TryGetValue(key, out var index))
                merged[index] = (alike, merged[index].Item2 + times);
            else
            {
                at[key] = merged.Count;
                merged.Add((alike, times));
            }
        }

        return merged;
    }
}
