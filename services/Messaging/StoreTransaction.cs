using Dapper;
using Microsoft.Data.Sqlite;

namespace PostFrame.Messaging;

/// <summary>
/// One transaction on a service's store. Statements of one transaction see one state; what they
/// write is kept together or not at all. Lives only while the work it was handed to runs.
/// </summary>
public sealed class StoreTransaction
{
    private readonly SqliteConnection _connection;

    internal StoreTransaction(SqliteConnection connection, long nowUnixMs)
    {
        _connection = connection;
        NowUnixMs = nowUnixMs;
    }

    /// <summary>When the transaction began, UTC milliseconds since 1970: what a row's instant
    /// should say.</summary>
    public long NowUnixMs { get; }

    /// <summary>Set by the outbox, so that the relay is woken when this is committed.</summary>
    internal bool Announces { get; set; }

    /// <summary>Runs a statement; answers how many rows it touched.</summary>
    public int Execute(string sql, object? parameters = null) =>
        _connection.Execute(sql, parameters);

    /// <summary>All rows of a query.</summary>
    public IReadOnlyList<TRow> All<TRow>(string sql, object? parameters = null) =>
        _connection.Query<TRow>(sql, parameters).AsList();

    /// <summary>The only row of a query, or the default when there is none.</summary>
    public TRow? Single<TRow>(string sql, object? parameters = null) =>
        _connection.QuerySingleOrDefault<TRow>(sql, parameters);
}
