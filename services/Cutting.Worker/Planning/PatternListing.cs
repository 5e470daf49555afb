namespace PostFrame.CuttingWorker.Planning;

/// <summary>
/// Lists every pattern that is worth enough in each of several ways at once: one table of bounds
/// for each set of values, and a branch is left as soon as one of them rules it out.
/// </summary>
internal sealed class PatternListing(
    IReadOnlyList<PatternTable> tables, int[] floor, int most, int nodes)
{
    private readonly PatternTable _items = tables[0];
    private readonly List<(int Item, int Count)> _path = [];
    private readonly int[] _held = new int[tables[0].Items];

    /// <summary>Steps still allowed.</summary>
    public int Nodes { get; private set; } = nodes;

    /// <summary>Patterns so far: those to which no further piece could be added.</summary>
    public List<(int[] Item, int[] Count)> Patterns { get; } = [];

    /// <summary>True when all were listed; false when there are too many.</summary>
    public bool Run(long capacity)
    {
        Next(0, capacity, new int[floor.Length]);
        return Nodes > 0 && Patterns.Count <= most;
    }

    /// <summary>Lists some patterns for each longest piece: a sample, not all.</summary>
    public void Spread(long capacity, int each)
    {
        var none = new int[floor.Length];
        for (var i = 0; i < _held.Length && Enough(i, capacity, none); i++)
        {
            if (_items.Length(i) > capacity || _items.Most(i) == 0)
                continue;
            most = Patterns.Count + each - 1;
            Nodes = each * 40;
            Take(i, capacity, none);
        }
    }

    private void Next(int from, long room, ReadOnlySpan<int> worth)
    {
        if (--Nodes <= 0 || Patterns.Count > most)
            return;
        for (var i = from; i < _held.Length; i++)
        {
            if (!Enough(i, room, worth))
                return;
            if (_items.Length(i) <= room && _items.Most(i) > 0)
                Take(i, room, worth);
        }

        for (var t = 0; t < floor.Length; t++)
        {
            if (worth[t] < floor[t])
                return;
        }

        if (Full(room))
            Patterns.Add(([.. _path.Select(p => p.Item)], [.. _path.Select(p => p.Count)]));
    }

    private void Take(int item, long room, ReadOnlySpan<int> worth)
    {
        Span<int> now = stackalloc int[floor.Length];
        var length = _items.Length(item);
        for (var count = (int)Math.Min(_items.Most(item), room / length); count > 0; count--)
        {
            for (var t = 0; t < now.Length; t++)
                now[t] = worth[t] + count * tables[t].Value(item);
            var left = room - count * length;
            if (!Enough(item + 1, left, now))
                continue;
            _path.Add((item, count));
            _held[item] = count;
            Next(item + 1, left, now);
            _held[item] = 0;
            _path.RemoveAt(_path.Count - 1);
        }
    }

    private bool Enough(int from, long room, ReadOnlySpan<int> worth)
    {
        for (var t = 0; t < floor.Length; t++)
        {
            if (worth[t] + tables[t].Bound(from, room) < floor[t])
                return false;
        }

        return true;
    }

    /// <summary>No item fits the room left that the pattern could hold one more of.</summary>
    private bool Full(long room)
    {
        for (var i = _held.Length - 1; i >= 0 && _items.Length(i) <= room; i--)
        {
            if (_held[i] < _items.Most(i))
                return false;
        }

        return true;
    }
}
