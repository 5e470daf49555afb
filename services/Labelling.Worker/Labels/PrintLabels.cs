using System.Text.Json;
using MassTransit;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using PostFrame.LabellingWorker.Messages;
using PostFrame.Messaging;

namespace PostFrame.LabellingWorker.Labels;

/// <summary>
/// Prints labels and checklist once both halves of a revision are here: what was ordered and how it
/// is cut, and again when a newer plan cuts it in another order. Drawing comes first and is
/// repeatable; then one transaction claims the message, keeps the half, and with it the whole set
/// or why there is none, and the announcement of either.
/// </summary>
public sealed partial class PrintLabels(
    [FromKeyedServices(Labelling.Name)] SqliteStore store, TimeProvider time,
    ILogger<PrintLabels> log)
    : IConsumer<OrderConfirmed>, IConsumer<CuttingPlanned>
{
    /// <summary>How often something can come of the same revision while this is drawn.</summary>
    private const int MostRounds = 5;

    /// <summary>The bus tries a message again a few times; the order is parked before.</summary>
    private const int MostTries = 3;

    public Task Consume(ConsumeContext<OrderConfirmed> context)
    {
        var data = context.Message.Data;
        return TakeAsync(
            context,
            new Half(data.OrderNumber, data.Revision, LabelStore.OrderHalf, 0, Json(data)));
    }

    public Task Consume(ConsumeContext<CuttingPlanned> context)
    {
        var data = context.Message.Data;
        return TakeAsync(
            context,
            new Half(
                data.OrderNumber, data.Revision, LabelStore.PlanHalf, data.PlanNumber ?? 1,
                Json(data)));
    }

    private sealed record Half(string Order, int Revision, string Kind, int Plan, string Body)
    {
        /// <summary>What is known once this half is kept.</summary>
        public KnownHalves With(KnownHalves known) => Kind == LabelStore.OrderHalf
            ? known with { OrderBody = Body }
            : Plan >= known.Plan ? known with { Plan = Plan, PlanBody = Body } : known;

        /// <summary>Nothing follows from a plan older than the one whose labels exist.</summary>
        public bool IsPast(KnownHalves known) =>
            Kind == LabelStore.PlanHalf && Plan < known.PrintedPlan;
    }

    private async Task TakeAsync(ConsumeContext context, Half half)
    {
        var messageId = context.MessageId
            ?? throw new InvalidOperationException("A message came without an id.");
        for (var round = 0; round < MostRounds; round++)
        {
            var known = store.Read(view => LabelStore.Known(view, half.Order, half.Revision));
            var all = half.With(known);
            var (set, why) = all.IsDue ? Draw(context, half, all) : (null, null);
            if (await store.WriteAsync(
                transaction => Keep(transaction, messageId, half, known, set, why),
                context.CancellationToken))
            {
                return;
            }
        }

        throw new InvalidOperationException(
            $"Too much came of {half.Order}/{half.Revision} while it was drawn.");
    }

    /// <summary>
    /// The set, or why there is none: at once where order and plan contradict each other, after a
    /// few tries where drawing itself fails.
    /// </summary>
    private (PrintedSet? Set, WhyNot? Why) Draw(
        ConsumeContext context, Half half, KnownHalves all)
    {
        try
        {
            return (PrintedPaper.Draw(
                Read<OrderConfirmedData>(all.OrderBody!), Read<CuttingPlannedData>(all.PlanBody!)),
                null);
        }
        catch (PiecesDifferException differ)
        {
            LogFailed(differ, half.Order, half.Revision);
            return (null, new WhyNot("order-and-plan-differ", differ.Message));
        }
        catch (Exception failure) when (context.GetRetryAttempt() + 1 >= MostTries)
        {
            LogFailed(failure, half.Order, half.Revision);
            return (null, new WhyNot(
                "drawing-failed",
                $"Drawing the labels failed {MostTries} times on our side; the log has the "
                + "cause."));
        }
    }

    /// <summary>
    /// False, with nothing written, when something came of the revision while this was drawn.
    /// </summary>
    private bool Keep(
        StoreTransaction transaction, Guid messageId, Half half, KnownHalves known,
        PrintedSet? set, WhyNot? why)
    {
        if (LabelStore.Known(transaction, half.Order, half.Revision) != known)
        {
            return false;
        }

        if (!Inbox.Claim(transaction, $"{Labelling.Name}.{half.Kind}", messageId))
        {
            return true;
        }

        LabelStore.KeepHalf(
            transaction, half.Order, half.Revision, half.Kind, half.Plan, half.Body);
        if (set is not null)
        {
            LabelStore.KeepSet(transaction, set);
        }

        if (why is not null)
        {
            var plan = half.With(known).Plan;
            LabelStore.KeepFailure(transaction, half.Order, half.Revision, plan, why);
            AnnounceFailure(transaction, half, (int)plan, why);
        }
        else if ((set is not null || known.PrintedPlan > 0) && !half.IsPast(known))
        {
            Announce(transaction, half);
        }

        return true;
    }

    /// <summary>A revision printed before is announced again: whoever asks has missed it.</summary>
    private void Announce(StoreTransaction transaction, Half half)
    {
        var printed = LabelStore.Printed(transaction, half.Order, half.Revision);
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
                PlanNumber = (int)printed.Plan,
                LabelCount = (int)printed.LabelCount,
            },
        });
    }

    private void AnnounceFailure(
        StoreTransaction transaction, Half half, int plan, WhyNot why)
    {
        var id = Guid.CreateVersion7(time.GetUtcNow());
        Outbox.Enqueue(transaction, id, new LabelsFailed
        {
            Id = id,
            Source = "/labelling",
            Type = "labels-failed.v1",
            Subject = $"{half.Order}/{half.Revision}",
            Time = time.GetUtcNow(),
            Data = new LabelsFailedData
            {
                OrderNumber = half.Order,
                Revision = half.Revision,
                PlanNumber = plan,
                FailedAt = DateTimeOffset.FromUnixTimeMilliseconds(transaction.NowUnixMs),
                Reasons = [new FailureReason { Code = why.Code, Text = why.Text }],
            },
        });
    }

    private static string Json<T>(T data) => JsonSerializer.Serialize(data, MessageJson.Options);

    private static T Read<T>(string json) =>
        JsonSerializer.Deserialize<T>(json, MessageJson.Options)
        ?? throw new InvalidOperationException("A kept half is empty.");

    [LoggerMessage(LogLevel.Error, "The labels of {Order}/{Revision} cannot be drawn")]
    private partial void LogFailed(Exception failure, string order, int revision);
}

/// <summary>Order and plan do not hold the same pieces: a set would be short.</summary>
internal sealed class PiecesDifferException(string message) : InvalidOperationException(message);
