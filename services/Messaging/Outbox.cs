using System.Text.Json;
using MassTransit;

namespace PostFrame.Messaging;

/// <summary>
/// Messages to be sent, kept in the transaction that makes them true. The relay sends them after
/// the commit, at least once, and in any order.
/// </summary>
public static class Outbox
{
    private const string Insert =
        """
        INSERT INTO outbox (id, type, body, created_at, available_at)
        VALUES (@id, @type, @body, @now, @now)
        """;

    /// <summary>
    /// Puts a message into the outbox. Its id goes out as the bus's message id, by which readers
    /// know a repeat. Its type must be among those the service said it
    /// <see cref="ServicePipeline.Publishes{TMessage}"/>.
    /// </summary>
    public static void Enqueue<TMessage>(
        StoreTransaction transaction, Guid messageId, TMessage message)
        where TMessage : class
    {
        transaction.Execute(Insert, new
        {
            id = messageId.ToString(),
            type = TypeName(typeof(TMessage)),
            body = JsonSerializer.Serialize(message, MessageJson.Options),
            now = transaction.NowUnixMs,
        });
        transaction.Announces = true;
    }

    // What was postponed stands behind what was never tried, so it can hold nothing up.
    private const string SelectDue =
        """
        SELECT id AS Id, type AS Type, body AS Body, attempts AS Attempts
        FROM outbox WHERE available_at <= @now ORDER BY available_at, seq LIMIT @most
        """;

    internal static IReadOnlyList<OutboxRow> Due(StoreTransaction transaction, int most) =>
        transaction.All<OutboxRow>(SelectDue, new { now = transaction.NowUnixMs, most });

    private const string Delete = "DELETE FROM outbox WHERE id = @id";

    internal static void Sent(StoreTransaction transaction, string id) =>
        transaction.Execute(Delete, new { id });

    private const string Postpone =
        """
        UPDATE outbox SET attempts = attempts + 1, available_at = @until, last_error = @error
        WHERE id = @id
        """;

    internal static void Failed(
        StoreTransaction transaction, string id, TimeSpan wait, string error) =>
        transaction.Execute(Postpone, new
        {
            id,
            until = transaction.NowUnixMs + (long)wait.TotalMilliseconds,
            error,
        });

    /// <summary>How many messages wait to be sent.</summary>
    public static long Waiting(StoreTransaction transaction) => Backlog(transaction).Waiting;

    private const string SelectBacklog =
        "SELECT count(*) AS Waiting, min(created_at) AS OldestUnixMs FROM outbox";

    internal static OutboxBacklog Backlog(StoreTransaction transaction) =>
        transaction.Single<OutboxBacklog>(SelectBacklog)!;

    /// <summary>
    /// The name a message goes by on the wire, such as <c>order-confirmed.v1</c>.
    /// </summary>
    internal static string TypeName(Type message) =>
        MessageUrn.ForType(message).AbsoluteUri["urn:message:".Length..];
}

internal sealed class OutboxRow
{
    public required string Id { get; init; }

    public required string Type { get; init; }

    public required string Body { get; init; }

    public required long Attempts { get; init; }
}

internal sealed class OutboxBacklog
{
    public required long Waiting { get; init; }

    public required long? OldestUnixMs { get; init; }
}
