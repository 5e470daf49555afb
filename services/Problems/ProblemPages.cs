using System.Text;
using System.Text.Encodings.Web;
using Microsoft.AspNetCore.Http;

namespace PostFrame.Problems;

/// <summary>The pages a problem's <c>type</c> leads to.</summary>
internal static class ProblemPages
{
    private const string Root = "/problems";

    public static bool IsAt(HttpRequest request) =>
        request.Path.StartsWithSegments(Root) && HttpMethods.IsGet(request.Method);

    public static IResult Answer(HttpRequest request)
    {
        request.Path.StartsWithSegments(Root, out var rest);
        var name = rest.Value?.Trim('/') ?? "";
        if (name.Length == 0)
        {
            return Page("Problems", [.. ProblemKind.All]);
        }

        return ProblemKind.All.FirstOrDefault(kind => kind.Name == name) is { } found
            ? Page(found.Title, found)
            : ProblemAnswer.ForBareStatus(StatusCodes.Status404NotFound);
    }

    private static IResult Page(string title, params ReadOnlySpan<ProblemKind> kinds)
    {
        var html = new StringBuilder();
        html.Append(
            $$"""
            <!doctype html>
            <html lang="en"><head><meta charset="utf-8">
            <meta name="viewport" content="width=device-width, initial-scale=1">
            <title>{{Safe(title)}}</title>
            <style>body{font:1rem/1.5 system-ui,sans-serif;max-width:44rem;margin:2rem auto;
            padding:0 1rem;color:#1d2329}h1{font-size:1.4rem}h2{font-size:1.1rem;margin-top:2rem}
            code{background:#eef1f4;padding:.1em .3em}</style></head><body>
            <h1>{{Safe(title)}}</h1>
            """);
        foreach (var kind in kinds)
        {
            html.Append(
                $"""
                <h2><code>{Safe(kind.Type)}</code> · status {kind.Status}</h2>
                <p><strong>{Safe(kind.Title)}.</strong></p>
                <p>Cause: {Safe(kind.Cause)}</p>
                <p>Remedy: {Safe(kind.Remedy)}</p>
                """);
        }

        html.Append("</body></html>");
        return TypedResults.Content(html.ToString(), "text/html; charset=utf-8");
    }

    private static string Safe(string text) => HtmlEncoder.Default.Encode(text);
}
