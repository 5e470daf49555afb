using PostFrame.Messaging;

namespace PostFrame.CuttingWorker.Stock;

/// <summary>
/// Requests of the bench by their Idempotency-Key, so that one sent twice has the effect of one.
/// </summary>
internal static class AnsweredStore
{
    private const string Select =
        "SELECT request AS Request, answer AS Answer FROM answered WHERE key = @key";

    public static AnsweredRow? Find(StoreTransaction view, string key) =>
        view.Single<AnsweredRow>(Select, new { key });

    private const string Insert =
        """
        INSERT INTO answered (key, request, answer, answered_at)
        VALUES (@key, @request, @answer, @now)
        """;

    public static void Add(
        StoreTransaction transaction, string key, string request, string answer) =>
        transaction.Execute(Insert, new { key, request, answer, now = transaction.NowUnixMs });
}

internal sealed record AnsweredRow
{
    /// <summary>What was asked: method, address and a digest of the body.</summary>
    public required string Request { get; init; }

    /// <summary>The JSON that was answered.</summary>
    public required string Answer { get; init; }
}
