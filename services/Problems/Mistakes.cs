using PostFrame.Engine;

namespace PostFrame.Problems;

/// <summary>
/// All mistakes of one request, in the order found. A hostile body can hold a million of them, so
/// only the first <see cref="MostListed"/> are kept and the rest are counted.
/// </summary>
public sealed class Mistakes
{
    public const int MostListed = 100;

    private const int MostShownCharacters = 80;

    private readonly List<Violation> _listed = [];

    public IReadOnlyList<Violation> Listed => _listed;

    public int LeftOut { get; private set; }

    public int Count => _listed.Count + LeftOut;

    public bool Any => _listed.Count > 0;

    public void Add(Violation violation)
    {
        if (_listed.Count == MostListed)
        {
            LeftOut++;
            return;
        }

        _listed.Add(violation with { Actual = Shortened(violation.Actual) });
    }

    public void AddRange(IEnumerable<Violation> violations)
    {
        foreach (var violation in violations)
        {
            Add(violation);
        }
    }

    /// <summary>
    /// Adds what a later check found, but not about a member that is noted already or lies inside
    /// one: a width that could not be read is not also missing.
    /// </summary>
    public void AddUnlessNoted(IEnumerable<Violation> violations)
    {
        var noted = _listed.Select(mistake => mistake.Path).ToHashSet(StringComparer.Ordinal);
        AddRange(violations.Where(violation => !IsInside(violation.Path, noted)));
    }

    private static bool IsInside(string path, HashSet<string> noted)
    {
        while (!noted.Contains(path))
        {
            if (path.LastIndexOf('/') is var end && end < 0)
            {
                return false;
            }

            path = path[..end];
        }

        return true;
    }

    public void Add(
        string path, string rule, string actual, string message,
        string? limit = null, string? unit = null) =>
        Add(new Violation(path, rule, actual, limit, unit, message));

    /// <summary>Enough of a value to recognise it, never cut inside a surrogate pair.</summary>
    internal static string Shortened(string text)
    {
        if (text.Length <= MostShownCharacters)
        {
            return text;
        }

        var end = MostShownCharacters - 1;
        return text[..(char.IsHighSurrogate(text[end - 1]) ? end - 1 : end)] + "…";
    }
}
