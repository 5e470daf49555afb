using MassTransit;
using Microsoft.Extensions.DependencyInjection;
using PostFrame.CuttingWorker.Messages;
using PostFrame.CuttingWorker.Plans;
using PostFrame.Messaging;

namespace PostFrame.CuttingWorker.Queue;

/// <summary>
/// A confirmed order joins the queue. Planning comes after the message is answered, so that no
/// delivery ever waits for an optimisation; the row in the store is what the planner works from.
/// </summary>
internal sealed class TakeOrder(
    [FromKeyedServices(CuttingSetup.Service)] SqliteStore store, PlanCutting planner)
    : IConsumer<OrderConfirmed>
{
    public async Task Consume(ConsumeContext<OrderConfirmed> context)
    {
        var confirmed = context.Message.Data;
        Validate(confirmed);
        await store.WriteAsync(
            transaction =>
            {
                if (Inbox.Claim(transaction, nameof(TakeOrder), MessageIdOf(context)))
                {
                    Take(transaction, confirmed);
                }
            },
            context.CancellationToken);
        planner.Wake();
    }

    /// <summary>
    /// An older revision has nothing left to say; the present one gets the plan it already has, or
    /// is tried again when it was refused, because then a person asked; a newer one is taken.
    /// </summary>
    private static void Take(StoreTransaction transaction, OrderConfirmed.Confirmed confirmed)
    {
        var known = OrderStore.Revision(transaction, confirmed.OrderNumber) ?? 0;
        if (confirmed.Revision == known)
        {
            OrderStore.Retry(transaction, confirmed.OrderNumber);
            Announcement.Repeat(transaction, confirmed.OrderNumber);
        }
        else if (confirmed.Revision > known)
        {
            OrderStore.Take(transaction, confirmed);
            PlanStore.ClearEmpty(transaction);
            PlanStore.CountChange(transaction);
        }
    }

    private static Guid MessageIdOf(ConsumeContext<OrderConfirmed> context) =>
        context.MessageId ?? context.Message.Id;

    /// <summary>Wrong by the contract: the message is parked in the error queue.</summary>
    private static void Validate(OrderConfirmed.Confirmed confirmed)
    {
        var wrong = confirmed.Revision < 1 ? $"revision {confirmed.Revision}, at least 1"
            : confirmed.Pieces.Count == 0 ? "no pieces, at least 1"
            : confirmed.Pieces.GroupBy(piece => piece.PieceId)
                .FirstOrDefault(same => same.Count() > 1) is { } twice
                ? $"piece id {twice.Key} stands for {twice.Count()} pieces"
            : confirmed.Pieces.FirstOrDefault(piece => piece.CutNm <= 0) is { } empty
                ? $"piece {empty.PieceId} of {empty.CutNm} nm, more than 0"
            : confirmed.Stock.FirstOrDefault(
                roll => roll.EndTrimNm < 0 || roll.EndTrimNm >= roll.RollLengthNm) is { } roll
                ? $"end trim {roll.EndTrimNm} nm on a roll of {roll.RollLengthNm} nm"
            : null;
        if (wrong is not null)
        {
            throw new InvalidOperationException(
                $"order-confirmed.v1 of {confirmed.OrderNumber} breaks its contract: {wrong}.");
        }
    }
}
