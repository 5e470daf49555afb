using Microsoft.Data.Sqlite;
using PostFrame.Messaging;
using Xunit;

namespace PostFrame.ServicesTests.Messaging;

public sealed class StoreRules : IDisposable
{
    private readonly TemporaryFolder _folder = new();
    private readonly SqliteStore _store;

    public StoreRules() => _store = Open();

    public void Dispose()
    {
        _store.Dispose();
        _folder.Dispose();
    }

    [Fact]
    public async Task A_write_that_fails_undoes_itself_and_not_its_neighbours()
    {
        var writes = Enumerable.Range(0, 200)
            .Select(n => _store.WriteAsync(
                transaction =>
                {
                    Assert.True(Inbox.Claim(transaction, "c" + n, Guid.Empty));
                    return n % 10 == 0 ? throw new InvalidDataException() : n;
                },
                TestContext.Current.CancellationToken))
            .ToList();
        await Task.WhenAll(writes.Select(write => write.ContinueWith(
            _ => { }, TestContext.Current.CancellationToken, TaskContinuationOptions.None,
            TaskScheduler.Default)));
        Assert.All(writes, (write, n) => Assert.Equal(n % 10 == 0, write.IsFaulted));
        Assert.Equal(180, _store.Read(view => view.Single<long>("SELECT count(*) FROM inbox")));
    }

    [Fact]
    public void A_second_process_on_the_same_file_is_refused_with_the_reason()
    {
        var refusal = Assert.Throws<IOException>(() => Open());
        Assert.Contains("in use by another process", refusal.Message);
    }

    [Fact]
    public async Task A_file_written_by_a_newer_version_is_refused_with_the_reason()
    {
        await _store.WriteAsync(
            transaction => transaction.Execute(
                "INSERT INTO migration (owner, number, ran_at) VALUES ('service', 7, 0)"),
            TestContext.Current.CancellationToken);
        _store.Dispose();
        var refusal = Assert.Throws<InvalidOperationException>(() => Open());
        Assert.Contains("newer version", refusal.Message);
    }

    [Fact]
    public async Task Readers_see_the_last_commit_while_another_process_holds_the_write_lock()
    {
        await WriteClaimAsync();
        using var other = OtherProcess("BEGIN IMMEDIATE");
        Assert.Equal(1, _store.Read(view => view.Single<long>("SELECT count(*) FROM inbox")));
    }

    [Fact]
    public async Task A_write_waits_for_a_lock_then_says_so_and_the_next_one_works()
    {
        var other = OtherProcess("BEGIN IMMEDIATE");
        await Assert.ThrowsAsync<StoreUnavailableException>(WriteClaimAsync);
        other.Dispose();
        await WriteClaimAsync();
    }

    [Theory]
    [InlineData("journal_mode", "wal")]
    [InlineData("integrity_check", "ok")]
    public void The_file_is_kept_by_a_write_ahead_log_and_is_sound(string pragma, string value)
    {
        Assert.Equal(value, _store.Read(view => view.Single<string>("PRAGMA " + pragma)));
    }

    [Fact]
    public async Task Every_commit_is_flushed_to_the_disk()
    {
        // 2 is FULL: https://www.sqlite.org/pragma.html#pragma_synchronous
        Assert.Equal(2, await _store.WriteAsync(
            transaction => transaction.Single<long>("PRAGMA synchronous"),
            TestContext.Current.CancellationToken));
    }

    private Task WriteClaimAsync() => _store.WriteAsync(
        transaction => Assert.True(Inbox.Claim(transaction, "any", Guid.NewGuid())),
        TestContext.Current.CancellationToken);

    private SqliteStore Open() => SqliteStore.Open(
        _folder.Path, "tested", typeof(StoreRules).Assembly, TimeProvider.System);

    private SqliteConnection OtherProcess(string sql)
    {
        var connection = new SqliteConnection(
            $"Data Source={Path.Combine(_folder.Path, "tested.db")};Pooling=False");
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
        return connection;
    }
}
