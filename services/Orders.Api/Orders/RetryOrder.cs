using Microsoft.Extensions.DependencyInjection;
using PostFrame.Messaging;
using PostFrame.Problems;

namespace PostFrame.OrdersApi.Orders;

/// <summary>
/// Takes a parked order up again, by a person's hand. Doing it twice does it once.
/// </summary>
internal sealed class RetryOrder(
    [FromKeyedServices(OrdersSetup.Service)] SqliteStore store, ProcessRun run)
{
    public Task<IResult> HandleAsync(string orderNumber, CancellationToken cancel) =>
        store.WriteAsync<IResult>(
            transaction =>
            {
                if (OrderStore.Find(transaction, orderNumber) is null)
                {
                    return ReadOrders.Unknown;
                }

                if (!ProgressStore.Retried(transaction, orderNumber, run.Id))
                {
                    return new ProblemAnswer(
                        ProblemKind.StateConflict, $"Order {orderNumber} is not parked.");
                }

                Announcement.Repeat(transaction, orderNumber);
                OrderStore.Note(transaction, orderNumber, "retried", "Taken up again by hand.");
                return TypedResults.Accepted($"/v1/orders/{orderNumber}");
            },
            cancel);
}
