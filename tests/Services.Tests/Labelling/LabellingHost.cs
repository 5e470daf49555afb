using System.Text.Json;
using System.Threading.Channels;
using MassTransit;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using PostFrame.LabellingWorker;
using PostFrame.LabellingWorker.Messages;
using PostFrame.Messaging;
using PostFrame.Problems;
using Xunit;

namespace PostFrame.ServicesTests.Labelling;

/// <summary>The real service over a store in a temporary folder and the bus in memory.</summary>
internal sealed class LabellingHost : IAsyncDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);
    private readonly WebApplication app;
    private readonly HostReceiveEndpointHandle listener;
    private readonly Channel<LabelsPrinted> printed;
    private readonly Channel<LabelsFailed> failed;

    private LabellingHost(
        WebApplication app, HostReceiveEndpointHandle listener, Channel<LabelsPrinted> printed,
        Channel<LabelsFailed> failed) =>
        (this.app, this.listener, this.printed, this.failed) = (app, listener, printed, failed);

    public HttpClient Http => app.GetTestClient();

    public static async Task<LabellingHost> StartAsync(string folder)
    {
        var builder = WebApplication.CreateBuilder();
        builder.WebHost.UseTestServer();
        builder.Logging.ClearProviders();
        builder.Configuration["Data:Folder"] = folder;
        builder.AddLabelling();
        var app = builder.Build();
        app.UseProblems();
        app.MapLabelling();
        // The bus keeps the log of the host before it in this flow of control; that one is gone.
        LogContext.ConfigureCurrentLogContext(app.Services.GetRequiredService<ILoggerFactory>());
        await app.StartAsync(TestContext.Current.CancellationToken);
        var printed = Channel.CreateUnbounded<LabelsPrinted>();
        var failed = Channel.CreateUnbounded<LabelsFailed>();
        var listener = app.Services.GetRequiredService<IBusControl>().ConnectReceiveEndpoint(
            "listener", endpoint =>
            {
                endpoint.Handler<LabelsPrinted>(
                    context => printed.Writer.WriteAsync(context.Message).AsTask());
                endpoint.Handler<LabelsFailed>(
                    context => failed.Writer.WriteAsync(context.Message).AsTask());
            });
        await listener.Ready;
        return new LabellingHost(app, listener, printed, failed);
    }

    public Task PublishAsync<TMessage>(TMessage message, Guid id)
        where TMessage : class =>
        app.Services.GetRequiredService<IBus>().Publish(
            message, context => context.MessageId = id, TestContext.Current.CancellationToken);

    public async Task<LabelsPrinted> NextAsync()
    {
        using var deadline = new CancellationTokenSource(Patience);
        return await printed.Reader.ReadAsync(deadline.Token);
    }

    public async Task<LabelsFailed> NextFailedAsync()
    {
        using var deadline = new CancellationTokenSource(Patience);
        return await failed.Reader.ReadAsync(deadline.Token);
    }

    /// <summary>Waits until so many messages have had their effect.</summary>
    public async Task UntilTakenAsync(int count)
    {
        var store = app.Services.GetRequiredKeyedService<SqliteStore>("labelling");
        using var deadline = new CancellationTokenSource(Patience);
        using var tick = new PeriodicTimer(TimeSpan.FromMilliseconds(10));
        while (store.Read(view => view.Single<long>("SELECT count(*) FROM inbox")) < count)
        {
            await tick.WaitForNextTickAsync(deadline.Token);
        }
    }

    /// <summary>
    /// Waits until a marker order, sent after everything before it, is printed: one consumer at a
    /// time and in order is not promised, so this bounds the wait without a sleep.
    /// </summary>
    public async Task<IReadOnlyList<LabelsPrinted>> SettleAsync()
    {
        var (order, plan) = Example("PF-MARK", 1);
        await PublishAsync(order, Guid.NewGuid());
        await PublishAsync(plan, Guid.NewGuid());
        var seen = new List<LabelsPrinted>();
        while (true)
        {
            var next = await NextAsync();
            if (next.Data.OrderNumber == "PF-MARK")
            {
                return seen;
            }

            seen.Add(next);
        }
    }

    /// <summary>The published example messages, as another order and revision.</summary>
    public static (OrderConfirmed Order, CuttingPlanned Plan) Example(
        string orderNumber = "PF-1001", int revision = 1)
    {
        var order = Read<OrderConfirmed>("order-confirmed.v1.example.json");
        var plan = Read<CuttingPlanned>("cutting-planned.v1.example.json");
        return (
            order with
            {
                Data = order.Data with { OrderNumber = orderNumber, Revision = revision },
            },
            plan with
            {
                Data = plan.Data with { OrderNumber = orderNumber, Revision = revision },
            });
    }

    public async ValueTask DisposeAsync()
    {
        await listener.StopAsync();
        await app.StopAsync();
        await app.DisposeAsync();
    }

    private static T Read<T>(string name)
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!Directory.Exists(Path.Combine(folder.FullName, "contracts")))
        {
            folder = folder.Parent ?? throw new DirectoryNotFoundException("contracts");
        }

        var path = Path.Combine(folder.FullName, "contracts", "messages", name);
        return JsonSerializer.Deserialize<T>(File.ReadAllText(path), MessageJson.Options)!;
    }
}
