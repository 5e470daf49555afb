using System.Reflection;
using MassTransit;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;
using Microsoft.Extensions.Diagnostics.HealthChecks;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

namespace PostFrame.Messaging;

/// <summary>Puts a service on the bus, with a store of its own.</summary>
public static class PipelineBus
{
    /// <summary>
    /// Opens the service's store (a <see cref="SqliteStore"/> keyed by the service's name), runs
    /// the relay of its outbox, and reads what <paramref name="parts"/> says. Several services in
    /// one process share one bus. Settings: <c>Data:Folder</c> (default <c>data</c>);
    /// <c>Bus:Transport</c> <c>memory</c> (default) or <c>rabbitmq</c> with <c>Bus:Host</c>,
    /// <c>Bus:Port</c>, <c>Bus:User</c>, <c>Bus:Password</c>, <c>Bus:VirtualHost</c>.
    /// </summary>
    public static IServiceCollection AddPipelineBus(
        this IServiceCollection services, IConfiguration configuration, string service,
        Assembly migrations, Action<ServicePipeline> parts)
    {
        var pipeline = new ServicePipeline(service, services);
        parts(pipeline);
        AddBusOnce(services, configuration);
        services.AddSingleton(pipeline);
        services.AddKeyedSingleton(service, (provider, _) => SqliteStore.Open(
            provider.GetRequiredService<IConfiguration>()["Data:Folder"] ?? "data",
            service, migrations, provider.GetRequiredService<TimeProvider>()));
        services.AddSingleton<IHostedService>(provider => new OutboxRelay(
            provider.GetRequiredKeyedService<SqliteStore>(service), pipeline.Published,
            provider.GetRequiredService<IBusControl>(),
            provider.GetRequiredService<TimeProvider>(),
            provider.GetRequiredService<ILogger<OutboxRelay>>()));
        services.AddHealthChecks().Add(new HealthCheckRegistration(
            service + "-store",
            provider => new StoreHealth(provider.GetRequiredKeyedService<SqliteStore>(service)),
            HealthStatus.Unhealthy, tags: null));
        return services;
    }

    private static void AddBusOnce(IServiceCollection services, IConfiguration configuration)
    {
        if (services.Any(added => added.ServiceType == typeof(ServicePipeline)))
        {
            return;
        }

        services.TryAddSingleton(TimeProvider.System);
        services.Configure<MassTransitHostOptions>(
            host => host.StopTimeout = TimeSpan.FromSeconds(20));
        services.AddMassTransit(bus =>
        {
            bus.DisableUsageTelemetry(); // Nothing about a shop leaves its machine.
            bus.ConfigureHealthCheckOptions(health =>
                health.MinimalFailureStatus = HealthStatus.Degraded);
            switch (configuration["Bus:Transport"] ?? "memory")
            {
                case "memory":
                    bus.UsingInMemory(ConfigureMemory);
                    break;
                case "rabbitmq":
                    bus.UsingRabbitMq(ConfigureRabbitMq);
                    break;
                default:
                    throw new InvalidOperationException(
                        "Bus:Transport must be memory or rabbitmq, not "
                        + $"\"{configuration["Bus:Transport"]}\".");
            }
        });
    }

    private static void ConfigureMemory(
        IBusRegistrationContext context, IInMemoryBusFactoryConfigurator bus)
    {
        bus.ConfigureJsonSerializerOptions(MessageJson.Adapt);
        foreach (var pipeline in Reading(context))
        {
            bus.ReceiveEndpoint(pipeline.Queue, endpoint => pipeline.Configure(endpoint, context));
        }
    }

    private static void ConfigureRabbitMq(
        IBusRegistrationContext context, IRabbitMqBusFactoryConfigurator bus)
    {
        var settings = context.GetRequiredService<IConfiguration>().GetSection("Bus");
        bus.ConfigureJsonSerializerOptions(MessageJson.Adapt);
        bus.Host(
            settings["Host"] ?? "localhost", settings.GetValue<ushort>("Port", 5672),
            settings["VirtualHost"] ?? "/",
            host =>
            {
                host.Username(settings["User"] ?? "guest");
                host.Password(settings["Password"] ?? "guest");
            });
        foreach (var pipeline in Reading(context))
        {
            bus.ReceiveEndpoint(pipeline.Queue, endpoint =>
            {
                endpoint.SetQuorumQueue();
                pipeline.Configure(endpoint, context);
            });
        }
    }

    private static IEnumerable<ServicePipeline> Reading(IServiceProvider services) =>
        services.GetServices<ServicePipeline>().Where(pipeline => pipeline.Reads);
}
