using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace PostFrame.Problems;

/// <summary>
/// Sees to it that no refusal leaves without its reason: a status without a body gets one, a
/// failure becomes a 500 with nothing internal, and <c>/problems/{name}</c> explains each kind.
/// </summary>
public static partial class ProblemGuard
{
    /// <summary>Call it once, before any other middleware of the application.</summary>
    public static IApplicationBuilder UseProblems(this IApplicationBuilder app)
    {
        var log = app.ApplicationServices.GetRequiredService<ILoggerFactory>()
            .CreateLogger("PostFrame.Problems");
        return app.Use(next => context => Guard(context, next, log));
    }

    private static async Task Guard(HttpContext context, RequestDelegate next, ILogger log)
    {
        if (ProblemPages.IsAt(context.Request))
        {
            await ProblemPages.Answer(context.Request).ExecuteAsync(context);
            return;
        }

        try
        {
            await next(context);
        }
        catch (OperationCanceledException) when (context.RequestAborted.IsCancellationRequested)
        {
            // The caller has gone; nobody reads an answer.
            return;
        }
        catch (BadHttpRequestException refused) when (!context.Response.HasStarted)
        {
            await Instead(context, ProblemAnswer.ForBareStatus(refused.StatusCode));
            return;
        }
        catch (Exception failure) when (!context.Response.HasStarted)
        {
            LogFailure(
                log, failure, context.Request.Method, context.Request.Path,
                ProblemAnswer.TraceIdOf(context));
            await Instead(context, ProblemAnswer.Unhandled());
            return;
        }

        if (IsBareRefusal(context.Response))
        {
            await ProblemAnswer.ForBareStatus(context.Response.StatusCode).ExecuteAsync(context);
        }
    }

    private static bool IsBareRefusal(HttpResponse response) =>
        !response.HasStarted && response.StatusCode >= 400
        && response.ContentLength is null or 0 && string.IsNullOrEmpty(response.ContentType);

    private static Task Instead(HttpContext context, ProblemAnswer answer)
    {
        context.Response.Clear();
        return answer.ExecuteAsync(context);
    }

    [LoggerMessage(
        LogLevel.Error, "{Method} {Path} failed; the caller was told trace id {TraceId}")]
    private static partial void LogFailure(
        ILogger log, Exception failure, string method, string path, string traceId);
}
