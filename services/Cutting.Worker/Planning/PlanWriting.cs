namespace PostFrame.CuttingWorker.Planning;

/// <summary>Gives the search's anonymous pieces and rolls back their keys.</summary>
internal static class PlanWriting
{
    public static (List<PlannedRoll> Rolls, List<KeyValuePair<string, int>> Unmet) Write(
        CuttingProblem problem, Instance instance, Packing packing)
    {
        var items = Queues(
            instance.Items,
            problem.Items.Where(i => i.Demand > 0),
            i => Array.IndexOf(instance.Length, i.LengthNm / instance.UnitNm),
            i => (i.Key, i.Demand));
        var stock = Queues(
            instance.Bins.Length,
            problem.Stock.Where(s => s.Count is null or > 0)
                .OrderByDescending(s => s.IsRemnant).ThenByDescending(s => s.AgeDays)
                .ThenBy(s => s.Count is null),
            s => Array.FindIndex(instance.Bins, b => b.Cost == s.Cost
                && b.Capacity * instance.UnitNm + b.Slack == s.UsableNm),
            s => (s.Key, s.Count ?? int.MaxValue));
        var rolls = new List<PlannedRoll>();
        foreach (var (pattern, times) in packing.Rolls)
            Roll(problem, instance, pattern, times, items, stock, rolls);
        var unmet = items.SelectMany(q => q)
            .Where(e => e.Left > 0).Select(e => KeyValuePair.Create(e.Key, e.Left)).ToList();
        return (rolls, unmet);
    }

    private sealed class Entry(string key, int left)
    {
        public string Key { get; } = key;

        public int Left { get; set; } = left;
    }

    private static Queue<Entry>[] Queues<T>(
        int size, IEnumerable<T> all, Func<T, int> index, Func<T, (string, int)> entry)
    {
        var queues = Enumerable.Range(0, size).Select(_ => new Queue<Entry>()).ToArray();
        foreach (var one in all)
        {
            var at = index(one);
            var (key, left) = entry(one);
            if (at >= 0)
                queues[at].Enqueue(new Entry(key, left));
        }

        return queues;
    }

    /// <summary>As many rolls at a time as the keys at the heads of the queues allow.</summary>
    private static void Roll(
        CuttingProblem problem, Instance instance, Pattern pattern, int times,
        Queue<Entry>[] items, Queue<Entry>[] stock, List<PlannedRoll> rolls)
    {
        var left = instance.LeftNm(pattern.Bin, pattern.Room(instance));
        while (times > 0)
        {
            var head = Head(stock[pattern.Bin]);
            var run = Math.Min(times, head.Left);
            for (var k = 0; k < pattern.Item.Length; k++)
                run = Math.Min(run, Head(items[pattern.Item[k]]).Left / pattern.Count[k]);
            run = Math.Max(run, 1);
            var cuts = new List<PlannedCut>();
            for (var k = 0; k < pattern.Item.Length; k++)
                Cut(instance, pattern.Item[k], pattern.Count[k], run, items, cuts);
            if (head.Left != int.MaxValue)
                head.Left -= run;
            times -= run;
            rolls.Add(new PlannedRoll
            {
                StockKey = head.Key,
                Times = run,
                Cuts = cuts,
                LeftOverNm = left,
                LeavesOffcut = left > 0 && left >= problem.MinUsefulOffcutNm,
            });
        }
    }

    private static void Cut(
        Instance instance, int item, int count, int run, Queue<Entry>[] items,
            List<PlannedCut> cuts)
    {
        while (count > 0)
        {
            var head = Head(items[item]);
            var take = run > 1 ? count : Math.Min(count, head.Left);
            cuts.Add(new PlannedCut(head.Key, instance.Length[item] * instance.UnitNm, take));
            head.Left -= take * run;
            count -= take;
        }
    }

    private static Entry Head(Queue<Entry> queue)
    {
        while (queue.Peek().Left == 0)
            queue.Dequeue();
        return queue.Peek();
    }
}
