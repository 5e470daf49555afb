using Microsoft.Data.Sqlite;

namespace PostFrame.Messaging;

/// <summary>
/// The store cannot be written or read just now: locked, full, read-only or failing. Nothing of the
/// transaction was kept; the same work may be tried again.
/// </summary>
public sealed class StoreUnavailableException(string message, Exception cause)
    : Exception(message, cause)
{
    private const int Busy = 5;
    private const int Locked = 6;
    private const int ReadOnly = 8;
    private const int InputOutput = 10;
    private const int Full = 13;
    private const int CannotOpen = 14;

    internal static bool Explains(SqliteException failure) => failure.SqliteErrorCode
        is Busy or Locked or ReadOnly or InputOutput or Full or CannotOpen;
}
