using System.Text.Json;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Diagnostics.HealthChecks;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Diagnostics.HealthChecks;

namespace PostFrame.Messaging;

/// <summary>Tells whether the process lives, and whether its stores and its bus do.</summary>
public static class PipelineHealth
{
    /// <summary><c>/health/live</c>: the process answers. <c>/health/ready</c>: so do its stores;
    /// a bus that is away leaves it ready but degraded, because what it accepts is kept.</summary>
    public static WebApplication MapPipelineHealth(this WebApplication app)
    {
        app.MapHealthChecks("/health/live", new HealthCheckOptions
        {
            Predicate = _ => false,
            ResponseWriter = WriteAsync,
        });
        app.MapHealthChecks(
            "/health/ready", new HealthCheckOptions { ResponseWriter = WriteAsync });
        return app;
    }

    private static Task WriteAsync(HttpContext context, HealthReport report)
    {
        context.Response.ContentType = "application/json";
        return context.Response.WriteAsync(JsonSerializer.Serialize(
            new
            {
                status = report.Status.ToString().ToLowerInvariant(),
                checks = report.Entries.Select(entry => new
                {
                    name = entry.Key,
                    status = entry.Value.Status.ToString().ToLowerInvariant(),
                    description = entry.Value.Description,
                    data = entry.Key.EndsWith("-store", StringComparison.Ordinal)
                        ? entry.Value.Data
                        : null,
                }),
            },
            JsonSerializerOptions.Web));
    }
}
