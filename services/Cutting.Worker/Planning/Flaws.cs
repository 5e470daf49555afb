namespace PostFrame.CuttingWorker.Planning;

/// <summary>Rolls with factory splices or flaws: no piece may hold one.</summary>
public static class Flaws
{
    /// <summary>
    /// The sound parts of one roll as stock of their own, its end trim on the first, its cost
    /// shared out by length so that the parts together cost what the roll does.
    /// </summary>
    /// <param name="roll">The roll; one of it is split.</param>
    /// <param name="flaws">Where each flaw begins, from the labelled start, and how long it is
    /// [nm].</param>
    /// <exception cref="ArgumentException">A flaw lies outside the roll or overlaps
    /// another.</exception>
    public static IReadOnlyList<StockType> SoundParts(
        StockType roll, IReadOnlyList<(long AtNm, long LengthNm)> flaws)
    {
        ArgumentNullException.ThrowIfNull(roll);
        ArgumentNullException.ThrowIfNull(flaws);
        var parts = new List<long>();
        long from = 0;
        foreach (var (at, length) in flaws.OrderBy(f => f.AtNm))
        {
            if (at < from || length < 0 || length > roll.LengthNm - at)
                throw new ArgumentException(
                    $"Flaw at {at} nm, {length} nm long, is outside roll {roll.Key} of "
                        + $"{roll.LengthNm} nm "
                    + "or overlaps another.");
            parts.Add(at - from);
            from = at + length;
        }

        parts.Add(roll.LengthNm - from);
        var total = parts.Sum();
        var sound = new List<StockType>();
        var (cost, passed) = (0L, 0L);
        foreach (var part in parts.Where(p => p > 0))
        {
            passed += part;
            var upTo = (long)((Int128)roll.Cost * passed / total);
            sound.Add(roll with
            {
                Key = $"{roll.Key} part {sound.Count + 1}",
                LengthNm = part,
                EndTrimNm = sound.Count == 0 ? Math.Min(roll.EndTrimNm, part) : 0,
                Count = 1,
                Cost = upTo - cost,
                IsRemnant = true,
            });
            cost = upTo;
        }

        return sound;
    }
}
