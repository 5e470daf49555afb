using System.Diagnostics;
using System.Globalization;
using PostFrame.CuttingWorker.Planning;

namespace PostFrame.Benchmarks;

/// <summary>Tables for the foreman: pooling against orders open, and how time grows.</summary>
internal static class ShopCurves
{
    private static readonly int[] Windows = [1, 2, 5, 10, 25, 50, int.MaxValue];

    /// <summary>Material against buildings open at once, beside first-fit decreasing.</summary>
    public static LinePlot.Panel Pooling(string name, ShopBatch batch)
    {
        var lines = new List<LinePlot.Series>();
        foreach (var width in batch.Widths)
        {
            var orders = batch.Buildings.Where(b => b.Width == width).Select(b => new BenchOrder(
                b.Id, b.DueDay, batch.Problem(width, [b], one: true).Items)).ToList();
            var pooled = batch.Problem(width, batch.Buildings, one: true);
            var usable = pooled.Stock[0].UsableNm;
            var alone = orders.Sum(o => FirstFitDecreasing(o.Items, usable));
            var together = FirstFitDecreasing(pooled.Items, usable);
            Console.WriteLine($"\n{name} {width}, 100 ft rolls, {orders.Count} buildings");
            Console.WriteLine("| planned | open at once | rolls | least possible | scrap ft | "
                + "offcuts |");
            Console.WriteLine("| --- | --- | --- | --- | --- | --- |");
            Console.WriteLine($"| first-fit decreasing, building by building | 1 | {alone} | | | "
                + $"|");
            Console.WriteLine($"| first-fit decreasing, pooled | all | {together} | | | |");
            var table = PostFrame.CuttingWorker.Planning.Pooling.Table(
                orders, pooled.Stock, batch.MinUsefulOffcutNm, Windows, new() { WorkSeconds = 1 });
            foreach (var row in table)
                Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
                    $"| this planner | {(row.OpenAtOnce == int.MaxValue ? "all" : row.OpenAtOnce)} "
                    + $"| {row.Cost} | {row.LowerBoundCost} | {row.ScrapNm / 304_800_000.0:F0} "
                    + $"| {row.Offcuts} |"));
            Arranged(orders, pooled);
            lines.Add(new($"{width}", [.. table.Select(
                r => 100.0 * (r.Cost - r.LowerBoundCost) / r.LowerBoundCost)]));
        }

        return new LinePlot.Panel(
            $"{name}: rolls above the least possible [%]", "buildings open at once",
            [.. Windows.Select(w => w == int.MaxValue ? "all" : $"{w}")], lines);
    }

    /// <summary>
    /// All planned together, with equal pieces and rolls given their turn afterwards: how many
    /// buildings then lie open at most, for no roll more.
    /// </summary>
    private static void Arranged(List<BenchOrder> orders, CuttingProblem pooled)
    {
        var plan = CuttingStock.Plan(pooled, new() { WorkSeconds = 1 });
        var order = orders.SelectMany(o => o.Items.Select(i => (i.Key, o)))
            .ToDictionary(p => p.Key, p => p.o.Key);
        var key = 0;
        var rolls = plan.Rolls.SelectMany(r => Enumerable.Range(0, r.Times).Select(_ =>
            (IReadOnlyList<BenchPiece>)[.. r.Cuts.SelectMany(c => Enumerable.Range(0, c.Count)
                .Select(_ => new BenchPiece($"{key++}", c.LengthNm, order[c.ItemKey], "")))]))
            .ToList();
        var of = rolls.SelectMany(r => r).ToDictionary(p => p.Key, p => p.Order);
        int Open(IEnumerable<IEnumerable<string>> some)
        {
            var sets = some.Select(r => (IReadOnlyCollection<string>)r.ToHashSet()).ToList();
            return Bench.MostOpen(sets, [.. Enumerable.Range(0, sets.Count)]);
        }

        var arranged = BenchArrangement.Of(rolls,
            [.. orders.OrderBy(o => o.NeededBy).ThenBy(o => o.Key, StringComparer.Ordinal)
                .Select(o => o.Key)]);
        Console.WriteLine($"| all together, as the search wrote the rolls down | "
            + $"{Open(rolls.Select(r => r.Select(p => p.Order)))} | {plan.RollCount} "
            + $"| {plan.LowerBoundRolls} | | |");
        Console.WriteLine($"| all together, equal pieces and rolls in their turn | "
            + $"{Open(arranged.Select(r => r.Pieces.Select(p => of[p])))} | {plan.RollCount} "
            + $"| {plan.LowerBoundRolls} | | |");
    }

    /// <summary>
    /// Rolls the textbook rule takes: longest piece first, on the first roll it fits.
    /// </summary>
    private static int FirstFitDecreasing(IEnumerable<CuttingItem> items, long usableNm)
    {
        var rooms = new List<long>();
        foreach (var piece in items.SelectMany(i => Enumerable.Repeat(i.LengthNm, i.Demand))
            .OrderDescending())
        {
            var at = rooms.FindIndex(room => room >= piece);
            if (at < 0)
            {
                at = rooms.Count;
                rooms.Add(usableNm);
            }

            rooms[at] -= piece;
        }

        return rooms.Count;
    }

    /// <summary>Time to a first plan and to proof as orders, lengths and roll length grow.
    /// </summary>
    public static IReadOnlyList<LinePlot.Panel> Growth(double seconds)
    {
        Console.WriteLine("\n| buildings | pieces | lengths | roll ft | rolls | bound "
            + "| ms to a first plan | its rolls | s to a proof |");
        Console.WriteLine("| --- | --- | --- | --- | --- | --- | --- | --- | --- |");
        Grow(50, 150, 100, seconds, quiet: true);
        return
        [
            Panel("buildings", [50, 100, 200, 500, 1000, 2000, 5000],
                n => Grow(n, 150, 100, seconds)),
            Panel("distinct lengths, about", [10, 20, 50, 100, 200, 400],
                n => Grow(500, n, 100, seconds)),
            Panel("roll length [ft]", [50, 75, 100, 150, 200, 300],
                n => Grow(500, 150, n, seconds)),
        ];
    }

    private static LinePlot.Panel Panel(
        string across, int[] at, Func<int, (double FirstMs, double ProofSeconds)> grow)
    {
        var rows = at.Select(grow).ToList();
        return new LinePlot.Panel(
            "Processor time to a first plan and to a proof [s]", across,
            [.. at.Select(n => $"{n}")],
            [
                new("to a proof", [.. rows.Select(r => r.ProofSeconds)]),
                new("to a first plan", [.. rows.Select(r => r.FirstMs / 1000)]),
            ]);
    }

    private static (double FirstMs, double ProofSeconds) Grow(
        int buildings, int lengths, int feet, double seconds, bool quiet = false)
    {
        const long HalfInch = 12_700_000;
        var random = new Random(buildings * 31 + lengths * 7 + feet);
        var choice = Enumerable.Range(0, lengths)
            .Select(_ => random.Next(60, Math.Min(960, feet * 24 - 12))).Distinct().ToArray();
        var items = new List<CuttingItem>();
        for (var b = 0; b < buildings; b++)
        {
            for (var k = 0; k < 6; k++)
                items.Add(new CuttingItem(
                    $"{b}-{k}", choice[random.Next(choice.Length)] * HalfInch, random.Next(2, 13)));
        }

        var problem = new CuttingProblem
        {
            Items = items,
            Stock = [new StockType
            {
                Key = "roll", LengthNm = feet * 24 * HalfInch, EndTrimNm = 12 * HalfInch,
            }],
        };
        using var watch = new CpuLimit(double.MaxValue);
        var first = CuttingStock.Plan(problem, new() { WorkSeconds = 0 });
        var firstMs = watch.Spent * 1000;
        using var stop = new CpuLimit(seconds);
        var plan = CuttingStock.Plan(problem, new() { WorkSeconds = double.MaxValue }, stop.Token);
        var spent = stop.Spent;
        if (PlanCheck.Check(problem, plan) is { Count: > 0 } faults)
            Console.WriteLine($"PLAN REFUSED: {faults[0].Text}");
        if (!quiet)
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"| {buildings} | {items.Sum(i => i.Demand)} | "
                + $"{items.Select(i => i.LengthNm).Distinct().Count()} "
            + $"| {feet} | {plan.RollCount} | {plan.LowerBoundRolls} "
            + $"| {firstMs:F0} | {first.RollCount} "
            + $"| {spent:F2}{(plan.Proven ? "" : " (not proven)")} |"));
        return (firstMs, spent);
    }
}
