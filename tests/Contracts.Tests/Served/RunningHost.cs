using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.Testing;
using PostFrame.SingleHost;

namespace PostFrame.ContractsTests.Served;

/// <summary>The whole product in one process, over a temporary folder.</summary>
public sealed class RunningHost : WebApplicationFactory<EntryPoint>
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("contracts");

    /// <summary>The services that publish a document, by its name.</summary>
    public static IReadOnlyList<string> Documents { get; } =
        ["cutting", "labelling", "operations", "orders", "sizing"];

    public async Task<JsonObject> DocumentAsync(string name)
    {
        using var client = CreateClient();
        return JsonNode.Parse(await client.GetStringAsync($"/openapi/{name}.json"))!.AsObject();
    }

    protected override void ConfigureWebHost(IWebHostBuilder builder) =>
        builder.UseSetting("Data:Folder", _folder.FullName);

    public override async ValueTask DisposeAsync()
    {
        await base.DisposeAsync();
        _folder.Delete(recursive: true);
    }
}
