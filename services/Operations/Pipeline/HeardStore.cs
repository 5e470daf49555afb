using System.Text.Json;
using PostFrame.Messaging;

namespace PostFrame.Operations.Pipeline;

/// <summary>What Orders last said of each order as a whole.</summary>
internal static class HeardStore
{
    private const string SelectLatest = "SELECT coalesce(max(change), 0) FROM heard";

    public static long Latest(StoreTransaction view) => view.Single<long>(SelectLatest);

    private const string Upsert =
        """
        INSERT INTO heard (order_number, revision, change, body)
        VALUES (@OrderNumber, @Revision, @Change, @body)
        ON CONFLICT (order_number) DO UPDATE SET
          revision = excluded.revision, change = excluded.change, body = excluded.body
        WHERE excluded.change > heard.change
        """;

    public static void Keep(StoreTransaction transaction, HeardOrder order) =>
        transaction.Execute(Upsert, new
        {
            order.OrderNumber,
            order.Revision,
            order.Change,
            body = JsonSerializer.Serialize(order, MessageJson.Options),
        });

    private const string SelectBody =
        "SELECT body FROM heard WHERE order_number = @order AND revision = @revision";

    public static HeardOrder? Find(StoreTransaction view, string order, long revision) =>
        view.Single<string>(SelectBody, new { order, revision }) is { } body
            ? JsonSerializer.Deserialize<HeardOrder>(body, MessageJson.Options)
            : null;
}
