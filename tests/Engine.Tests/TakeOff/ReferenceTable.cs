namespace PostFrame.EngineTests.TakeOff;

/// <summary>
/// Rows of a CSV in Reference: a comment line with the source, a header line, rows.
/// </summary>
internal static class ReferenceTable
{
    public static IEnumerable<Dictionary<string, string>> Rows(string file)
    {
        var lines = File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "Reference", file));
        var header = lines[1].Split(',');
        return lines.Skip(2).Where(l => l.Length > 0).Select(l => header
            .Zip(l.Split(',')).ToDictionary(p => p.First, p => p.Second));
    }
}
