using System.Diagnostics;
using System.Net.Sockets;
using PostFrame.ServicesTests.Messaging;
using PostFrame.ServicesTests.SingleHost;
using Xunit;

namespace PostFrame.ServicesTests.RabbitMq;

/// <summary>
/// A RabbitMQ node of our own on free loopback ports, with its own data, name and port mapper. It
/// is ended by the handles kept here; other nodes on the machine are none of its business.
/// </summary>
public sealed class RabbitNode : IAsyncLifetime
{
    private const string Scripts = "/usr/lib/rabbitmq/bin";
    private readonly TemporaryFolder _folder = new();
    private readonly int _mapperPort = HostProcess.FreePort();
    private readonly int _distributionPort = HostProcess.FreePort();
    private Process? _broker;

    /// <summary>Why tests skip, or null when a broker can be started.</summary>
    public static string? Missing => File.Exists(Scripts + "/rabbitmq-server")
        ? null
        : "RabbitMQ is not installed; infra/test.sh installs it.";

    public int Port { get; } = HostProcess.FreePort();

    public IReadOnlyDictionary<string, string> Settings => new Dictionary<string, string>
    {
        ["Bus:Transport"] = "rabbitmq",
        ["Bus:Host"] = "127.0.0.1",
        ["Bus:Port"] = Port.ToString(System.Globalization.CultureInfo.InvariantCulture),
    };

    public async ValueTask InitializeAsync()
    {
        if (Missing is null)
        {
            await StartAsync();
        }
    }

    /// <summary>Starts it on the data it had before, if any.</summary>
    public async Task StartAsync()
    {
        await File.WriteAllTextAsync(In("rabbitmq.conf"), Configuration);
        await File.WriteAllTextAsync(In("enabled_plugins"), "[].");
        Directory.CreateDirectory(In("home"));
        _broker = new Process { StartInfo = Script("rabbitmq-server") };
        _broker.OutputDataReceived += (_, _) => { };
        _broker.ErrorDataReceived += (_, _) => { };
        _broker.Start();
        _broker.BeginOutputReadLine();
        _broker.BeginErrorReadLine();
        await UntilItListensAsync();
    }

    /// <summary>Ends it as a power cut would.</summary>
    public void Kill()
    {
        _broker?.Kill(entireProcessTree: true);
        _broker?.WaitForExit();
        _broker?.Dispose();
        _broker = null;
    }

    /// <summary>The queues there are, with the count of messages ready in each.</summary>
    public async Task<IReadOnlyDictionary<string, int>> QueuesAsync()
    {
        var start = Script("rabbitmqctl", "-q", "list_queues", "name", "messages");
        using var control = Process.Start(start)!;
        var listed = await control.StandardOutput.ReadToEndAsync(
            TestContext.Current.CancellationToken);
        await control.WaitForExitAsync(TestContext.Current.CancellationToken);
        return listed.Split('\n').Select(line => line.Split('\t'))
            .Where(cells => cells.Length == 2 && int.TryParse(cells[1], out _))
            .ToDictionary(
                cells => cells[0],
                cells => int.Parse(cells[1], System.Globalization.CultureInfo.InvariantCulture));
    }

    public ValueTask DisposeAsync()
    {
        Kill();
        if (Missing is null)
        {
            var start = new ProcessStartInfo("epmd");
            start.ArgumentList.Add("-kill");
            start.Environment["ERL_EPMD_PORT"] = Shown(_mapperPort);
            start.RedirectStandardOutput = true;
            using var mapper = Process.Start(start);
            mapper?.WaitForExit();
        }

        _folder.Dispose();
        return ValueTask.CompletedTask;
    }

    private string Configuration =>
        $"""
        listeners.tcp.1 = 127.0.0.1:{Port}
        vm_memory_high_watermark.absolute = 1GB
        disk_free_limit.absolute = 100MB
        log.console = false

        """;

    private ProcessStartInfo Script(string name, params string[] arguments)
    {
        var start = new ProcessStartInfo(Path.Combine(Scripts, name), arguments)
        {
            WorkingDirectory = _folder.Path,
        };
        var environment = new Dictionary<string, string>
        {
            ["RABBITMQ_NODENAME"] = $"test{Port}@localhost",
            ["RABBITMQ_DIST_PORT"] = Shown(_distributionPort),
            ["ERL_EPMD_PORT"] = Shown(_mapperPort),
            ["ERL_EPMD_ADDRESS"] = "127.0.0.1",
            ["RABBITMQ_MNESIA_BASE"] = In("data"),
            ["RABBITMQ_LOG_BASE"] = In("log"),
            ["RABBITMQ_CONFIG_FILE"] = In("rabbitmq.conf"),
            ["RABBITMQ_ENABLED_PLUGINS_FILE"] = In("enabled_plugins"),
            ["RABBITMQ_CONF_ENV_FILE"] = "/dev/null",
            ["RABBITMQ_PID_FILE"] = In("node.pid"),
            ["RABBITMQ_SERVER_START_ARGS"] = "-kernel inet_dist_use_interface {127,0,0,1}",
            ["HOME"] = In("home"),
        };
        foreach (var (variable, value) in environment)
        {
            start.Environment[variable] = value;
        }

        start.RedirectStandardOutput = true;
        start.RedirectStandardError = true;
        return start;
    }

    private async Task UntilItListensAsync()
    {
        using var tick = new PeriodicTimer(TimeSpan.FromMilliseconds(100));
        for (var n = 0; n < 1200; n++)
        {
            using var caller = new TcpClient();
            try
            {
                await caller.ConnectAsync("127.0.0.1", Port, TestContext.Current.CancellationToken);
                return;
            }
            catch (SocketException) when (!_broker!.HasExited)
            {
                await tick.WaitForNextTickAsync(TestContext.Current.CancellationToken);
            }
        }

        throw new TimeoutException("The broker did not listen in two minutes.");
    }

    private string In(string name) => Path.Combine(_folder.Path, name);

    private static string Shown(int number) =>
        number.ToString(System.Globalization.CultureInfo.InvariantCulture);
}
