namespace PostFrame.Messaging;

/// <summary>Remembers whose effect is already in the store, so that a repeat has none.</summary>
public static class Inbox
{
    private const string InsertClaim =
        """
        INSERT INTO inbox (consumer, message_id, claimed_at) VALUES (@consumer, @messageId, @now)
        ON CONFLICT DO NOTHING
        """;

    /// <summary>
    /// Claims a message for a consumer within the transaction of its effect. False when it was
    /// claimed before: then its effect is in the store and nothing is to be done.
    /// </summary>
    public static bool Claim(StoreTransaction transaction, string consumer, Guid messageId) =>
        transaction.Execute(
            InsertClaim,
            new { consumer, messageId = messageId.ToString(), now = transaction.NowUnixMs }) == 1;

    private const string DeleteOld = "DELETE FROM inbox WHERE claimed_at < @before";

    internal static int Forget(StoreTransaction transaction, long beforeUnixMs) =>
        transaction.Execute(DeleteOld, new { before = beforeUnixMs });
}
