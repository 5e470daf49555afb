using System.Diagnostics;
using Xunit;

namespace PostFrame.BrowserTests;

/// <summary>
/// The whole product in a process of its own, on a free port with an empty folder.
/// </summary>
public sealed class SingleHostProcess : IAsyncLifetime
{
    private const string Announced = "Desk page";

    private static readonly TimeSpan LongestStart = TimeSpan.FromSeconds(60);

    private readonly string folder = Directory.CreateTempSubdirectory("desk-").FullName;
    private Process? process;
    private Task<string> rest = Task.FromResult("");

    public Uri Address { get; private set; } = new("http://127.0.0.1");

    public async ValueTask InitializeAsync()
    {
        var start = new ProcessStartInfo("dotnet")
        {
            RedirectStandardOutput = true,
            WorkingDirectory = folder,
        };
        start.ArgumentList.Add(Path.Combine(AppContext.BaseDirectory, "PostFrame.SingleHost.dll"));
        start.ArgumentList.Add("--urls=http://127.0.0.1:0");
        start.ArgumentList.Add($"--Data:Folder={folder}");
        process = Process.Start(start)!;
        using var limit = new CancellationTokenSource(LongestStart);
        while (await process.StandardOutput.ReadLineAsync(limit.Token) is { } line)
        {
            if (line.Contains(Announced))
            {
                Address = new Uri(line[(line.IndexOf(Announced) + Announced.Length)..].Trim());
                break;
            }
        }

        // Reading on keeps the process from stopping at a full pipe.
        rest = process.StandardOutput.ReadToEndAsync(CancellationToken.None);
    }

    public async ValueTask DisposeAsync()
    {
        if (process is not null)
        {
            process.Kill();
            await process.WaitForExitAsync();
            await rest;
            process.Dispose();
        }

        Directory.Delete(folder, recursive: true);
    }
}
