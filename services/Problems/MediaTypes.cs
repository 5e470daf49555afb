using Microsoft.AspNetCore.Http;
using Microsoft.Net.Http.Headers;

namespace PostFrame.Problems;

/// <summary>Which of the forms we can produce the caller likes best (RFC 9110, 12.5.1).</summary>
public static class MediaTypes
{
    /// <summary>One of <paramref name="offered"/>, the first when the caller does not say; null
    /// when none is acceptable.</summary>
    public static string? Preferred(HttpRequest request, params ReadOnlySpan<string> offered)
    {
        if (request.Headers.Accept.Count == 0)
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

    /// <summary>The most specific range that covers the form decides its quality.</summary>
    private static double QualityOf(MediaTypeHeaderValue form, IList<MediaTypeHeaderValue> ranges)
    {
        var covering = ranges.Where(range => form.IsSubsetOf(WithoutQuality(range))).ToList();
        return covering.Count == 0
            ? 0
            : covering.MaxBy(Specificity)!.Quality ?? 1;
    }

    private static int Specificity(MediaTypeHeaderValue range) =>
        range.MatchesAllTypes ? 0 : range.MatchesAllSubTypes ? 1 : 2;

    private static MediaTypeHeaderValue WithoutQuality(MediaTypeHeaderValue range) =>
        new(range.MediaType);
}
