using PostFrame.ServicesTests.Messaging;
using PostFrame.ServicesTests.SingleHost;

namespace PostFrame.ServicesTests.RabbitMq;

/// <summary>Every service in a process of its own, as they run with a broker.</summary>
internal sealed class ServicesApart : IDisposable
{
    public const string Sizing = "PostFrame.SizingApi";
    public const string Orders = "PostFrame.OrdersApi";
    public const string Cutting = "PostFrame.CuttingWorker";
    public const string Labelling = "PostFrame.LabellingWorker";
    public const string Operations = "PostFrame.Operations";

    private readonly TemporaryFolder _folder = new();
    private readonly Dictionary<string, HostProcess> _running = [];
    private readonly RabbitNode _node;

    public ServicesApart(RabbitNode node) => _node = node;

    /// <summary>Each service has a file of its own in it.</summary>
    public string Folder => _folder.Path;

    public HostProcess this[string program] => _running[program];

    public async Task StartAllAsync()
    {
        Start(Sizing);
        await _running[Sizing].UntilUpAsync();
        foreach (var program in new[] { Orders, Cutting, Labelling, Operations })
        {
            Start(program);
        }

        foreach (var host in _running.Values)
        {
            await host.UntilUpAsync();
        }
    }

    public async Task KillAndRestartAsync(string program)
    {
        _running[program].Kill();
        _running[program].Dispose();
        Start(program);
        await _running[program].UntilUpAsync();
    }

    public async Task StopAllAsync()
    {
        foreach (var host in _running.Values)
        {
            await host.StopAsync();
        }
    }

    public void Dispose()
    {
        foreach (var host in _running.Values)
        {
            host.Dispose();
        }

        _folder.Dispose();
    }

    private void Start(string program)
    {
        var settings = new Dictionary<string, string>(_node.Settings);
        if (_running.TryGetValue(Sizing, out var sizing))
        {
            settings["Sizing:Address"] = sizing.Address.ToString();
        }

        if (_running.TryGetValue(Orders, out var orders))
        {
            settings["Orders:Address"] = orders.Address.ToString();
        }

        _running[program] = HostProcess.Start(program, Folder, settings: settings);
    }
}
