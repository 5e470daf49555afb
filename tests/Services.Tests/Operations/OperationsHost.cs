using System.Net;
using System.Text.Json.Nodes;
using MassTransit;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using PostFrame.Messaging;
using PostFrame.Operations;
using PostFrame.Operations.Pipeline;
using PostFrame.Problems;

namespace PostFrame.ServicesTests.Operations;

/// <summary>The real operations service over a temporary folder and an in-memory bus.</summary>
internal sealed class OperationsHost : IAsyncDisposable
{
    private readonly WebApplication _app;
    private readonly string _folder;
    private readonly bool _keepsFolder;

    private OperationsHost(WebApplication app, string folder, bool keepsFolder)
    {
        _app = app;
        _folder = folder;
        _keepsFolder = keepsFolder;
        Http = app.GetTestClient();
    }

    public HttpClient Http { get; }

    public SqliteStore Store => _app.Services.GetRequiredKeyedService<SqliteStore>("operations");

    public static Task<OperationsHost> StartAsync(
        string? folder = null, params (string Name, string Value)[] settings) =>
        StartAsync(folder, null, settings);

    /// <summary>Beside an Orders that answers what changed since.</summary>
    public static Task<OperationsHost> StartBesideAsync(AskForOrders orders) =>
        StartAsync(null, orders, []);

    private static async Task<OperationsHost> StartAsync(
        string? folder, AskForOrders? orders, (string Name, string Value)[] settings)
    {
        var data = folder ?? Directory.CreateTempSubdirectory("operations").FullName;
        var builder = WebApplication.CreateBuilder();
        builder.WebHost.UseTestServer();
        builder.Logging.ClearProviders();
        builder.Configuration.AddInMemoryCollection(
            [new("Data:Folder", data), .. settings.Select(
                setting => new KeyValuePair<string, string?>(setting.Name, setting.Value))]);
        if (orders is not null)
        {
            builder.Services.AddSingleton(orders);
        }

        builder.AddOperations();
        var app = builder.Build();
        app.UseProblems();
        app.MapOperations();
        app.MapPipelineHealth();
        app.MapOpenApi("/openapi/{documentName}.json");
        await app.StartAsync();
        return new OperationsHost(app, data, keepsFolder: folder is not null);
    }

    public async ValueTask DisposeAsync()
    {
        await _app.StopAsync();
        await _app.DisposeAsync();
        if (!_keepsFolder)
        {
            Directory.Delete(_folder, recursive: true);
        }
    }

    /// <summary>Takes a message as the bus would hand it over; done when it is kept.</summary>
    public async Task TakeAsync(Told told)
    {
        using var scope = _app.Services.CreateScope();
        await scope.ServiceProvider.GetRequiredService<TrackOrders>()
            .KeepAsync(told, CancellationToken.None);
    }

    public async Task SendAsync<TMessage>(TMessage message, Guid id)
        where TMessage : class =>
        await _app.Services.GetRequiredService<IBus>().Publish(
            message, context => context.MessageId = id);

    public OrderRow? Row(string order) => Store.Read(view => PipelineStore.Find(view, order));

    public long Changes => Store.Read(PipelineStore.LatestChange);

    public async Task<JsonNode> GetAsync(string path) => (await AskAsync(path)).Body;

    public async Task<(HttpStatusCode Status, JsonNode Body)> AskAsync(string path)
    {
        using var answer = await Http.GetAsync(path);
        return (answer.StatusCode, JsonNode.Parse(await answer.Content.ReadAsStringAsync())!);
    }
}
