using MassTransit;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Options;
using PostFrame.Messaging;
using Xunit;

namespace PostFrame.ServicesTests.Messaging;

/// <summary>The bus library reports its use to its makers unless it is told not to.</summary>
public sealed class TelemetryRules
{
    [Fact]
    public void Nothing_about_a_shop_leaves_its_machine()
    {
        var services = new ServiceCollection();
        services.AddPipelineBus(
            new ConfigurationBuilder().Build(), "listener", typeof(TelemetryRules).Assembly,
            parts => parts.Publishes<Ping>());

        Assert.False(IsReported(services));
    }

    /// <summary>Shows that the rule above can fail.</summary>
    [Fact]
    public void The_bus_library_left_alone_reports()
    {
        var services = new ServiceCollection();
        services.AddMassTransit(bus => bus.UsingInMemory());

        Assert.True(IsReported(services));
    }

    private static bool IsReported(ServiceCollection services)
    {
        using var provider = services.BuildServiceProvider();
        return provider.GetRequiredService<IOptions<UsageTelemetryOptions>>().Value.Enabled;
    }
}
