using System.Collections.Concurrent;
using Dapper;
using Microsoft.Data.Sqlite;

namespace PostFrame.Messaging;

/// <summary>
/// The one writer of a store, on a thread of its own: SQLite's calls block, and a request's thread
/// must not. Jobs that wait together share a commit; each has a savepoint, so that one job's
/// failure undoes only its own writes.
/// </summary>
internal sealed class StoreWriter : IDisposable
{
    public const int BusySeconds = 5;
    private const int MostWaiting = 1024;
    private const int MostPerCommit = 64;

    private readonly BlockingCollection<Job> _waiting = new(MostWaiting);
    private readonly SqliteConnection _connection;
    private readonly TimeProvider _time;
    private readonly Action _announced;
    private readonly string _service;
    private readonly Thread _thread;
    private bool _isDisposed;

    public StoreWriter(
        string service, SqliteConnection connection, TimeProvider time, Action announced)
    {
        _service = service;
        _connection = connection;
        _time = time;
        _announced = announced;
        _connection.Execute(
            $"PRAGMA synchronous = FULL; PRAGMA busy_timeout = {BusySeconds * 1000};"
            + "PRAGMA foreign_keys = ON;");
        _thread = new Thread(Run) { IsBackground = true, Name = service + " store writer" };
        _thread.Start();
    }

    public Task<TResult> WriteAsync<TResult>(
        Func<StoreTransaction, TResult> work, CancellationToken cancel)
    {
        cancel.ThrowIfCancellationRequested();
        var job = new Job<TResult>(work, cancel);
        if (!_waiting.TryAdd(job))
        {
            throw new StoreUnavailableException(
                $"The store of {_service} has {MostWaiting} writes waiting.",
                new TimeoutException());
        }

        return job.Answer;
    }

    public void Dispose()
    {
        if (_isDisposed)
        {
            return;
        }

        _isDisposed = true;
        _waiting.CompleteAdding();
        _thread.Join();
        _connection.Dispose();
        _waiting.Dispose();
    }

    private void Run()
    {
        var batch = new List<Job>(MostPerCommit);
        foreach (var first in _waiting.GetConsumingEnumerable())
        {
            batch.Add(first);
            while (batch.Count < MostPerCommit && _waiting.TryTake(out var next))
            {
                batch.Add(next);
            }

            Commit(batch);
            batch.Clear();
        }
    }

    private void Commit(List<Job> batch)
    {
        try
        {
            var transaction = new StoreTransaction(
                _connection, _time.GetUtcNow().ToUnixTimeMilliseconds());
            _connection.Execute("BEGIN IMMEDIATE");
            foreach (var job in batch)
            {
                RunOne(job, transaction);
            }

            FailPoint.Reach(_service + ".before-commit");
            _connection.Execute("COMMIT");
            FailPoint.Reach(_service + ".after-commit");
            if (transaction.Announces)
            {
                _announced();
            }

            batch.ForEach(job => job.Succeed());
        }
        catch (Exception failure)
        {
            Undo(batch, failure);
        }
    }

    private void RunOne(Job job, StoreTransaction transaction)
    {
        if (job.IsCancelled)
        {
            return;
        }

        _connection.Execute("SAVEPOINT job");
        try
        {
            job.Run(transaction);
        }
        catch (Exception failure) when (!IsOfTheStore(failure))
        {
            _connection.Execute("ROLLBACK TO job");
            job.Fail(failure);
        }

        _connection.Execute("RELEASE job");
    }

    private void Undo(List<Job> batch, Exception failure)
    {
        var told = failure is SqliteException known && StoreUnavailableException.Explains(known)
            ? new StoreUnavailableException(
                $"The store of {_service} cannot be written: {known.Message}", known)
            : failure;
        try
        {
            // A full disk makes SQLite roll back by itself; then there is nothing left to undo.
            if (SQLitePCL.raw.sqlite3_get_autocommit(_connection.Handle) == 0)
            {
                _connection.Execute("ROLLBACK");
            }
        }
        catch (SqliteException second)
        {
            told = new AggregateException(told, second);
        }

        batch.ForEach(job => job.Fail(told));
    }

    private static bool IsOfTheStore(Exception failure) =>
        failure is SqliteException known && StoreUnavailableException.Explains(known);

    private abstract class Job
    {
        public abstract bool IsCancelled { get; }

        public abstract void Run(StoreTransaction transaction);

        public abstract void Succeed();

        public abstract void Fail(Exception failure);
    }

    private sealed class Job<TResult>(
        Func<StoreTransaction, TResult> work, CancellationToken cancel) : Job
    {
        private readonly TaskCompletionSource<TResult> _answer =
            new(TaskCreationOptions.RunContinuationsAsynchronously);

        private TResult _result = default!;

        public Task<TResult> Answer => _answer.Task;

        public override bool IsCancelled =>
            cancel.IsCancellationRequested && _answer.TrySetCanceled(cancel);

        public override void Run(StoreTransaction transaction) => _result = work(transaction);

        public override void Succeed() => _answer.TrySetResult(_result);

        public override void Fail(Exception failure) => _answer.TrySetException(failure);
    }
}
