using System.Threading.Channels;
using MassTransit;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using PostFrame.Messaging;
using Xunit;

namespace PostFrame.ServicesTests.Messaging;

[MessageUrn("ping.v1")]
[EntityName("ping.v1")]
public sealed record Ping
{
    public required Guid Id { get; init; }

    public required string Text { get; init; }

    public DateTimeOffset Time { get; init; }
}

/// <summary>The same message as another service knows it.</summary>
[MessageUrn("ping.v1")]
[EntityName("ping.v1")]
public sealed record HeardPing
{
    public required string Text { get; init; }
}

/// <summary>Two services over the in-memory bus: one says pings, one hears them.</summary>
public sealed class PingHost : IAsyncDisposable
{
    private readonly IHost _host;

    private PingHost(IHost host) => _host = host;

    public SqliteStore Store => _host.Services.GetRequiredKeyedService<SqliteStore>("says");

    public SqliteStore HearingStore => _host.Services.GetRequiredKeyedService<SqliteStore>("hears");

    public IBus Bus => _host.Services.GetRequiredService<IBus>();

    public ChannelReader<(Guid? MessageId, string Text)> Heard =>
        _host.Services.GetRequiredService<Channel<(Guid?, string)>>().Reader;

    public static async Task<PingHost> StartAsync(string folder)
    {
        var builder = Host.CreateEmptyApplicationBuilder(null);
        builder.Logging.ClearProviders();
        builder.Configuration.AddInMemoryCollection([new("Data:Folder", folder)]);
        builder.Services.AddSingleton(Channel.CreateUnbounded<(Guid?, string)>());
        var none = typeof(PingHost).Assembly;
        builder.Services.AddPipelineBus(
            builder.Configuration, "says", none, parts => parts.Publishes<Ping>());
        builder.Services.AddPipelineBus(
            builder.Configuration, "hears", none, parts => parts.Consumes<Hear>());
        var host = builder.Build();
        await host.StartAsync(TestContext.Current.CancellationToken);
        return new PingHost(host);
    }

    public Task SayAsync(Guid id, string text) => Store.WriteAsync(
        transaction => Outbox.Enqueue(transaction, id, new Ping { Id = id, Text = text }),
        TestContext.Current.CancellationToken);

    public async Task<(Guid? MessageId, string Text)> NextAsync() =>
        await Heard.ReadAsync(TestContext.Current.CancellationToken)
            .AsTask().WaitAsync(TimeSpan.FromSeconds(20), TestContext.Current.CancellationToken);

    public async ValueTask DisposeAsync()
    {
        await _host.StopAsync(CancellationToken.None);
        _host.Dispose();
    }

    private sealed class Hear(
        [FromKeyedServices("hears")] SqliteStore store, Channel<(Guid?, string)> heard)
        : IConsumer<HeardPing>
    {
        public async Task Consume(ConsumeContext<HeardPing> context)
        {
            if (context.Message.Text.StartsWith("poison", StringComparison.Ordinal))
            {
                throw new InvalidOperationException("This message always fails.");
            }

            var isNew = await store.WriteAsync(
                transaction => Inbox.Claim(transaction, "hear", context.MessageId!.Value),
                context.CancellationToken);
            await heard.Writer.WriteAsync(
                (context.MessageId, isNew ? context.Message.Text : "repeat"),
                context.CancellationToken);
        }
    }
}
