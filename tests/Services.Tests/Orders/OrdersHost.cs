using System.Net.Http.Headers;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Threading.Channels;
using MassTransit;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Time.Testing;
using PostFrame.Messaging;
using PostFrame.OrdersApi;
using PostFrame.OrdersApi.Messages;
using PostFrame.OrdersApi.Orders;
using PostFrame.OrdersApi.TakeOffs;
using PostFrame.Problems;
using PostFrame.ServicesTests.Messaging;
using PostFrame.SizingApi.Sizings;
using Xunit;

namespace PostFrame.ServicesTests.Orders;

/// <summary>The real orders service over the in-memory bus; no worker answers it unless the test
/// does.</summary>
internal sealed class OrdersHost : IAsyncDisposable
{
    private readonly WebApplication _app;

    private OrdersHost(WebApplication app) => _app = app;

    public FakeTimeProvider Time =>
        (FakeTimeProvider)_app.Services.GetRequiredService<TimeProvider>();

    public IBus Bus => _app.Services.GetRequiredService<IBus>();

    public SqliteStore Store => _app.Services.GetRequiredKeyedService<SqliteStore>("orders");

    public Reconciler Reconciler =>
        _app.Services.GetServices<IHostedService>().OfType<Reconciler>().Single();

    /// <summary>What went out on the bus next.</summary>
    public async Task<OrderConfirmed> NextAnnouncedAsync()
    {
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(
            TestContext.Current.CancellationToken);
        patience.CancelAfter(TimeSpan.FromSeconds(20));
        return await _app.Services.GetRequiredService<Channel<OrderConfirmed>>()
            .Reader.ReadAsync(patience.Token);
    }

    public static readonly AskForTakeOff RealSizing = (request, _) =>
    {
        var answer = Sizings.Answer(request);
        return Task.FromResult(new TakeOffAnswer(answer.Status, answer.Body));
    };

    public static async Task<OrdersHost> StartAsync(
        TemporaryFolder folder, AskForTakeOff? sizing = null, DateTimeOffset? now = null)
    {
        // The bus keeps the log of the first host of a test, which a second one finds closed.
        LogContext.ConfigureCurrentLogContext(NullLoggerFactory.Instance);
        var builder = WebApplication.CreateBuilder();
        builder.WebHost.UseTestServer();
        builder.Logging.ClearProviders();
        builder.Configuration.AddInMemoryCollection([new("Data:Folder", folder.Path)]);
        builder.Services.AddSingleton<TimeProvider>(new FakeTimeProvider(
            now ?? new DateTimeOffset(2026, 11, 25, 14, 0, 0, TimeSpan.Zero)));
        builder.Services.AddSingleton(sizing ?? RealSizing);
        builder.Services.AddSingleton(Channel.CreateUnbounded<OrderConfirmed>());
        builder.Services.AddPipelineBus(
            builder.Configuration, "listener", typeof(OrdersHost).Assembly,
            parts => parts.Consumes<Listener>());
        builder.AddOrders();
        var app = builder.Build();
        app.UseProblems();
        app.MapOrders();
        await app.StartAsync(TestContext.Current.CancellationToken);
        return new OrdersHost(app);
    }

    public async Task<Answer> PostAsync(byte[] order, params string[] keys)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, "/v1/orders");
        request.Content = new ByteArrayContent(order);
        request.Content.Headers.ContentType = new MediaTypeHeaderValue("application/json");
        request.Headers.Add("Idempotency-Key", keys);
        return await SendAsync(request);
    }

    public Task<Answer> GetAsync(string path) =>
        SendAsync(new HttpRequestMessage(HttpMethod.Get, path));

    public Task<Answer> PostEmptyAsync(string path) =>
        SendAsync(new HttpRequestMessage(HttpMethod.Post, path));

    /// <summary>Waits until the order is in a state; messages take a moment.</summary>
    public async Task<JsonNode> UntilAsync(string orderNumber, string state)
    {
        using var tick = new PeriodicTimer(TimeSpan.FromMilliseconds(10));
        for (var n = 0; n < 1500; n++)
        {
            var order = await GetAsync("/v1/orders/" + orderNumber);
            if (order.Json["state"]!.GetValue<string>() == state)
            {
                return order.Json;
            }

            await tick.WaitForNextTickAsync(TestContext.Current.CancellationToken);
        }

        throw new TimeoutException($"Order {orderNumber} did not become {state}.");
    }

    private async Task<Answer> SendAsync(HttpRequestMessage request)
    {
        using var client = _app.GetTestClient();
        using var answer = await client.SendAsync(request, TestContext.Current.CancellationToken);
        return new Answer(
            (int)answer.StatusCode, answer.Headers.Location?.ToString(),
            await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
    }

    public async ValueTask DisposeAsync()
    {
        await _app.StopAsync(CancellationToken.None);
        await _app.DisposeAsync();
    }

    private sealed class Listener(Channel<OrderConfirmed> announced) : IConsumer<OrderConfirmed>
    {
        public Task Consume(ConsumeContext<OrderConfirmed> context) =>
            announced.Writer.WriteAsync(context.Message, context.CancellationToken).AsTask();
    }

    internal sealed record Answer(int Status, string? Location, string Body)
    {
        public JsonNode Json => JsonNode.Parse(Body) ?? throw new JsonException("null");

        public string? Type => Json["type"]?.GetValue<string>();
    }
}
