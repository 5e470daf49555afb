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
            Rolls = rolls,
            Unmet = unmet,
            Cost = rolls.Sum(r => r.Times * instance.Bins[r.Pattern.Bin].Cost),
            UnmetLength = unmet.Select((u, i) => u * instance.Length[i]).Sum(),
        };
}
