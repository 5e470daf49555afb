using Microsoft.Extensions.Options;
using Microsoft.Net.Http.Headers;
using PostFrame.Problems;

namespace PostFrame.Operations;

/// <summary>The board at <c>/board/</c>, served from inside the assembly.</summary>
internal static class BoardPage
{
    private const string Root = "board/";

    private static readonly Dictionary<string, string> MediaTypes = new()
    {
        [".html"] = "text/html; charset=utf-8",
        [".css"] = "text/css; charset=utf-8",
        [".js"] = "text/javascript; charset=utf-8",
        [".svg"] = "image/svg+xml",
    };

    public static void MapBoard(this IEndpointRouteBuilder routes)
    {
        var links = routes.ServiceProvider.GetRequiredService<IOptions<LinkOptions>>().Value;
        var policy = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; "
            + $"connect-src {string.Join(' ', links.Asked.Prepend("'self'"))}; "
            + "form-action 'none'; base-uri 'none'; frame-ancestors 'none'";
        var board = routes.MapGroup("/board").ExcludeFromDescription();
        board.MapGet("/", (HttpContext context) => Answer(context, "index.html", policy));
        board.MapGet("/{file}", (HttpContext context, string file) =>
            Answer(context, file, policy));
    }

    /// <summary>Own files only: no script, style or request from anywhere else.</summary>
    private static IResult Answer(HttpContext context, string file, string policy)
    {
        var assembly = typeof(BoardPage).Assembly;
        if (!MediaTypes.TryGetValue(Path.GetExtension(file), out var type)
            || assembly.GetManifestResourceStream(Root + file) is not { } content)
        {
            return ProblemAnswer.ForBareStatus(StatusCodes.Status404NotFound);
        }

        var headers = context.Response.Headers;
        headers.ContentSecurityPolicy = policy;
        headers.XContentTypeOptions = "nosniff";
        headers["Referrer-Policy"] = "no-referrer";
        headers.CacheControl = "no-cache";
        return TypedResults.Stream(
            content, type,
            entityTag: new EntityTagHeaderValue(
                $"\"{assembly.ManifestModule.ModuleVersionId:N}\""));
    }
}
