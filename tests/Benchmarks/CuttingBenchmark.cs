using System.Diagnostics;
using System.Globalization;
using PostFrame.CuttingWorker.Planning;

namespace PostFrame.Benchmarks;

/// <summary>Plans every instance of a folder and reports bound, rolls, proof and time.</summary>
internal static class CuttingBenchmark
{
    private sealed record Row(
        string Class, string Name, long Bound, long Rolls, bool Proven, double Seconds,
            string Note);

    public static int Run(string[] arguments)
    {
        var options = Options(arguments);
        if (options is not var (folder, seconds, csv, match, curves, plot))
        {
            Console.Error.WriteLine(
                "cutting FOLDER --seconds N [--csv FILE] [--match TEXT] [--curves] [--plot FILE]");
            return 2;
        }

        var known = KnownOptima.Near(folder);
        var rows = new List<Row>();
        var files = Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories)
            .Where(f => f.Contains(match, StringComparison.Ordinal)).Order(StringComparer.Ordinal);
        Console.WriteLine("class,name,bound,rolls,proven,seconds");
        foreach (var file in files)
        {
            foreach (var row in Rows(file, seconds, known))
            {
                rows.Add(row);
                Console.WriteLine(Line(row) + (row.Note == "" ? "" : $"   {row.Note}"));
            }
        }

        if (curves || plot is not null)
        {
            var panels = new List<LinePlot.Panel>();
            foreach (var file in files.Where(f => f.EndsWith(".json", StringComparison.Ordinal)))
                panels.Add(ShopCurves.Pooling(
                    Path.GetFileNameWithoutExtension(file),
                    ShopBatch.Read(File.ReadAllText(file))));
            panels.InsertRange(0, ShopCurves.Growth(seconds));
            if (plot is not null)
                File.WriteAllText(plot, LinePlot.Svg("Cutting planner, measured", panels));
        }

        if (csv is not null)
            File.WriteAllLines(csv, rows.Select(Line)
                .Prepend("class,name,bound,rolls,proven,seconds"));
        return Summarise(rows) ? 0 : 1;
    }

    private static (string Folder, double Seconds, string? Csv, string Match, bool Curves,
        string? Plot)? Options(string[] arguments)
    {
        var (folder, seconds, csv, match) = ((string?)null, 10.0, (string?)null, string.Empty);
        var (curves, plot) = (false, (string?)null);
        for (var k = 0; k < arguments.Length; k++)
        {
            var next = k + 1 < arguments.Length ? arguments[k + 1] : null;
            switch (arguments[k])
            {
                case "--seconds" when double
                    .TryParse(next, CultureInfo.InvariantCulture, out seconds):
                case "--csv" when (csv = next) is not null:
                case "--plot" when (plot = next) is not null:
                case "--match" when (match = next ?? "") is not null:
                    k++;
                    break;
                case "--curves":
                    curves = true;
                    break;
                case var other when folder is null && Directory.Exists(other):
                    folder = other;
                    break;
                default:
                    return null;
            }
        }

        return folder is null ? null : (folder, seconds, csv, match ?? "", curves, plot);
    }

    private static IEnumerable<Row> Rows(string file, double seconds, KnownOptima known)
    {
        var text = File.ReadAllText(file);
        if (OpenStacks.Read(text) is { } stacks)
            yield return Sequence(file, stacks, seconds, known);
        foreach (var (suffix, problem) in CuttingInstances.Read(text))
            yield return Measure(file, suffix, problem, seconds, known);
    }

    private static Row Sequence(
        string file, IReadOnlyList<IReadOnlyCollection<string>> stacks, double seconds,
        KnownOptima known)
    {
        using var stop = new CpuLimit(seconds);
        var sequence = Bench.Sequence(
            stacks, new PlanLimits { WorkSeconds = double.MaxValue }, stop.Token);
        var name = Path.GetFileNameWithoutExtension(file);
        var note = known.Contradiction(name, sequence.LowerBound, sequence.MostOpen);
        if (sequence.MostOpen != Bench.MostOpen(stacks, sequence.Rolls)
            || sequence.Rolls.Distinct().Count() != stacks.Count)
            note += "PLAN REFUSED: not a sequence of all rolls with the open orders stated";
        return new Row(
            Path.GetFileName(Path.GetDirectoryName(file)) ?? "", name,
            sequence.LowerBound, sequence.MostOpen, sequence.Proven, stop.Spent, note);
    }

    private static Row Measure(
        string file, string suffix, CuttingProblem problem, double seconds, KnownOptima known)
    {
        var clock = Stopwatch.StartNew();
        var first = CuttingStock.Plan(problem, new PlanLimits { WorkSeconds = 0 });
        var firstMs = clock.Elapsed.TotalMilliseconds;
        using var stop = new CpuLimit(seconds);
        clock.Restart();
        var plan = CuttingStock.Plan(
            problem, new PlanLimits { WorkSeconds = double.MaxValue }, stop.Token);
        var (took, wall) = (stop.Spent, clock.Elapsed.TotalSeconds);
        var faults = PlanCheck.Check(problem, plan)
            .Concat(PlanCheck.Check(problem, first)).ToList();
        var name = Path.GetFileNameWithoutExtension(file) + suffix;
        var note = faults.Count > 0 ? $"PLAN REFUSED: {faults[0].Text}" : "";
        note += known.Contradiction(name, plan.LowerBoundCost, plan.Cost) + plan.Method
            + FormattableString.Invariant($", work {plan.WorkSeconds:F2}, wall {wall:F2}")
            + FormattableString.Invariant($", first plan {first.Cost} after {firstMs:F0} ms")
            + $", {Patterns(plan)} patterns, the first plan {Patterns(first)}";
        return new Row(
            Path.GetFileName(Path.GetDirectoryName(file)) ?? "", name,
            plan.LowerBoundCost, plan.Cost, plan.Proven, took, note);
    }

    private static int Patterns(CuttingPlan plan) => plan.Rolls.Select(r => string.Join(
        ' ', r.Cuts.GroupBy(c => c.LengthNm).OrderBy(g => g.Key)
            .Select(g => $"{g.Sum(c => c.Count)}x{g.Key}"))).Distinct().Count();

    private static string Line(Row row) => string.Create(
        CultureInfo.InvariantCulture,
        $"{row.Class},{row.Name},{row.Bound},{row.Rolls},"
        + $"{(row.Proven ? "yes" : "no")},{row.Seconds:F3}");

    private static bool Summarise(List<Row> rows)
    {
        Console.WriteLine();
        Console.WriteLine($"{"class",-16} {"instances",9} {"proven",7} {"mean s",8} "
            + $"{"worst gap",9}");
        foreach (var group in rows.GroupBy(r => r.Class))
            Console.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"{group.Key,-16} {group.Count(),9} {group.Count(r => r.Proven),7} "
                + $"{group.Average(r => r.Seconds),8:F3} {group.Max(r => r.Rolls - r.Bound),9}"));
        using var process = Process.GetCurrentProcess();
        Console.WriteLine($"peak memory {process.PeakWorkingSet64 / 1_000_000} MB");
        var wrong = rows.Where(r => r.Note.Contains("PLAN REFUSED") || r.Note
            .Contains("CONTRADICTS"));
        foreach (var row in wrong)
            Console.WriteLine($"{row.Class}/{row.Name}: {row.Note}");
        return !wrong.Any();
    }
}
