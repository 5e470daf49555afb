using System.Globalization;

namespace PostFrame.Benchmarks;

/// <summary>
/// Open-stacks instances in MiniZinc data: c customers, p products, a 0/1 matrix.
/// </summary>
internal static class OpenStacks
{
    /// <summary>For each product the customers that want it; null when the text is something
    /// else.</summary>
    public static IReadOnlyList<IReadOnlyCollection<string>>? Read(string text)
    {
        var start = text.IndexOf("[|", StringComparison.Ordinal);
        if (start < 0 || !text.Contains("orders", StringComparison.Ordinal))
            return null;
        var end = text.IndexOf("|]", start, StringComparison.Ordinal);
        var rows = text[(start + 2)..end].Split('|')
            .Select(r => r.Split(',',
            StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
                .Where(w => w.Length > 0).Select(w => int.Parse(w, CultureInfo.InvariantCulture))
                .ToArray())
            .Where(r => r.Length > 0).ToArray();
        return [.. Enumerable.Range(0, rows[0].Length).Select(product =>
            (IReadOnlyCollection<string>)[.. Enumerable.Range(0, rows.Length)
                .Where(c => rows[c][product] == 1).Select(c => $"{c + 1}")])];
    }
}
