using System.Globalization;
using PostFrame.CuttingWorker.Planning;
using Xunit;

namespace PostFrame.PlanningTests;

/// <summary>Published instances that may be read here but not shipped.</summary>
internal static class ReferenceData
{
    public static string Folder(string name)
    {
        var root = Environment.GetEnvironmentVariable("REFERENCE_DATA");
        if (string.IsNullOrEmpty(root) || !Directory.Exists(Path.Combine(root, name)))
            Assert.Skip($"REFERENCE_DATA has no folder {name}; these instances may not be "
                + $"shipped.");
        return Path.Combine(root!, name);
    }

    /// <summary>One roll length: m, capacity, then m pairs of length and demand.</summary>
    public static CuttingProblem OneLength(string text)
    {
        var numbers = text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)
            .Select(w => long.Parse(w, CultureInfo.InvariantCulture)).ToArray();
        return new CuttingProblem
        {
            Items = [.. Enumerable.Range(0, (int)numbers[0]).Select(k =>
                new CuttingItem($"{k}", numbers[2 + 2 * k], (int)numbers[3 + 2 * k]))],
            Stock = [new StockType { Key = "roll", LengthNm = numbers[1] }],
        };
    }

    public static IReadOnlyList<IReadOnlyCollection<string>> OpenStacks(string text)
    {
        var rows = text.Split("[|")[1].Split("|]")[0].Split('|')
            .Select(r => r.Split(',').Select(w => w.Trim()).Where(w => w.Length > 0).ToArray())
            .Where(r => r.Length > 0).ToArray();
        return [.. Enumerable.Range(0, rows[0].Length).Select(p =>
            (IReadOnlyCollection<string>)[.. Enumerable.Range(0, rows.Length)
                .Where(c => rows[c][p] == "1").Select(c => $"{c}")])];
    }
}
