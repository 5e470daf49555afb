using System.Text.Json;
using MassTransit;
using Microsoft.Extensions.DependencyInjection;
using PostFrame.Messaging;
using PostFrame.OrdersApi.Messages;

namespace PostFrame.OrdersApi.Orders;

/// <summary>Keeps each order's state by what the workers announce.</summary>
internal sealed class HearProgress([FromKeyedServices(OrdersSetup.Service)] SqliteStore store)
    : IConsumer<CuttingPlanned>, IConsumer<CuttingRejected>, IConsumer<LabelsPrinted>,
        IConsumer<LabelsFailed>
{
    /// <summary>Of a service that does not count: it plans once, and refuses before.</summary>
    private const int OnlyPlan = 1;

    private const int BeforeAnyPlan = 0;

    public Task Consume(ConsumeContext<CuttingPlanned> context)
    {
        var (id, planned) = (context.Message.Id, context.Message.Data);
        return store.WriteAsync(
            transaction =>
            {
                if (Inbox.Claim(transaction, nameof(HearProgress), id)
                    && ProgressStore.Planned(
                        transaction, planned.OrderNumber, planned.Revision,
                        planned.PlanNumber ?? OnlyPlan, planned.PlannedAt, planned.RollCount))
                {
                    OrderStore.Note(
                        transaction, planned.OrderNumber, "planned",
                        $"Planned on {planned.RollCount} rolls{Plan(planned.PlanNumber)}.");
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
                    && ProgressStore.Rejected(
                        transaction, rejected.OrderNumber, rejected.Revision,
                        rejected.PlanNumber ?? BeforeAnyPlan, written))
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
                        transaction, printed.OrderNumber, printed.Revision,
                        printed.PlanNumber ?? OnlyPlan, printed.PrintedAt, printed.LabelCount))
                {
                    OrderStore.Note(
                        transaction, printed.OrderNumber, "labelled",
                        $"{printed.LabelCount} labels can be fetched{Plan(printed.PlanNumber)}.");
                }
            },
            context.CancellationToken);
    }

    public Task Consume(ConsumeContext<LabelsFailed> context)
    {
        var (id, failed) = (context.Message.Id, context.Message.Data);
        var reasons = failed.Reasons.Select(
            reason => new ParkReason(reason.Code, reason.Text, null, null));
        var written = JsonSerializer.Serialize(reasons, MessageJson.Options);
        return store.WriteAsync(
            transaction =>
            {
                if (Inbox.Claim(transaction, nameof(HearProgress), id)
                    && ProgressStore.NotLabelled(
                        transaction, failed.OrderNumber, failed.Revision, failed.PlanNumber,
                        written))
                {
                    OrderStore.Note(
                        transaction, failed.OrderNumber, "parked",
                        string.Join(" ", failed.Reasons.Select(reason => reason.Text)));
                }
            },
            context.CancellationToken);
    }

    /// <summary>Says which plan where there is more than one.</summary>
    private static string Plan(int? number) => number > 1 ? $", plan {number}" : "";
}
