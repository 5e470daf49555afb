using PostFrame.ServicesTests.Messaging;
using PostFrame.ServicesTests.Orders;
using Xunit;

namespace PostFrame.ServicesTests.SingleHost;

public sealed class StartRules : IDisposable
{
    private const string Program = "PostFrame.SingleHost";
    private readonly TemporaryFolder _folder = new();
    private readonly TemporaryFolder _other = new();

    public void Dispose()
    {
        _folder.Dispose();
        _other.Dispose();
    }

    [Fact]
    public async Task A_port_or_a_folder_in_use_is_told_in_a_line_without_a_trace()
    {
        using var first = HostProcess.Start(Program, _folder.Path);
        await first.UntilUpAsync();
        using var samePort = HostProcess.Start(
            Program, _other.Path,
            settings: new Dictionary<string, string> { ["urls"] = first.Address.ToString() });
        await RefusedAsync(samePort, "address already in use");
        using var sameFolder = HostProcess.Start(Program, _folder.Path);
        await RefusedAsync(sameFolder, "in use by another process");
    }

    [Fact]
    public async Task Stopped_and_started_again_it_finds_every_order_where_it_was()
    {
        using (var first = HostProcess.Start(Program, _folder.Path))
        {
            using var poster = new OrderPoster { Address = () => first.Address };
            await first.UntilUpAsync();
            await poster.PostAsync(OrderRequests.Shed("PF-1"), "k1");
            await poster.UntilAsync("labelled", 1, TimeSpan.FromMinutes(1));
            Assert.Equal(0, await first.StopAsync());
        }

        using var second = HostProcess.Start(Program, _folder.Path);
        using var reader = new OrderPoster { Address = () => second.Address };
        await second.UntilUpAsync();
        await reader.UntilAsync("labelled", 1, TimeSpan.FromSeconds(5));
    }

    private static async Task RefusedAsync(HostProcess host, string reason)
    {
        using var tick = new PeriodicTimer(TimeSpan.FromMilliseconds(50));
        for (var n = 0; n < 1200 && !host.HasExited; n++)
        {
            await tick.WaitForNextTickAsync(TestContext.Current.CancellationToken);
        }

        host.Kill();
        Assert.Equal(1, host.ExitCode);
        Assert.Contains(reason, host.Output);
        Assert.DoesNotContain("   at ", host.Output);
    }
}
