using MassTransit;
using PostFrame.Messaging;
using Xunit;

namespace PostFrame.ServicesTests.Messaging;

public sealed class OutboxRules : IAsyncLifetime
{
    private readonly TemporaryFolder _folder = new();
    private PingHost _host = null!;

    public async ValueTask InitializeAsync() => _host = await PingHost.StartAsync(_folder.Path);

    public async ValueTask DisposeAsync()
    {
        await _host.DisposeAsync();
        _folder.Dispose();
    }

    [Fact]
    public async Task A_message_goes_out_under_its_outbox_id_and_leaves_the_outbox()
    {
        var id = Guid.NewGuid();
        await _host.SayAsync(id, "one");
        Assert.Equal((id, "one"), await _host.NextAsync());
        await UntilAsync(() => Count("outbox") == 0);
    }

    [Fact]
    public async Task A_message_of_a_failed_transaction_is_never_sent()
    {
        await Assert.ThrowsAsync<InvalidOperationException>(() => _host.Store.WriteAsync(
            transaction =>
            {
                Outbox.Enqueue(transaction, Guid.NewGuid(), new Ping { Id = default, Text = "no" });
                throw new InvalidOperationException("Something else went wrong.");
            },
            TestContext.Current.CancellationToken));
        await _host.SayAsync(Guid.NewGuid(), "yes");
        Assert.Equal("yes", (await _host.NextAsync()).Text);
    }

    [Fact]
    public async Task A_row_that_cannot_be_read_lets_the_others_pass()
    {
        for (var n = 0; n < 30; n++)
        {
            await InsertRowAsync("unheard-of.v1", "{}");
            await InsertRowAsync("ping.v1", "this is no JSON");
        }

        await _host.SayAsync(Guid.NewGuid(), "behind sixty bad rows");
        Assert.Equal("behind sixty bad rows", (await _host.NextAsync()).Text);
        await UntilAsync(() => Count("outbox WHERE last_error IS NOT NULL") == 60);
    }

    [Fact]
    public async Task A_message_delivered_three_times_has_one_effect()
    {
        var id = Guid.NewGuid();
        for (var n = 0; n < 3; n++)
        {
            await _host.Bus.Publish(
                new Ping { Id = id, Text = "one" },
                context => context.MessageId = id, TestContext.Current.CancellationToken);
        }

        string[] heard = [
            (await _host.NextAsync()).Text, (await _host.NextAsync()).Text,
            (await _host.NextAsync()).Text];
        Assert.Equal(["one", "repeat", "repeat"], heard.Order());
    }

    [Fact]
    public async Task A_message_that_always_fails_gives_way_to_the_others()
    {
        for (var n = 0; n < 3; n++)
        {
            await _host.SayAsync(Guid.NewGuid(), "poison");
        }

        await _host.SayAsync(Guid.NewGuid(), "healthy");
        Assert.Equal("healthy", (await _host.NextAsync()).Text);
    }

    [Fact]
    public async Task A_message_written_before_a_stop_is_sent_after_the_start()
    {
        await _host.DisposeAsync();
        var id = Guid.NewGuid();
        using (var store = SqliteStore.Open(
            _folder.Path, "says", typeof(OutboxRules).Assembly, TimeProvider.System))
        {
            await store.WriteAsync(
                transaction => Outbox.Enqueue(
                    transaction, id, new Ping { Id = id, Text = "kept" }),
                TestContext.Current.CancellationToken);
        }

        _host = await PingHost.StartAsync(_folder.Path);
        Assert.Equal((id, "kept"), await _host.NextAsync());
    }

    private Task InsertRowAsync(string type, string body) => _host.Store.WriteAsync(
        transaction => transaction.Execute(
            """
            INSERT INTO outbox (id, type, body, created_at, available_at)
            VALUES (@id, @type, @body, 0, 0)
            """,
            new { id = Guid.NewGuid().ToString(), type, body }),
        TestContext.Current.CancellationToken);

    private long Count(string rows) =>
        _host.Store.Read(view => view.Single<long>("SELECT count(*) FROM " + rows));

    /// <summary>The row goes in a commit of its own after the delivery.</summary>
    private static async Task UntilAsync(Func<bool> holds)
    {
        using var tick = new PeriodicTimer(TimeSpan.FromMilliseconds(10));
        for (var n = 0; n < 2000 && !holds(); n++)
        {
            await tick.WaitForNextTickAsync(TestContext.Current.CancellationToken);
        }

        Assert.True(holds());
    }
}
