using System.Diagnostics;
using System.Globalization;
using PostFrame.CuttingWorker.Planning;

namespace PostFrame.Benchmarks;

/// <summary>Tables for the foreman: pooling against orders open, and how time grows.</summary>
internal static class ShopCurves
{
    private static readonly int[] Windows = [1, 2, 5, 10, 25, 50, int.MaxValue];

    /// <summary>Material against buildings open at once, beside first-fit decreasing.</summary>
    public static void Pooling(string name, ShopBatch batch)
    {
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
            foreach (var row in PostFrame.CuttingWorker.Planning.Pooling.Table(
                orders, pooled.Stock, batch.MinUsefulOffcutNm, Windows, new() { WorkSeconds = 1 }))
                Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
                    $"| this planner | {(row.OpenAtOnce == int.MaxValue ? "all" : row.OpenAtOnce)} "
                    + $"| {row.Cost} | {row.LowerBoundCost} | {row.ScrapNm / 304_800_000.0:F0} "
                    + $"| {row.Offcuts} |"));
        }
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

    /// <summary>Time to proof as orders, lengths and roll length grow.</summary>
    public static void Growth(double seconds)
    {
        Console.WriteLine("\n| buildings | pieces | lengths | roll ft | rolls | bound | s to a "
            + "proof |");
        Console.WriteLine("| --- | --- | --- | --- | --- | --- | --- |");
        foreach (var buildings in new[] { 50, 100, 200, 500, 1000, 2000, 5000 })
            Grow(buildings, 150, 100, seconds);
        foreach (var lengths in new[] { 10, 20, 50, 100, 200, 400 })
            Grow(500, lengths, 100, seconds);
        foreach (var feet in new[] { 50, 75, 100, 150, 200, 300 })
            Grow(500, 150, feet, seconds);
    }

    private static void Grow(int buildings, int lengths, int feet, double seconds)
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
        using var stop = new CpuLimit(seconds);
        var plan = CuttingStock.Plan(problem, new() { WorkSeconds = double.MaxValue }, stop.Token);
        var spent = stop.Spent;
        if (PlanCheck.Check(problem, plan) is { Count: > 0 } faults)
            Console.WriteLine($"PLAN REFUSED: {faults[0].Text}");
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"| {buildings} | {items.Sum(i => i.Demand)} | "
                + $"{items.Select(i => i.LengthNm).Distinct().Count()} "
            + $"| {feet} | {plan.RollCount} | {plan.LowerBoundRolls} "
            + $"| {spent:F2}{(plan.Proven ? "" : " (not proven)")} |"));
    }
}
