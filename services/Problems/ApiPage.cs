using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;

namespace PostFrame.Problems;

/// <summary>
/// OpenAPI documents at <c>/openapi/{name}.json</c> and their page at <c>/docs</c>.
/// </summary>
public static class ApiPage
{
    /// <summary>Call it once per host, with the documents of the services it carries.</summary>
    public static WebApplication MapApiPages(
        this WebApplication app, params (string Name, string Title)[] documents)
    {
        var served = documents.Select(document => $"/openapi/{document.Name}.json").ToHashSet();
        app.Use(next => context =>
            context.Request.Path.StartsWithSegments("/openapi")
                && !served.Contains(context.Request.Path.Value!)
                ? ProblemAnswer.ForBareStatus(StatusCodes.Status404NotFound).ExecuteAsync(context)
                : next(context));
        app.MapOpenApi("/openapi/{documentName}.json");
        app.UseSwaggerUI(page =>
        {
            page.RoutePrefix = "docs";
            page.DocumentTitle = "API";
            page.HeadContent = "<style>.topbar a.link { display: none }</style>";
            foreach (var (name, title) in documents)
            {
                page.SwaggerEndpoint($"/openapi/{name}.json", title);
            }
        });
        return app;
    }
}
