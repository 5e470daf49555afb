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
internal sealed partial class TakeOrder(
    [FromKeyedServices(CuttingSetup.Service)] SqliteStore store, PlanCutting planner,
    ILogger<TakeOrder> log)
    : IConsumer<OrderConfirmed>
{
    public async Task Consume(ConsumeContext<OrderConfirmed> context)
    {
        var confirmed = context.Message.Data;
        try
        {
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
        }
        catch (BrokenContractException broken) when (confirmed.Revision >= 1)
        {
            await RefuseAsync(context, broken.Message);
        }

        planner.Wake();
    }

    /// <summary>
    /// Tries would end the same, and the error queue is read by nobody who waits for the order:
    /// it is parked with the reason instead.
    /// </summary>
    private Task RefuseAsync(ConsumeContext<OrderConfirmed> context, string why)
    {
        var (order, revision) = (context.Message.Data.OrderNumber, context.Message.Data.Revision);
        LogBroken(order, revision, why);
        return store.WriteAsync(
            transaction =>
            {
                if (Inbox.Claim(transaction, nameof(TakeOrder), MessageIdOf(context)))
                {
                    Announcement.NotTaken(
                        transaction, order, revision, $"Cutting cannot take the order: {why}.");
                }
            },
            context.CancellationToken);
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
            throw new BrokenContractException(wrong);
        }
    }

    [LoggerMessage(
        LogLevel.Error, "order-confirmed.v1 of {Order}/{Revision} breaks its contract: {Why}")]
    private partial void LogBroken(string order, int revision, string why);
}
