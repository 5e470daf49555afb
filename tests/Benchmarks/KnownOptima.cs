using System.Globalization;

namespace PostFrame.Benchmarks;

/// <summary>Published optima, where a list lies beside the instances.</summary>
internal sealed class KnownOptima
{
    private readonly Dictionary<string, (double Low, double High)> _known = [];

    /// <summary>
    /// Reads <c>*optima.csv</c> and <c>*bounds.csv</c> in the folder and the two above.
    /// </summary>
    public static KnownOptima Near(string folder)
    {
        var known = new KnownOptima();
        var at = new DirectoryInfo(folder);
        for (var up = 0; up < 3 && at is not null; up++, at = at.Parent)
        {
            foreach (var file in at.EnumerateFiles("*.csv"))
                known.Read(file.FullName);
        }

        return known;
    }

    public string Contradiction(string name, long bound, long cost)
    {
        if (!_known.TryGetValue(name, out var optimum))
            return "";
        return bound > optimum.High || cost < optimum.Low
            ? $"CONTRADICTS {optimum.Low}..{optimum.High}: bound {bound}, cost {cost} "
            : "";
    }

    private void Read(string file)
    {
        var lines = File.ReadAllLines(file);
        var head = lines.FirstOrDefault()?.Split(',') ?? [];
        var name = Array.IndexOf(head, "file");
        var (low, high) = (Array.IndexOf(head, "optimum"), Array.IndexOf(head, "optimum"));
        if (low < 0)
            (low, high) = (Array.IndexOf(head, "lower_bound"), Array.IndexOf(head, "upper_bound"));
        if (name < 0 || low < 0 || high < 0)
            return;
        foreach (var line in lines.Skip(1).Select(l => l.Split(',')).Where(l => l.Length > high))
        {
            _known[Path.GetFileNameWithoutExtension(line[name])] = (
                double.Parse(line[low], CultureInfo.InvariantCulture),
                double.Parse(line[high], CultureInfo.InvariantCulture));
        }
    }
}
