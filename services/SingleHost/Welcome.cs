using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;

namespace PostFrame.SingleHost;

/// <summary>Where the single host listens unless told, and what it prints when it does.</summary>
internal static class Welcome
{
    private const string DefaultAddress = "http://127.0.0.1:8080";

    public static void AddDefaults(this WebApplicationBuilder builder)
    {
        if (string.IsNullOrEmpty(builder.Configuration[WebHostDefaults.ServerUrlsKey]))
        {
            builder.WebHost.UseUrls(DefaultAddress);
        }

        builder.Configuration.AddInMemoryCollection(
            new Dictionary<string, string?>
            {
                ["Data:Folder"] = builder.Configuration["Data:Folder"] ?? "data",
            });
        builder.Logging.AddFilter("Microsoft", LogLevel.Warning);
        builder.Logging.AddFilter("Microsoft.Extensions.Hosting.Internal.Host", LogLevel.None);
        builder.Logging.AddFilter("MassTransit", LogLevel.Warning);
    }

    /// <summary>Prints the addresses of the pages once the port is open.</summary>
    public static void MapWelcome(this WebApplication app) =>
        app.Lifetime.ApplicationStarted.Register(() =>
        {
            var address = app.Services.GetRequiredService<IServer>()
                .Features.Get<IServerAddressesFeature>()?.Addresses.FirstOrDefault()
                ?? DefaultAddress;
            Console.WriteLine(
                $"""

                  Desk page      {address}/
                  Comparisons    {address}/compare/
                  Board          {address}/board/
                  API pages      {address}/docs
                  Health         {address}/health/ready
                  Data folder    {Path.GetFullPath(app.Configuration["Data:Folder"]!)}

                  Ctrl+C stops it. Every accepted order is in the data folder.

                """);
        });

    /// <summary>The port or the data folder belongs to another process: a matter of one line.
    /// Every other failure is ours and keeps its trace.</summary>
    public static int SayWhyNotStarted(IOException reason)
    {
        Console.Error.WriteLine($"Not started: {reason.Message}");
        Console.Error.WriteLine(
            "Stop what uses it, or choose others: --urls http://127.0.0.1:8090 "
            + "--Data:Folder other-data");
        return 1;
    }
}
