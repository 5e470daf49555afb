using System.Net;
using System.Net.Http.Json;
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
using PostFrame.CuttingWorker;
using PostFrame.CuttingWorker.Messages;
using PostFrame.CuttingWorker.Plans;
using PostFrame.Messaging;
using PostFrame.Problems;

namespace PostFrame.ServicesTests.Cutting;

/// <summary>The real cutting service over a temporary folder and an in-memory bus.</summary>
internal sealed class CuttingHost : IAsyncDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);

    private readonly WebApplication _app;
    private readonly string _folder;
    private readonly bool _keepFolder;
    private readonly Channel<CuttingPlanned> _planned = Channel.CreateUnbounded<CuttingPlanned>();
    private readonly Channel<CuttingRejected> _rejected =
        Channel.CreateUnbounded<CuttingRejected>();

    private CuttingHost(WebApplication app, string folder, bool keepFolder)
    {
        _app = app;
        _folder = folder;
        _keepFolder = keepFolder;
        Http = app.GetTestClient();
    }

    public HttpClient Http { get; }

    public SqliteStore Store => _app.Services.GetRequiredKeyedService<SqliteStore>("cutting");

    public static async Task<CuttingHost> StartAsync(string? folder = null)
    {
        var data = folder ?? Directory.CreateTempSubdirectory("cutting").FullName;
        var builder = WebApplication.CreateBuilder();
        builder.WebHost.UseTestServer();
        builder.Logging.ClearProviders();
        builder.Configuration.AddInMemoryCollection(
            new Dictionary<string, string?> { ["Data:Folder"] = data });
        builder.AddCutting();
        var app = builder.Build();
        app.UseProblems();
        app.MapCutting();
        await app.StartAsync();
        var host = new CuttingHost(app, data, keepFolder: folder is not null);
        await host.ListenAsync();
        return host;
    }

    public async ValueTask DisposeAsync()
    {
        await _app.StopAsync();
        await _app.DisposeAsync();
        if (!_keepFolder)
        {
            Directory.Delete(_folder, recursive: true);
        }
    }

    // Awaited here, because the bus leaves its log context in the flow that calls it.
    public async Task SendAsync(OrderConfirmed order, Guid? messageId = null) =>
        await _app.Services.GetRequiredService<IBus>().Publish(
            order, context => context.MessageId = messageId ?? Guid.NewGuid());

    /// <summary>Nothing is planned from now on: what a report does before its plan stays to see.
    /// </summary>
    public Task HoldPlannerAsync() => Planner.StopAsync(CancellationToken.None);

    public PlanCutting Planner =>
        _app.Services.GetServices<IHostedService>().OfType<PlanCutting>().Single();

    public Task<CuttingPlanned> NextPlannedAsync() => NextAsync(_planned);

    public Task<CuttingRejected> NextRejectedAsync() => NextAsync(_rejected);

    public int PlannedWaiting => _planned.Reader.Count;

    public async Task<JsonNode> GetAsync(string path) =>
        (await Http.GetFromJsonAsync<JsonNode>(path))!;

    /// <summary>Asks for the plan until it is there.</summary>
    public async Task<JsonNode> PlannedAsync(string order)
    {
        using var late = new CancellationTokenSource(Patience);
        using var tick = new PeriodicTimer(TimeSpan.FromMilliseconds(50));
        var plan = await Http.GetAsync("/v1/cutting/plans/" + order, late.Token);
        while (!plan.IsSuccessStatusCode && await tick.WaitForNextTickAsync(late.Token))
        {
            plan.Dispose();
            plan = await Http.GetAsync("/v1/cutting/plans/" + order, late.Token);
        }

        using (plan)
        {
            return JsonNode.Parse(await plan.Content.ReadAsStringAsync(late.Token))!;
        }
    }

    public async Task<(HttpStatusCode Status, JsonNode Body)> AskAsync(
        HttpMethod method, string path, object? body = null, string? key = null)
    {
        using var request = new HttpRequestMessage(method, path);
        if (key is not null)
        {
            request.Headers.Add("Idempotency-Key", key);
        }

        if (body is not null)
        {
            request.Content = JsonContent.Create(body);
        }

        using var answer = await Http.SendAsync(request);
        return (answer.StatusCode, JsonNode.Parse(await answer.Content.ReadAsStringAsync())!);
    }

    private static async Task<T> NextAsync<T>(Channel<T> channel)
    {
        using var late = new CancellationTokenSource(Patience);
        return await channel.Reader.ReadAsync(late.Token);
    }

    private Task ListenAsync()
    {
        var handle = _app.Services.GetRequiredService<IBusControl>().ConnectReceiveEndpoint(
            "listener",
            endpoint =>
            {
                endpoint.Handler<CuttingPlanned>(
                    context => _planned.Writer.WriteAsync(context.Message).AsTask());
                endpoint.Handler<CuttingRejected>(
                    context => _rejected.Writer.WriteAsync(context.Message).AsTask());
            });
        return handle.Ready;
    }
}
