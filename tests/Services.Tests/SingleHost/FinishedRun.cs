using PostFrame.ServicesTests.Messaging;
using PostFrame.ServicesTests.Orders;
using Xunit;

namespace PostFrame.ServicesTests.SingleHost;

/// <summary>The stores after two orders went through the real program and it was stopped.</summary>
public sealed class FinishedRun : IAsyncLifetime
{
    private readonly TemporaryFolder _folder = new();

    public string Folder => _folder.Path;

    public string Output { get; private set; } = "";

    public int ExitCode { get; private set; }

    public async ValueTask InitializeAsync()
    {
        using var host = HostProcess.Start("PostFrame.SingleHost", Folder);
        using var poster = new OrderPoster { Address = () => host.Address };
        await host.UntilUpAsync();
        await poster.PostAsync(OrderRequests.Shed("PF-1"), "k1");
        await poster.PostAsync(OrderRequests.Shed("PF-2"), "k2");
        await poster.UntilAsync("labelled", 2, TimeSpan.FromMinutes(1));
        ExitCode = await host.StopAsync();
        Output = host.Output;
    }

    public ValueTask DisposeAsync()
    {
        _folder.Dispose();
        return ValueTask.CompletedTask;
    }
}
