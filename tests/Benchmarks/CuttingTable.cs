using System.Globalization;

namespace PostFrame.Benchmarks;

/// <summary>Rows of several runs of the cutting benchmark, as one table of classes.</summary>
internal static class CuttingTable
{
    private sealed record Row(string Class, long Gap, bool Proven, double Seconds);

    public static int Run(string[] files)
    {
        if (files.Length == 0 || files.FirstOrDefault(f => !File.Exists(f)) is not null)
        {
            Console.Error.WriteLine("cutting-table CSV… (files written by cutting --csv)");
            return 2;
        }

        var runs = files.Select(Read).ToList();
        Console.WriteLine("| class | instances |" + string.Concat(files.Select(f =>
            $" {Path.GetFileNameWithoutExtension(f)}: proven | mean s | longest s | worst gap |")));
        Console.WriteLine("| --- | --- |" + string.Concat(files.Select(_ =>
            " --- | --- | --- | --- |")));
        foreach (var name in runs.SelectMany(r => r.Select(row => row.Class)).Distinct())
        {
            var ofClass = runs.Select(r => r.Where(row => row.Class == name).ToList()).ToList();
            Console.WriteLine($"| {name} | {ofClass.Max(r => r.Count)} |"
                + string.Concat(ofClass.Select(Cells)));
        }

        return 0;
    }

    private static string Cells(List<Row> rows) => rows.Count == 0
        ? " not run | | | |"
        : string.Create(CultureInfo.InvariantCulture,
            $" {rows.Count(r => r.Proven)} of {rows.Count} | {rows.Average(r => r.Seconds):F3} | "
            + $"{rows.Max(r => r.Seconds):F1} | {rows.Max(r => r.Gap)} |");

    private static List<Row> Read(string file) =>
        [.. File.ReadLines(file).Skip(1).Select(l => l.Split(',')).Select(c => new Row(
            c[0],
            long.Parse(c[3], CultureInfo.InvariantCulture)
                - long.Parse(c[2], CultureInfo.InvariantCulture),
            c[4] == "yes",
            double.Parse(c[5], CultureInfo.InvariantCulture)))];
}
