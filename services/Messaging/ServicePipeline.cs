using MassTransit;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;

namespace PostFrame.Messaging;

/// <summary>What one service reads from the bus and what it announces there.</summary>
public sealed class ServicePipeline
{
    private const int MostTries = 5;
    private readonly IServiceCollection _services;
    private readonly List<Action<IReceiveEndpointConfigurator, IRegistrationContext>>
        _consumers = [];
    private readonly Dictionary<string, Type> _published = [];

    internal ServicePipeline(string service, IServiceCollection services)
    {
        Service = service;
        _services = services;
    }

    /// <summary>How many messages the service handles at once; four unless set.</summary>
    public int AtOnce { get; set; } = 4;

    internal string Service { get; }

    /// <summary>The version is in the name: a queue cannot change its kind.</summary>
    internal string Queue => Service + ".v1";

    internal bool Reads => _consumers.Count > 0;

    internal IReadOnlyDictionary<string, Type> Published => _published;

    /// <summary>Reads messages by a plain consumer, made anew for each message.</summary>
    public ServicePipeline Consumes<TConsumer>()
        where TConsumer : class, IConsumer
    {
        _services.TryAddScoped<TConsumer>();
        _consumers.Add((endpoint, context) => endpoint.Consumer<TConsumer>(context));
        return this;
    }

    /// <summary>Announces messages of this type through its outbox.</summary>
    public ServicePipeline Publishes<TMessage>()
        where TMessage : class
    {
        _published.Add(Outbox.TypeName(typeof(TMessage)), typeof(TMessage));
        return this;
    }

    /// <summary>
    /// Failures are tried again here, in place and a few times; then the message goes to the
    /// queue's error queue and the next one is taken.
    /// </summary>
    internal void Configure(IReceiveEndpointConfigurator endpoint, IRegistrationContext context)
    {
        endpoint.PrefetchCount = AtOnce * 4;
        endpoint.ConcurrentMessageLimit = AtOnce;
        endpoint.PublishFaults = false;
        endpoint.UseMessageRetry(retry => retry.Exponential(
            MostTries - 1, TimeSpan.FromMilliseconds(100), TimeSpan.FromSeconds(3),
            TimeSpan.FromMilliseconds(200)));
        foreach (var consumer in _consumers)
        {
            consumer(endpoint, context);
        }
    }
}
