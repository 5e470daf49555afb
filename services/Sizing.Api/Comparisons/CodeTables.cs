using System.Globalization;
using System.Text;
using PostFrame.Engine.Heat;
using PostFrame.Engine.Quantities;

namespace PostFrame.SizingApi.Comparisons;

/// <summary>
/// Code rows and tested assemblies, read once; sources and flags in Data/SOURCES.md.
/// </summary>
internal static class CodeTables
{
    private static readonly Lazy<IReadOnlyList<EnvelopeMinimum>> LoadedMinima =
        new(() => [.. Rows("envelope_minima.csv").Select(Minimum)]);

    private static readonly Lazy<IReadOnlyList<TestedAssembly>> LoadedTested =
        new(() => [.. Rows("metal_building_assembly_u.csv").Select(Tested)]);

    public static IReadOnlyList<EnvelopeMinimum> Minima => LoadedMinima.Value;

    public static IReadOnlyList<TestedAssembly> TestedAssemblies => LoadedTested.Value;

    private static EnvelopeMinimum Minimum(Dictionary<string, string> row) => new(
        row["standard"], row["edition"], row["table"], row["climate_zone"],
        row["occupancy_or_conditioning"], row["element"], row["construction"], row["measure"],
        row["value_ip"], row["flag"] == "read", row["source"], row["note"]);

    private static TestedAssembly Tested(Dictionary<string, string> row) => new(
        row["table_90_1"], row["element"], row["system"], row["rated_insulation"],
        ThermalTransmittance.FromUFactor(
            double.Parse(row["u_btu_h_ft2_f"], CultureInfo.InvariantCulture)),
        row["flag"] == "read", row["corroboration"]);

    private static IEnumerable<Dictionary<string, string>> Rows(string file)
    {
        using var stream = typeof(CodeTables).Assembly.GetManifestResourceStream(
            "Code.Data." + file) ?? throw new InvalidOperationException(file + " is missing");
        using var reader = new StreamReader(stream);
        var names = Cells(reader.ReadLine()!);
        while (reader.ReadLine() is { } line)
        {
            var cells = Cells(line);
            if (cells.Count != names.Count) throw new InvalidDataException(line);
            yield return names.Zip(cells).ToDictionary(pair => pair.First, pair => pair.Second);
        }
    }

    /// <summary>
    /// RFC 4180 without line breaks inside a cell, which these tables do not have.
    /// </summary>
    private static List<string> Cells(string line)
    {
        var cells = new List<string>();
        var cell = new StringBuilder();
        var quoted = false;
        for (var i = 0; i < line.Length; i++)
        {
            if (line[i] == '"' && quoted && i + 1 < line.Length && line[i + 1] == '"')
            {
                cell.Append('"');
                i++;
            }
            else if (line[i] == '"') quoted = !quoted;
            else if (line[i] == ',' && !quoted)
            {
                cells.Add(cell.ToString());
                cell.Clear();
            }
            else cell.Append(line[i]);
        }
        cells.Add(cell.ToString());
        return cells;
    }
}
