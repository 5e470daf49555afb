using System.Diagnostics;
using System.Net;
using System.Net.Sockets;

namespace PostFrame.Benchmarks;

/// <summary>The single host in a process of its own, on a free loopback port and a folder of its
/// own. Ends the process it started, by the handle it kept.</summary>
internal sealed class RunningHost : IAsyncDisposable
{
    private readonly Process _process;
    private readonly string _folder;

    private RunningHost(Process process, string folder, string address)
    {
        _process = process;
        _folder = folder;
        Http = new HttpClient { BaseAddress = new Uri(address) };
    }

    public HttpClient Http { get; }

    public TimeSpan StartedAfter { get; private set; }

    public double ResidentMb
    {
        get
        {
            _process.Refresh();
            return _process.WorkingSet64 / 1048576.0;
        }
    }

    public static async Task<RunningHost> StartAsync(TimeSpan patience)
    {
        var address = $"http://127.0.0.1:{FreePort()}";
        var folder = Directory.CreateTempSubdirectory("postframe-bench-").FullName;
        var began = Stopwatch.GetTimestamp();
        var start = new ProcessStartInfo("dotnet")
        {
            ArgumentList =
            {
                Path.Combine(AppContext.BaseDirectory, "PostFrame.SingleHost.dll"),
                "--urls", address, "--Data:Folder", folder,
            },
            RedirectStandardOutput = true,
        };
        var process = Process.Start(start)
            ?? throw new InvalidOperationException("The host did not start.");
        _ = process.StandardOutput.ReadToEndAsync();
        var host = new RunningHost(process, folder, address);
        await host.UntilAsync("/", patience);
        host.StartedAfter = Stopwatch.GetElapsedTime(began);
        return host;
    }

    /// <summary>Asks again until the address answers 200.</summary>
    public async Task UntilAsync(string path, TimeSpan patience)
    {
        using var limit = new CancellationTokenSource(patience);
        while (true)
        {
            try
            {
                using var answer = await Http.GetAsync(path, limit.Token);
                if (answer.StatusCode is HttpStatusCode.OK)
                {
                    return;
                }
            }
            catch (HttpRequestException) when (!_process.HasExited)
            {
                // Not listening yet.
            }

            await Task.Delay(2, limit.Token);
        }
    }

    public async ValueTask DisposeAsync()
    {
        Http.Dispose();
        _process.Kill();
        await _process.WaitForExitAsync();
        _process.Dispose();
        Directory.Delete(_folder, recursive: true);
    }

    private static int FreePort()
    {
        using var probe = new TcpListener(IPAddress.Loopback, 0);
        probe.Start();
        return ((IPEndPoint)probe.LocalEndpoint).Port;
    }
}
