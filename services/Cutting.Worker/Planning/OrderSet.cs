using System.Numerics;

namespace PostFrame.CuttingWorker.Planning;

/// <summary>A set of orders as bits.</summary>
internal readonly struct OrderSet(ulong[] words) : IEquatable<OrderSet>
{
    private readonly ulong[] _words = words;

    public static OrderSet Empty(int size) => new(new ulong[(size + 63) / 64]);

    /// <summary>For each order, itself and every order that shares a roll with it.</summary>
    public static OrderSet[] Neighbours(int orders, int[][] rolls)
    {
        var sets = Enumerable.Range(0, orders).Select(c => Empty(orders).With(c)).ToArray();
        foreach (var roll in rolls)
        {
            foreach (var c in roll)
            {
                foreach (var d in roll)
                    sets[c]._words[d / 64] |= 1UL << (d % 64);
            }
        }

        return sets;
    }

    public bool Has(int order) => (_words[order / 64] >> (order % 64) & 1) != 0;

    public OrderSet With(int order)
    {
        var words = (ulong[])_words.Clone();
        words[order / 64] |= 1UL << (order % 64);
        return new OrderSet(words);
    }

    public OrderSet Union(OrderSet other)
    {
        var words = (ulong[])_words.Clone();
        for (var w = 0; w < words.Length; w++)
            words[w] |= other._words[w];
        return new OrderSet(words);
    }

    /// <summary>Members of this or <paramref name="other"/> that are not in
    /// <paramref name="without"/>.</summary>
    public int CountUnion(OrderSet other, OrderSet without)
    {
        var count = 0;
        for (var w = 0; w < _words.Length; w++)
            count += BitOperations.PopCount((_words[w] | other._words[w]) & ~without._words[w]);
        return count;
    }

    public bool Holds(OrderSet other)
    {
        for (var w = 0; w < _words.Length; w++)
        {
            if ((other._words[w] & ~_words[w]) != 0)
                return false;
        }

        return true;
    }

    public bool Equals(OrderSet other) => _words.AsSpan().SequenceEqual(other._words);

    public override bool Equals(object? obj) => obj is OrderSet other && Equals(other);

    public override int GetHashCode()
    {
        var hash = default(HashCode);
        foreach (var word in _words)
            hash.Add(word);
        return hash.ToHashCode();
    }
}
