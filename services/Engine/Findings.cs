using System.Globalization;
using PostFrame.Engine.Quantities;

namespace PostFrame.Engine;

/// <summary>Collects every violation of a request, so that all are told at once.</summary>
internal sealed class Findings(bool metric)
{
    private readonly List<Violation> violations = [];

    public IReadOnlyList<Violation> All => violations;

    public bool Any => violations.Count > 0;

    public bool Metric => metric;

    public void Add(
        string path, string rule, string message, string actual = "", string? limit = null,
        string? unit = null) =>
        violations.Add(new(path, rule, actual, limit, unit, message));

    public void Missing(string path, string what) =>
        Add(path, "missing", $"{what} is missing.");

    /// <summary>A length against a bound it broke.</summary>
    public void Broken(string path, string rule, string message, Length actual, Length limit) =>
        Add(path, rule, message, actual.Number(metric), limit.Number(metric),
            LengthWords.Unit(metric));

    /// <summary>The value when present and within bounds; else null and a violation.</summary>
    public Length? Required(string path, string what, Length? value, Length least, Length most)
    {
        if (value is null) Missing(path, what);
        return Optional(path, what, value, least, most);
    }

    /// <summary>
    /// The value when within bounds; null when absent or, with a violation, outside.
    /// </summary>
    public Length? Optional(string path, string what, Length? value, Length least, Length most)
    {
        if (value is not { } length) return null;
        if (length >= least && length <= most) return length;
        var small = length < least;
        Broken(path, small ? "too-small" : "too-large",
            $"{what} is {Say(length)}; it must be {Say(least)} to {Say(most)}.",
            length, small ? least : most);
        return null;
    }

    public Slope? Required(string path, string what, Slope? value, double least, double most)
    {
        if (value is null) Missing(path, what);
        return Optional(path, what, value, least, most);
    }

    /// <summary>A slope within x:12 bounds.</summary>
    public Slope? Optional(string path, string what, Slope? value, double least, double most)
    {
        if (value is not { } slope) return null;
        if (slope.RisePer12 >= least && slope.RisePer12 <= most) return slope;
        var text = Text(slope.RisePer12);
        if (slope.RisePer12 < 0)
            Add(path, "roof-falls-inward",
                $"{what} is {text}:12: the roof would fall inward. Give a rising slope.",
                text, Text(least), "in 12 in");
        else
            Add(path, slope.RisePer12 < least ? "too-small" : "too-large",
                $"{what} is {text}:12; it must be {Text(least)}:12 to {Text(most)}:12.",
                text, Text(slope.RisePer12 < least ? least : most), "in 12 in");
        return null;
    }

    public string Say(Length length) =>
        metric ? length.SayLong(true) : $"{length.SayLong(false)}";

    private static string Text(double value) =>
        value.ToString("0.###", CultureInfo.InvariantCulture);
}
