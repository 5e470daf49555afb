using System.Text.Json;
using PostFrame.Messaging;
using PostFrame.OrdersApi.Messages;

namespace PostFrame.OrdersApi.Orders;

/// <summary>Tells the workers of a revision: the same each time, under a new id.</summary>
internal static class Announcement
{
    public static void Enqueue(StoreTransaction transaction, OrderConfirmed.Confirmed confirmed)
    {
        var id = Guid.CreateVersion7();
        Outbox.Enqueue(transaction, id, new OrderConfirmed
        {
            Id = id,
            Subject = $"{confirmed.OrderNumber}/{confirmed.Revision}",
            Time = DateTimeOffset.FromUnixTimeMilliseconds(transaction.NowUnixMs),
            Data = confirmed,
        });
    }

    /// <summary>Announces the current revision again.</summary>
    public static void Repeat(StoreTransaction transaction, string orderNumber) => Enqueue(
        transaction,
        JsonSerializer.Deserialize<OrderConfirmed.Confirmed>(
            OrderStore.ConfirmedOf(transaction, orderNumber), MessageJson.Options)!);
}
