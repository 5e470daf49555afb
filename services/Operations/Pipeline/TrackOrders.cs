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
    private const string Order = "order";
    private const string Plan = "plan";
    private const string Labels = "labels";

    public Task Consume(ConsumeContext<OrderConfirmed> context)
    {
        var (message, data) = (context.Message, context.Message.Data);
        return KeepAsync(context, data.OrderNumber, data.Revision, Order, message.Time, new ToldOrder(
            data.ShipTo.Name, data.Building.Name, data.Building.Summary, data.NeededBy,
            data.Pieces.Count, data.ConfirmedAt.ToUnixTimeMilliseconds()));
    }

    public Task Consume(ConsumeContext<CuttingPlanned> context)
    {
        var (message, data) = (context.Message, context.Message.Data);
        return KeepAsync(context, data.OrderNumber, data.Revision, Plan, message.Time, new ToldPlan(
            data.PlannedAt.ToUnixTimeMilliseconds(), data.RollCount, []));
    }

    public Task Consume(ConsumeContext<CuttingRejected> context)
    {
        var (message, data) = (context.Message, context.Message.Data);
        return KeepAsync(context, data.OrderNumber, data.Revision, Plan, message.Time, new ToldPlan(
            data.RejectedAt.ToUnixTimeMilliseconds(), null,
            [.. data.Reasons.Select(reason => reason.Text)]));
    }

    public Task Consume(ConsumeContext<LabelsPrinted> context)
    {
        var (message, data) = (context.Message, context.Message.Data);
        return KeepAsync(context, data.OrderNumber, data.Revision, Labels, message.Time,
            new ToldLabels(data.PrintedAt.ToUnixTimeMilliseconds(), data.LabelCount));
    }

    private async Task KeepAsync<TBody>(
        ConsumeContext context, string order, int revision, string kind, DateTimeOffset saidAt,
        TBody body)
    {
        var messageId = context.MessageId
            ?? throw new InvalidOperationException("A message came without an id.");
        if (revision < 1 || string.IsNullOrWhiteSpace(order))
        {
            throw new InvalidOperationException(
                $"The {kind} message {messageId} names order \"{order}\", revision {revision}; "
                + "an order number and a revision of at least 1 are needed.");
        }

        var told = new ToldRow
        {
            OrderNumber = order,
            Revision = revision,
            Kind = kind,
            SaidAt = saidAt.ToUnixTimeMilliseconds(),
            MessageId = messageId.ToString(),
            Body = JsonSerializer.Serialize(body, MessageJson.Options),
        };
        if (await store.WriteAsync(
            transaction => Inbox.Claim(transaction, OperationsSetup.Name, messageId)
                && Keep(transaction, told),
            context.CancellationToken))
        {
            feed.Wake();
        }
    }

    /// <summary>True when the board's row became another.</summary>
    private static bool Keep(StoreTransaction transaction, ToldRow told)
    {
        PipelineStore.Keep(transaction, told);
        var newest = PipelineStore.NewestConfirmed(transaction, told.OrderNumber);
        if (newest is not { } revision)
        {
            return false;
        }

        var known = PipelineStore.Told(transaction, told.OrderNumber, revision)
            .ToDictionary(row => row.Kind, row => row.Body);
        PipelineStore.Forget(transaction, told.OrderNumber, revision);
        return PipelineStore.Track(transaction, Row(
            told.OrderNumber, revision, Read<ToldOrder>(known, Order)!,
            Read<ToldPlan>(known, Plan), Read<ToldLabels>(known, Labels)));
    }

    private static OrderRow Row(
        string number, long revision, ToldOrder order, ToldPlan? plan, ToldLabels? labels)
    {
        var state = plan is { Rolls: null } ? OrderRow.Parked
            : labels is not null ? OrderRow.Labelled
            : plan is not null ? OrderRow.Planned
            : OrderRow.Confirmed;
        long? finishedAt = state == OrderRow.Labelled ? labels!.PrintedAtUnixMs : null;
        return new OrderRow
        {
            OrderNumber = number,
            Revision = revision,
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
            PlannedAt = plan is { Rolls: not null } ? plan.DecidedAtUnixMs : null,
            FinishedAt = finishedAt,
            Place = finishedAt is { } at ? OrderRow.AfterAllWaiting - at : order.ConfirmedAtUnixMs,
        };
    }

    private static TBody? Read<TBody>(Dictionary<string, string> known, string kind)
        where TBody : class =>
        known.TryGetValue(kind, out var body)
            ? JsonSerializer.Deserialize<TBody>(body, MessageJson.Options)
            : null;
}
