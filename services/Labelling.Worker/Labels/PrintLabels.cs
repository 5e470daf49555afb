using System.Text.Json;
using MassTransit;
using Microsoft.Extensions.DependencyInjection;
using PostFrame.LabellingWorker.Messages;
using PostFrame.Messaging;

namespace PostFrame.LabellingWorker.Labels;

/// <summary>
/// Prints labels and checklist once both halves of a revision are here: what was ordered and how it
/// is cut. Drawing comes first and is repeatable; then one transaction claims the message, keeps
/// the half, the whole set and its announcement, or none of them.
/// </summary>
public sealed class PrintLabels(
    [FromKeyedServices(Labelling.Name)] SqliteStore store, TimeProvider time)
    : IConsumer<OrderConfirmed>, IConsumer<CuttingPlanned>
{
    private const string OrderHalf = "order";
    private const string PlanHalf = "plan";

    /// <summary>The other half can arrive once while this one is drawn, not twice.</summary>
    private const int MostRounds = 3;

    public Task Consume(ConsumeContext<OrderConfirmed> context)
    {
        var data = context.Message.Data;
        return TakeAsync(
            context,
            new Half(data.OrderNumber, data.Revision, OrderHalf, PlanHalf, Json(data)));
    }

    public Task Consume(ConsumeContext<CuttingPlanned> context)
    {
        var data = context.Message.Data;
        return TakeAsync(
            context,
            new Half(data.OrderNumber, data.Revision, PlanHalf, OrderHalf, Json(data)));
    }

    private sealed record Half(string Order, int Revision, string Kind, string Other, string Body);

    private async Task TakeAsync(ConsumeContext context, Half half)
    {
        var messageId = context.MessageId
            ?? throw new InvalidOperationException("A message came without an id.");
        for (var round = 0; round < MostRounds; round++)
        {
            var (isPrinted, other) = store.Read(view => (
                LabelStore.Printed(view, half.Order, half.Revision) is not null,
                LabelStore.Half(view, half.Order, half.Revision, half.Other)));
            var set = isPrinted || other is null ? null : Draw(half, other);
            if (await store.WriteAsync(
                transaction => Keep(transaction, messageId, half, set), context.CancellationToken))
            {
                return;
            }
        }

        throw new InvalidOperationException(
            $"The other half of {half.Order}/{half.Revision} came and went while it was drawn.");
    }

    private static PrintedSet Draw(Half half, string other)
    {
        var order = Read<OrderConfirmedData>(half.Kind == OrderHalf ? half.Body : other);
        var plan = Read<CuttingPlannedData>(half.Kind == PlanHalf ? half.Body : other);
        return PrintedPaper.Draw(order, plan);
    }

    /// <summary>
    /// False, with nothing written, when the other half came while this was drawn.
    /// </summary>
    private bool Keep(
        StoreTransaction transaction, Guid messageId, Half half, PrintedSet? set)
    {
        var printed = LabelStore.Printed(transaction, half.Order, half.Revision);
        if (printed is null && set is null
            && LabelStore.Half(transaction, half.Order, half.Revision, half.Other) is not null)
        {
            return false;
        }

        if (!Inbox.Claim(transaction, $"{Labelling.Name}.{half.Kind}", messageId))
        {
            return true;
        }

        LabelStore.KeepHalf(transaction, half.Order, half.Revision, half.Kind, half.Body);
        if (printed is null && set is not null)
        {
            LabelStore.KeepSet(transaction, set);
            printed = LabelStore.Printed(transaction, half.Order, half.Revision);
        }

        if (printed is not null)
        {
            Announce(transaction, half, printed);
        }

        return true;
    }

    /// <summary>A revision printed before is announced again: whoever asks has missed it.</summary>
    private void Announce(StoreTransaction transaction, Half half, PrintedNote printed)
    {
        var id = Guid.CreateVersion7(time.GetUtcNow());
        Outbox.Enqueue(transaction, id, new LabelsPrinted
        {
            Id = id,
            Source = "/labelling",
            Type = "labels-printed.v1",
            Subject = $"{half.Order}/{half.Revision}",
            Time = time.GetUtcNow(),
            Data = new LabelsPrintedData
            {
                OrderNumber = half.Order,
                Revision = half.Revision,
                PrintedAt = DateTimeOffset.FromUnixTimeMilliseconds(printed.PrintedAtUnixMs),
                LabelCount = (int)printed.LabelCount,
            },
        });
    }

    private static string Json<T>(T data) => JsonSerializer.Serialize(data, MessageJson.Options);

    private static T Read<T>(string json) =>
        JsonSerializer.Deserialize<T>(json, MessageJson.Options)
        ?? throw new InvalidOperationException("A kept half is empty.");
}
