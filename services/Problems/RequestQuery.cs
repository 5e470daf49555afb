using System.Globalization;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Primitives;

namespace PostFrame.Problems;

/// <summary>
/// Reads the query of a request as strictly as a body: every member that cannot be used is noted,
/// and so is one that nobody asked for.
/// </summary>
public sealed class RequestQuery(HttpRequest request)
{
    private readonly HashSet<string> _asked = new(StringComparer.OrdinalIgnoreCase);

    public Mistakes Mistakes { get; } = new();

    /// <summary>A whole number between two bounds, both included.</summary>
    public long? Whole(string name, long least, long most, string? unit = null)
    {
        if (Only(name) is not { } sent)
        {
            return null;
        }

        if (long.TryParse(sent, NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            && number >= least && number <= most)
        {
            return number;
        }

        var bound = most == long.MaxValue ? $"at least {least}" : $"{least} to {most}";
        Wrong(
            name, "out-of-range", sent,
            $"{name} must be a whole number, {bound}; \"{Mistakes.Shortened(sent)}\" is not.",
            bound, unit);
        return null;
    }

    /// <summary>One of the listed words.</summary>
    public string? Choice(string name, params IReadOnlyList<string> words)
    {
        if (Only(name) is not { } sent || words.Contains(sent))
        {
            return Only(name);
        }

        var list = string.Join(", ", words);
        Wrong(
            name, "unknown-word", sent,
            $"{name} \"{Mistakes.Shortened(sent)}\" is none of {list}.", list);
        return null;
    }

    public string? Text(string name, int longest)
    {
        if (Only(name) is not { } sent || sent.Length <= longest)
        {
            return Only(name);
        }

        Wrong(
            name, "text-too-long", sent,
            $"{name} is {sent.Length} characters long, at most {longest}.", $"{longest}",
            "characters");
        return null;
    }

    /// <summary>A member that may be given several times.</summary>
    public IReadOnlyList<string> Texts(string name, int most)
    {
        _asked.Add(name);
        var sent = request.Query[name];
        if (sent.Count > most)
        {
            Wrong(
                name, "too-many", $"{sent.Count}",
                $"{name} is given {sent.Count} times, at most {most}.", $"{most}");
            return [];
        }

        return [.. sent.OfType<string>()];
    }

    public void Wrong(
        string name, string rule, string sent, string message, string? bound = null,
        string? unit = null) =>
        Mistakes.Add(JsonPointer.Of("", name), rule, sent, message, bound, unit);

    /// <summary>The refusal when anything is wrong; call it last.</summary>
    public ProblemAnswer? Refusal()
    {
        var unasked = request.Query.Where(member => !_asked.Contains(member.Key));
        foreach (var (name, sent) in unasked)
        {
            var near = NearName.Of(name, _asked);
            var shown = Mistakes.Shortened(name);
            Wrong(
                name, "unknown-member", sent.ToString(),
                near is null
                    ? $"\"{shown}\" means nothing in this address; leave it out."
                    : $"\"{shown}\" means nothing in this address. Did you mean \"{near}\"?",
                near);
        }

        return Mistakes.Any ? ProblemAnswer.Invalid(Mistakes) : null;
    }

    private string? Only(string name)
    {
        var isFirst = _asked.Add(name);
        if (!request.Query.TryGetValue(name, out var sent) || StringValues.IsNullOrEmpty(sent))
        {
            return sent.Count > 0 ? "" : null;
        }

        if (sent.Count > 1 && isFirst)
        {
            Wrong(
                name, "duplicate-member", sent.ToString(),
                $"{name} is given {sent.Count} times; which one counts?");
        }

        return sent[0];
    }
}
