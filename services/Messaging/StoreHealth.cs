using Microsoft.Extensions.Diagnostics.HealthChecks;

namespace PostFrame.Messaging;

/// <summary>Whether the store answers, and how long the oldest unsent message has waited.</summary>
internal sealed class StoreHealth(SqliteStore store) : IHealthCheck
{
    private const long LateMs = 30_000;

    public Task<HealthCheckResult> CheckHealthAsync(
        HealthCheckContext context, CancellationToken cancellationToken = default)
    {
        try
        {
            var (backlog, now) = store.Read(view => (Outbox.Backlog(view), view.NowUnixMs));
            var ageMs = backlog.OldestUnixMs is { } oldest ? Math.Max(0, now - oldest) : 0;
            var data = new Dictionary<string, object>
            {
                ["outboxWaiting"] = backlog.Waiting,
                ["outboxOldestSeconds"] = ageMs / 1000,
            };
            return Task.FromResult(ageMs > LateMs
                ? HealthCheckResult.Degraded("Messages wait to be sent.", data: data)
                : HealthCheckResult.Healthy("The store answers.", data));
        }
        catch (StoreUnavailableException)
        {
            return Task.FromResult(HealthCheckResult.Unhealthy("The store does not answer."));
        }
    }
}
