using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using System.Runtime.InteropServices;
using System.Text;
using Xunit;

namespace PostFrame.ServicesTests.SingleHost;

/// <summary>
/// A service's real program in a process of its own, on a free loopback port. Ends only what it
/// started, by the handle it kept.
/// </summary>
internal sealed class HostProcess : IDisposable
{
    private const int Terminate = 15;
    private readonly Process _process;
    private readonly StringBuilder _output;

    private HostProcess(Process process, StringBuilder output, Uri address)
    {
        _process = process;
        _output = output;
        Address = address;
    }

    public Uri Address { get; }

    public bool HasExited => _process.HasExited;

    public int ExitCode => _process.ExitCode;

    public long ResidentBytes
    {
        get
        {
            _process.Refresh();
            return _process.WorkingSet64;
        }
    }

    public string Output
    {
        get
        {
            lock (_output)
            {
                return _output.ToString();
            }
        }
    }

    /// <summary>Starts it; it may not listen yet.</summary>
    public static HostProcess Start(
        string program, string dataFolder, string? failPoint = null,
        IReadOnlyDictionary<string, string>? settings = null)
    {
        var address = new Uri($"http://127.0.0.1:{FreePort()}");
        var start = new ProcessStartInfo("dotnet")
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            WorkingDirectory = dataFolder,
        };
        start.ArgumentList.Add(Path.Combine(AppContext.BaseDirectory, program + ".dll"));
        start.ArgumentList.Add("--urls=" + address);
        start.ArgumentList.Add("--Data:Folder=" + dataFolder);
        foreach (var (name, value) in settings ?? new Dictionary<string, string>())
        {
            start.ArgumentList.Add($"--{name}={value}");
        }

        if (failPoint is not null)
        {
            start.Environment["POSTFRAME_FAIL_POINT"] = failPoint;
        }

        var output = new StringBuilder();
        var process = new Process { StartInfo = start };
        process.OutputDataReceived += (_, line) => Keep(output, line.Data);
        process.ErrorDataReceived += (_, line) => Keep(output, line.Data);
        process.Start();
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
        return new HostProcess(process, output, address);
    }

    /// <summary>Waits until it answers; fails at once with its output when it has ended.</summary>
    public async Task UntilUpAsync()
    {
        using var http = new HttpClient
        {
            BaseAddress = Address,
            Timeout = TimeSpan.FromSeconds(5),
        };
        using var tick = new PeriodicTimer(TimeSpan.FromMilliseconds(25));
        for (var n = 0; n < 2400; n++)
        {
            if (_process.HasExited)
            {
                throw new InvalidOperationException("It ended instead of starting:\n" + Output);
            }

            if (await AnswersAsync(http))
            {
                return;
            }

            await tick.WaitForNextTickAsync(TestContext.Current.CancellationToken);
        }

        throw new TimeoutException("It did not start in a minute:\n" + Output);
    }

    public void Kill()
    {
        if (!_process.HasExited)
        {
            _process.Kill();
        }

        _process.WaitForExit();
    }

    /// <summary>Asks it to stop and waits; answers its exit code.</summary>
    public async Task<int> StopAsync()
    {
        Assert.Equal(0, SendSignal(_process.Id, Terminate));
        await _process.WaitForExitAsync(TestContext.Current.CancellationToken)
            .WaitAsync(TimeSpan.FromSeconds(60), TestContext.Current.CancellationToken);
        return _process.ExitCode;
    }

    public void Dispose()
    {
        Kill();
        _process.Dispose();
    }

    public static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    private static async Task<bool> AnswersAsync(HttpClient http)
    {
        try
        {
            using var answer = await http.GetAsync(
                "/health/live", TestContext.Current.CancellationToken);
            return answer.IsSuccessStatusCode;
        }
        catch (HttpRequestException)
        {
            return false;
        }
        catch (TaskCanceledException)
        {
            return false;
        }
    }

    private static void Keep(StringBuilder output, string? line)
    {
        lock (output)
        {
            output.AppendLine(line);
        }
    }

    [DllImport("libc", EntryPoint = "kill", SetLastError = true)]
    private static extern int SendSignal(int processId, int signal);
}
