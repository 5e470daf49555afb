using System.Globalization;
using PostFrame.ServicesTests.Messaging;
using PostFrame.ServicesTests.Orders;
using Xunit;

namespace PostFrame.ServicesTests.SingleHost;

/// <summary>The real program, killed outright at any moment, over and over.</summary>
public sealed class KillRules : IDisposable
{
    private const string Program = "PostFrame.SingleHost";
    private readonly TemporaryFolder _folder = new();
    private HostProcess? _host;

    public void Dispose()
    {
        _host?.Dispose();
        _folder.Dispose();
    }

    [Fact]
    public async Task Killed_at_20_random_moments_it_loses_and_doubles_none_of_50_orders()
    {
        const int Orders = 50;
        const int Kills = 20;
        var seed = int.TryParse(
            Environment.GetEnvironmentVariable("FAULT_SEED"), CultureInfo.InvariantCulture,
            out var given) ? given : Environment.TickCount;
        TestContext.Current.SendDiagnosticMessage($"FAULT_SEED={seed}");
        var random = new Random(seed);
        using var poster = new OrderPoster { Address = () => _host!.Address };
        using var allowed = new SemaphoreSlim(0);
        _host = HostProcess.Start(Program, _folder.Path);
        var posting = PostAllAsync(poster, Orders, allowed);

        for (var kill = 0; kill < Kills; kill++)
        {
            allowed.Release(Orders / Kills + 1);
            if (random.Next(5) > 0)
            {
                await _host.UntilUpAsync();
            }

            await AfterAsync(random.Next(20, 1200));
            _host.Kill();
            _host.Dispose();
            _host = HostProcess.Start(Program, _folder.Path);
        }

        await _host.UntilUpAsync();
        var answers = await posting;
        await poster.UntilAsync("labelled", Orders, TimeSpan.FromMinutes(2));
        Assert.Equal(0, await _host.StopAsync());

        Assert.True(
            PipelineCheck.Violations(_folder.Path) is [],
            $"FAULT_SEED={seed}\n"
            + string.Join("\n", PipelineCheck.Violations(_folder.Path)));
        Assert.Equal(Orders, answers.Distinct().Count());
    }

    public static TheoryData<string> FailPoints =>
    [
        "orders.before-commit:2", "orders.after-commit:2", "orders.after-publish:1",
        "orders.after-commit:3", "cutting.before-commit:2", "cutting.after-commit:2",
        "cutting.planned:1", "cutting.before-commit:3", "cutting.after-commit:3",
        "cutting.after-publish:1", "labelling.before-commit:3", "labelling.after-commit:3",
        "labelling.after-publish:1",
    ];

    [Theory]
    [MemberData(nameof(FailPoints))]
    public async Task Killed_between_any_two_steps_it_does_each_order_once(string failPoint)
    {
        using var poster = new OrderPoster { Address = () => _host!.Address };
        _host = HostProcess.Start(Program, _folder.Path, failPoint);
        await _host.UntilUpAsync();
        var before = await poster.TryPostAsync(OrderRequests.Shed("PF-1"), "k1");
        await poster.TryPostAsync(OrderRequests.Shed("PF-2"), "k2");
        await UntilKilledAsync(_host);
        _host.Dispose();

        _host = HostProcess.Start(Program, _folder.Path);
        await _host.UntilUpAsync();
        var after = await poster.PostAsync(OrderRequests.Shed("PF-1"), "k1");
        await poster.PostAsync(OrderRequests.Shed("PF-2"), "k2");
        await poster.UntilAsync("labelled", 2, TimeSpan.FromMinutes(1));
        Assert.Equal(0, await _host.StopAsync());

        Assert.Equal(before ?? after, after);
        Assert.Empty(PipelineCheck.Violations(_folder.Path));
    }

    private static async Task<string[]> PostAllAsync(
        OrderPoster poster, int count, SemaphoreSlim allowed)
    {
        var answers = new string[count];
        for (var n = 0; n < count; n++)
        {
            await allowed.WaitAsync(TestContext.Current.CancellationToken);
            answers[n] = await poster.PostAsync(OrderRequests.Shed($"PF-{n + 1}"), $"key-{n + 1}");
        }

        return answers;
    }

    /// <summary>The random moment is the fault itself, not a wait for something.</summary>
    private static async Task AfterAsync(int milliseconds)
    {
        using var moment = new PeriodicTimer(TimeSpan.FromMilliseconds(milliseconds));
        await moment.WaitForNextTickAsync(TestContext.Current.CancellationToken);
    }

    private static async Task UntilKilledAsync(HostProcess host)
    {
        using var tick = new PeriodicTimer(TimeSpan.FromMilliseconds(50));
        for (var n = 0; n < 1200 && !host.HasExited; n++)
        {
            await tick.WaitForNextTickAsync(TestContext.Current.CancellationToken);
        }

        Assert.True(host.HasExited, "The fail point was never reached:\n" + host.Output);
    }
}
