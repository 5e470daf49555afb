using System.Reflection;
using System.Threading.Channels;
using Microsoft.Data.Sqlite;

namespace PostFrame.Messaging;

/// <summary>
/// A service's own file. One writer commits in the order of arrival and joins what waits into one
/// commit; readers never wait for it. A write that is answered is on the disk
/// (<c>synchronous=FULL</c>). One process at a time may have the file open.
/// </summary>
public sealed class SqliteStore : IDisposable
{
    private readonly FileStream _ownership;
    private readonly StoreWriter _writer;
    private readonly string _readerSettings;
    private readonly TimeProvider _time;
    private readonly Channel<bool> _announced = Channel.CreateBounded<bool>(
        new BoundedChannelOptions(1) { FullMode = BoundedChannelFullMode.DropWrite });

    private SqliteStore(
        string service, string path, FileStream ownership, SqliteConnection connection,
        TimeProvider time)
    {
        Service = service;
        _ownership = ownership;
        _time = time;
        _readerSettings = SettingsFor(path, SqliteOpenMode.ReadOnly, pooling: true);
        _writer = new StoreWriter(
            service, connection, time, () => _announced.Writer.TryWrite(true));
    }

    /// <summary>The service whose store this is.</summary>
    public string Service { get; }

    /// <summary>Ticks after a commit that put messages into the outbox.</summary>
    internal ChannelReader<bool> Announced => _announced.Reader;

    /// <summary>
    /// Opens <c>{folder}/{service}.db</c>, making it and its tables where they are missing.
    /// Migrations are the assembly's embedded files named <c>….001.sql</c>, <c>….002.sql</c>, ….
    /// </summary>
    public static SqliteStore Open(
        string folder, string service, Assembly migrations, TimeProvider time)
    {
        Directory.CreateDirectory(folder);
        var path = Path.Combine(Path.GetFullPath(folder), service + ".db");
        var ownership = Own(path);
        SqliteConnection? connection = null;
        try
        {
            connection = new SqliteConnection(
                SettingsFor(path, SqliteOpenMode.ReadWriteCreate, pooling: false));
            connection.Open();
            Migrations.Bring(connection, path, migrations, time);
            return new SqliteStore(service, path, ownership, connection, time);
        }
        catch
        {
            connection?.Dispose();
            ownership.Dispose();
            throw;
        }
    }

    /// <summary>
    /// Runs <paramref name="work"/> in a write transaction and answers when it is on the disk. The
    /// work runs on the writer's thread: compute first, then write. What it throws undoes its own
    /// writes and comes back to the caller.
    /// </summary>
    /// <exception cref="StoreUnavailableException">Nothing was kept.</exception>
    public Task<TResult> WriteAsync<TResult>(
        Func<StoreTransaction, TResult> work, CancellationToken cancel) =>
        _writer.WriteAsync(work, cancel);

    /// <inheritdoc cref="WriteAsync{TResult}"/>
    public Task WriteAsync(Action<StoreTransaction> work, CancellationToken cancel) =>
        _writer.WriteAsync(
            transaction =>
            {
                work(transaction);
                return true;
            },
            cancel);

    /// <summary>Runs <paramref name="work"/> on one unchanging view of the store.</summary>
    /// <exception cref="StoreUnavailableException">The file cannot be read just now.</exception>
    public TResult Read<TResult>(Func<StoreTransaction, TResult> work)
    {
        try
        {
            using var connection = new SqliteConnection(_readerSettings);
            connection.Open();
            using var view = connection.BeginTransaction(deferred: true);
            return work(new StoreTransaction(
                connection, _time.GetUtcNow().ToUnixTimeMilliseconds()));
        }
        catch (SqliteException failure) when (StoreUnavailableException.Explains(failure))
        {
            throw new StoreUnavailableException(
                $"The store of {Service} cannot be read: {failure.Message}", failure);
        }
    }

    public void Dispose()
    {
        // Readers first: the writer, closing last, folds the write-ahead log into the file.
        using (var pooled = new SqliteConnection(_readerSettings))
        {
            SqliteConnection.ClearPool(pooled);
        }

        _writer.Dispose();
        _ownership.Dispose();
    }

    /// <summary>
    /// Two processes on one store would each run a relay; the second must not start.
    /// </summary>
    private static FileStream Own(string path)
    {
        try
        {
            return new FileStream(
                path + ".lock", FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
        }
        catch (IOException failure) when (File.Exists(path + ".lock"))
        {
            throw new IOException(
                $"{path} is in use by another process. Stop it, or give this one another "
                + "Data:Folder.", failure);
        }
    }

    private static string SettingsFor(string path, SqliteOpenMode mode, bool pooling) =>
        new SqliteConnectionStringBuilder
        {
            DataSource = path,
            Mode = mode,
            Pooling = pooling,
            DefaultTimeout = StoreWriter.BusySeconds,
        }.ToString();
}
