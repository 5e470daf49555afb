using System.Numerics;

namespace PostFrame.CuttingWorker.Planning;

/// <summary>
/// The knapsack at the heart of the search. For every suffix of the items, and every capacity on a
/// grid, it holds the most value that suffix can bring; from that it reads off best patterns, the
/// best pattern that begins with each item, and all patterns of at least a given value.
/// </summary>
/// <remarks>
/// Lengths are rounded down to the grid, so each entry is an upper bound for the true knapsack (and
/// equal to it when the grid unit is 1). Patterns are searched depth first in true lengths with
/// these bounds, which are tight enough that hardly a wrong branch is entered. Values are integers:
/// a bound taken from here is never a rounding accident.
/// </remarks>
internal sealed class PatternTable
{
    private const int GridCells = 16_384;

    private readonly long[] _length;
    private readonly long _unit;
    private readonly int _width;
    private readonly int[][] _own;
    private readonly int[][] _row;
    private readonly int[] _value;
    private readonly int[] _most;
    private readonly WorkMeter _meter;

    public PatternTable(long[] length, long capacity, WorkMeter meter)
    {
        _length = length;
        _meter = meter;
        _unit = capacity / GridCells + 1;
        _width = (int)(capacity / _unit) + 1;
        _own = new int[length.Length][];
        _row = new int[length.Length + 1][];
        _row[length.Length] = new int[_width];
        _value = new int[length.Length];
        _most = new int[length.Length];
    }

    /// <summary>True when the table's entries are the knapsack's exact values.</summary>
    public bool Exact => _unit == 1;

    public int Items => _length.Length;

    public long Length(int item) => _length[item];

    public int Most(int item) => _most[item];

    public int Value(int item) => _value[item];

    /// <summary>Values of the items and how many of each a pattern may hold.</summary>
    public void Fill(int[] value, int[] most)
    {
        var steps = 0.0;
        for (var i = _length.Length - 1; i >= 0; i--)
        {
            _value[i] = value[i];
            _most[i] = most[i];
            if (value[i] <= 0 || most[i] <= 0)
            {
                _row[i] = _row[i + 1];
                continue;
            }

            _row[i] = _own[i] ??= new int[_width];
            Array.Copy(_row[i + 1], _row[i], _width);
            var step = _length[i] / _unit;
            var left = (int)Math.Min(most[i], step == 0 ? most[i] : (_width - 1) / step);
            for (var part = 1; left > 0; part *= 2)
            {
                var take = Math.Min(part, left);
                left -= take;
                Raise(_row[i], (int)(step * take), value[i] * take);
                steps += _width / 4.0;
            }
        }

        _meter.Steps(steps + 1000);
    }

    /// <summary>No pattern within the capacity whose first item is <paramref name="from"/> or later
    /// is worth more.</summary>
    public int Bound(int from, long capacity) => _row[from][capacity / _unit];

    /// <summary>
    /// The most valuable pattern of the items from <paramref name="from"/> on that holds the first
    /// of them; null when none is worth more than <paramref name="floor"/> or the nodes ran out.
    /// </summary>
    public (int Value, int[] Item, int[] Count)? Best(int from, long capacity, int floor, int nodes)
    {
        var room = capacity - _length[from];
        if (room < 0 || _most[from] == 0)
            return null;
        var target = FirstBound(from, capacity);
        var search = new Dive(this, nodes);
        for (var gap = 1L; target > floor; gap = gap * 8 + (target - floor) / 64)
        {
            search.Run(from, capacity, (int)Math.Max(floor, target - gap));
            if (search.Found is not null || search.Nodes <= 0 || target - gap <= floor)
                break;
        }

        _meter.Steps((nodes - search.Nodes) * 4.0 + 200);
        return search.Found;
    }

    /// <summary>
    /// No pattern within the capacity is worth more than this: the exact value where the grid is,
    /// or where true patterns close the gap the rounding leaves.
    /// </summary>
    public int Top(long capacity, int nodes)
    {
        if (Exact)
            return Bound(0, capacity);
        var first = Enumerable.Range(0, _length.Length)
            .Where(i => _length[i] <= capacity && _most[i] > 0 && _value[i] > 0)
            .Select(i => (Bound: FirstBound(i, capacity), Item: i))
            .OrderByDescending(f => f.Bound).ToList();
        _meter.Steps(_length.Length * 10.0);
        var best = 0;
        foreach (var (bound, item) in first)
        {
            if (bound <= best)
                break;
            var search = new Dive(this, nodes);
            search.Run(item, capacity, best);
            _meter.Steps((nodes - search.Nodes) * 4.0);
            if (search.Nodes <= 0)
                return bound;
            best = Math.Max(best, search.Found?.Value ?? 0);
        }

        return best;
    }

    /// <summary>The most a pattern that begins with this very item can be worth.</summary>
    public int FirstBound(int item, long capacity)
    {
        var best = 0;
        for (var count = Math.Min(_most[item], capacity / _length[item]); count > 0; count--)
        {
            var rest = capacity - count * _length[item];
            best = Math.Max(best, (int)count * _value[item] + _row[item + 1][rest / _unit]);
        }

        return best;
    }

    private static void Raise(int[] row, int shift, int gain)
    {
        unchecked
        {
            var lanes = Vector<int>.Count;
            var add = new Vector<int>(gain);
            var w = row.Length;
            for (w -= lanes; w >= shift; w -= lanes)
            {
                var raised = new Vector<int>(row, w - shift) + add;
                Vector.Max(new Vector<int>(row, w), raised).CopyTo(row, w);
            }

            for (w += lanes - 1; w >= shift; w--)
                row[w] = Math.Max(row[w], row[w - shift] + gain);
        }
    }

    /// <summary>Depth-first search for one best pattern.</summary>
    private sealed class Dive(PatternTable table, int nodes)
    {
        private readonly List<(int Item, int Count)> _path = [];
        private int _best;

        public int Nodes { get; private set; } = nodes;

        public (int Value, int[] Item, int[] Count)? Found { get; private set; }

        public void Run(int first, long capacity, int floor)
        {
            _best = floor;
            Take(first, capacity, 0);
        }

        private void Take(int item, long room, int worth)
        {
            var (length, value) = (table._length[item], table._value[item]);
            var rest = table._row[item + 1];
            for (var count = (int)Math.Min(table._most[item], room / length); count > 0; count--)
            {
                var left = room - count * length;
                var now = worth + count * value;
                if (now + rest[left / table._unit] <= _best)
                    continue;
                _path.Add((item, count));
                Next(item + 1, left, now);
                _path.RemoveAt(_path.Count - 1);
            }
        }

        private void Next(int from, long room, int worth)
        {
            if (--Nodes <= 0)
                return;
            if (worth > _best)
            {
                _best = worth;
                Found = (worth, [.. _path.Select(p => p.Item)], [.. _path.Select(p => p.Count)]);
            }

            var cell = room / table._unit;
            for (var i = from; i < table._length.Length && Nodes > 0; i++)
            {
                var here = table._row[i];
                if (worth + here[cell] <= _best)
                    return;
                if (table._value[i] > 0 && table._length[i] <= room)
                    Take(i, room, worth);
            }
        }
    }
}
