using MassTransit;
using Microsoft.Extensions.DependencyInjection;
using PostFrame.Messaging;
using PostFrame.Operations.Messages;

namespace PostFrame.Operations.Pipeline;

/// <summary>
/// Keeps what every service says of an order and brings its row of the board up to date. What is
/// kept depends on the messages alone, not on their order or number.
/// </summary>
internal sealed class TrackOrders(
    [FromKeyedServices(OperationsSetup.Name)] SqliteStore store, ChangeFeed feed)
    : IConsumer<OrderConfirmed>, IConsumer<CuttingPlanned>, IConsumer<CuttingRejected>,
        IConsumer<LabelsPrinted>, IConsumer<LabelsFailed>
{
    public Task Consume(ConsumeContext<OrderConfirmed> context) =>
        KeepAsync(Told.By(context.Message), context.CancellationToken);

    public Task Consume(ConsumeContext<CuttingPlanned> context) =>
        KeepAsync(Told.By(context.Message), context.CancellationToken);

    public Task Consume(ConsumeContext<CuttingRejected> context) =>
        KeepAsync(Told.By(context.Message), context.CancellationToken);

    public Task Consume(ConsumeContext<LabelsPrinted> context) =>
        KeepAsync(Told.By(context.Message), context.CancellationToken);

    public Task Consume(ConsumeContext<LabelsFailed> context) =>
        KeepAsync(Told.By(context.Message), context.CancellationToken);

    internal async Task KeepAsync(Told told, CancellationToken cancel)
    {
        if (await store.WriteAsync(transaction => Keep(transaction, told), cancel))
        {
            feed.Wake();
        }
    }

    /// <summary>True when the board's row became another.</summary>
    private static bool Keep(StoreTransaction transaction, Told told)
    {
        if (!Inbox.Claim(transaction, OperationsSetup.Name, Guid.Parse(told.MessageId)))
        {
            return false;
        }

        PipelineStore.Keep(transaction, told);
        return BoardRow.Bring(transaction, told.OrderNumber);
    }
}
