using System.Text.Json;
using MassTransit;
using Microsoft.Extensions.DependencyInjection;
using PostFrame.Messaging;
using PostFrame.OrdersApi.Messages;

namespace PostFrame.OrdersApi.Orders;

/// <summary>Keeps each order's state by what the workers announce.</summary>
internal sealed class HearProgress([FromKeyedServices(OrdersSetup.Service)] SqliteStore store)
    : IConsumer<CuttingPlanned>, IConsumer<CuttingRejected>, IConsumer<LabelsPrinted>
{
    public Task Consume(ConsumeContext<CuttingPlanned> context)
    {
        var (id, planned) = (context.Message.Id, context.Message.Data);
        return store.WriteAsync(
            transaction =>
            {
                if (Inbox.Claim(transaction, nameof(HearProgress), id)
                    && ProgressStore.Planned(
                        transaction, planned.OrderNumber, planned.Revision, planned.PlannedAt,
                        planned.RollCount))
                {
                    OrderStore.Note(
                        transaction, planned.OrderNumber, "planned",
                        $"Planned on {planned.RollCount} rolls.");
                }
            },
            context.CancellationToken);
    }

    public Task Consume(ConsumeContext<CuttingRejected> context)
    {
        var (id, rejected) = (context.Message.Id, context.Message.Data);
        var reasons = rejected.Reasons.Select(
            reason => new ParkReason(reason.Code, reason.Text, reason.PieceId, reason.Mark));
        var written = JsonSerializer.Serialize(reasons, MessageJson.Options);
        return store.WriteAsync(
            transaction =>
            {
                if (Inbox.Claim(transaction, nameof(HearProgress), id)
                    && ProgressStore.Parked(
                        transaction, rejected.OrderNumber, rejected.Revision, written,
                        evenPlanned: false))
                {
                    OrderStore.Note(
                        transaction, rejected.OrderNumber, "parked",
                        string.Join(" ", rejected.Reasons.Select(reason => reason.Text)));
                }
            },
            context.CancellationToken);
    }

    public Task Consume(ConsumeContext<LabelsPrinted> context)
    {
        var (id, printed) = (context.Message.Id, context.Message.Data);
        return store.WriteAsync(
            transaction =>
            {
                if (Inbox.Claim(transaction, nameof(HearProgress), id)
                    && ProgressStore.Labelled(
                        transaction, printed.OrderNumber, printed.Revision, printed.PrintedAt,
                        printed.LabelCount))
                {
                    OrderStore.Note(
                        transaction, printed.OrderNumber, "labelled",
                        $"{printed.LabelCount} labels can be fetched.");
                }
            },
            context.CancellationToken);
    }
}
