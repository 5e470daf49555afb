using Microsoft.AspNetCore.Http;
using Microsoft.Net.Http.Headers;

namespace PostFrame.Problems;

/// <summary>Which of the forms we can produce the caller likes best (RFC 9110, 12.5.1).</summary>
public static class MediaTypes
{
    /// <summary>One of <paramref name="offered"/>, the first when the caller does not say or names
    /// nothing; null when none is acceptable.</summary>
    public static string? Preferred(HttpRequest request, params ReadOnlySpan<string> offered)
    {
        if (request.Headers.Accept.All(NamesNothing))
        {
            return offered[0];
        }

        if (!MediaTypeHeaderValue.TryParseList(request.Headers.Accept, out var accepted))
        {
            return null;
        }

        string? best = null;
        var bestQuality = 0.0;
        foreach (var form in offered)
        {
            var quality = QualityOf(new MediaTypeHeaderValue(form), accepted);
            if (quality > bestQuality)
            {
                best = form;
                bestQuality = quality;
            }
        }

        return best;
    }

    public static ProblemAnswer NoneOf(params ReadOnlySpan<string> offered) => new(
        ProblemKind.NotAcceptable, $"This can be had as {string.Join(", ", offered!)}.");

    /// <summary>The list may be empty, and elements between commas too (RFC 9110, 5.6.1).</summary>
    private static bool NamesNothing(string? list) =>
        list is null || list.AsSpan().Trim(" \t,").IsEmpty;

    /// <summary>The most specific range that covers the form decides its quality.</summary>
    private static double QualityOf(MediaTypeHeaderValue form, IList<MediaTypeHeaderValue> ranges)
    {
        var covering = ranges.Where(range => form.IsSubsetOf(WithoutQuality(range))).ToList();
        return covering.Count == 0
            ? 0
            : covering.MaxBy(Specificity)!.Quality ?? 1;
    }

    /// <summary>Our forms have no parameters: a range with some is taken for its form, but the
    /// bare form, where it stands too, names it more exactly.</summary>
    private static int Specificity(MediaTypeHeaderValue range) =>
        range.MatchesAllTypes ? 0
        : range.MatchesAllSubTypes ? 1
        : range.Parameters.Any(p => !p.Name.Equals("q", StringComparison.OrdinalIgnoreCase)) ? 2
        : 3;

    private static MediaTypeHeaderValue WithoutQuality(MediaTypeHeaderValue range) =>
        new(range.MediaType);
}
