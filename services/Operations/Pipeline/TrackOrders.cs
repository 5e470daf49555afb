using System.Text.Json;
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
        IConsumer<LabelsPrinted>
{
    public Task Consume(ConsumeContext<OrderConfirmed> context) =>
        KeepAsync(Told.By(context.Message), context.CancellationToken);

    public Task Consume(ConsumeContext<CuttingPlanned> context) =>
        KeepAsync(Told.By(context.Message), context.CancellationToken);

    public Task Consume(ConsumeContext<CuttingRejected> context) =>
        KeepAsync(Told.By(context.Message), context.CancellationToken);

    public Task Consume(ConsumeContext<LabelsPrinted> context) =>
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
        if (PipelineStore.NewestConfirmed(transaction, told.OrderNumber) is not { } revision)
        {
            return false;
        }

        PipelineStore.Forget(transaction, told.OrderNumber, revision);
        return PipelineStore.Track(transaction, Row(
            PipelineStore.Known(transaction, told.OrderNumber, revision)
                .ToDictionary(known => known.Kind)));
    }

    private static OrderRow Row(Dictionary<string, Told> known)
    {
        var confirmed = known[Told.Order];
        var order = confirmed.Read<ToldOrder>();
        var plan = known.GetValueOrDefault(Told.Plan)?.Read<ToldPlan>();
        var labels = known.GetValueOrDefault(Told.Labels)?.Read<ToldLabels>();
        var state = plan is { Rolls: null } ? OrderRow.Parked
            : labels is not null ? OrderRow.Labelled
            : plan is not null ? OrderRow.Planned
            : OrderRow.Confirmed;
        long? finishedAt = state == OrderRow.Labelled ? labels!.PrintedAtUnixMs : null;
        return new OrderRow
        {
            OrderNumber = confirmed.OrderNumber,
            Revision = confirmed.Revision,
            ShipTo = order.ShipTo,
            Building = order.Building,
            Summary = order.Summary,
            NeededBy = order.NeededBy.ToString("O"),
            Pieces = order.Pieces,
            Rolls = plan?.Rolls,
            Labels = labels?.Labels,
            State = state,
            Reasons = JsonSerializer.Serialize(plan?.Reasons ?? [], MessageJson.Options),
            ConfirmedAt = order.ConfirmedAtUnixMs,
            DecidedAt = plan?.DecidedAtUnixMs,
            FinishedAt = finishedAt,
            Place = finishedAt is { } at ? OrderRow.AfterAllWaiting - at : order.ConfirmedAtUnixMs,
        };
    }
}
