using System.Globalization;

namespace PostFrame.EngineTests.Heat;

/// <summary>Check values from outside the project: a CSV that says where they come from.</summary>
internal static class ReferenceTable
{
    private static readonly string[] Required =
        ["# source: ", "# edition: ", "# table: ", "# tolerance: ", "# mark: "];

    /// <summary>The rows of Reference/{name}.csv, each by column name.</summary>
    public static IEnumerable<IReadOnlyDictionary<string, string>> Rows(string name)
    {
        var path = Path.Combine(AppContext.BaseDirectory, "Reference", name + ".csv");
        var lines = File.ReadAllLines(path);
        foreach (var (line, start) in lines.Zip(Required))
            if (!line.StartsWith(start, StringComparison.Ordinal) || line.Length <= start.Length)
                throw new InvalidDataException($"{name}.csv must say '{start}'.");
        var header = lines[Required.Length].Split(',');
        foreach (var line in lines.Skip(Required.Length + 1))
        {
            var cells = line.Split(',');
            if (cells.Length != header.Length)
                throw new InvalidDataException($"{name}.csv: {line}");
            yield return header.Zip(cells).ToDictionary(x => x.First, x => x.Second);
        }
    }

    /// <summary>A number of a row.</summary>
    public static double Number(this IReadOnlyDictionary<string, string> row, string column) =>
        double.Parse(row[column], CultureInfo.InvariantCulture);

    /// <summary>A word of a row as an enum value.</summary>
    public static T Word<T>(this IReadOnlyDictionary<string, string> row, string column)
        where T : struct, Enum => Enum.Parse<T>(row[column]);
}
