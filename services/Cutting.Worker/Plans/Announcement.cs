using System.Text.Json;
using PostFrame.CuttingWorker.Messages;
using PostFrame.CuttingWorker.Queue;
using PostFrame.Messaging;

namespace PostFrame.CuttingWorker.Plans;

/// <summary>Tells the pipeline what was decided about an order, as the store has it.</summary>
internal static class Announcement
{
    private const string Source = "/cutting";

    /// <summary>
    /// Says again what was decided; nothing while the order still waits for it.
    /// </summary>
    public static void Repeat(StoreTransaction transaction, string order)
    {
        var known = OrderStore.Find(transaction, order)!;
        if (known.State == "planned")
        {
            Planned(transaction, order);
        }
        else if (known.State == "refused")
        {
            Refused(transaction, order, RefusalsOf(known.Refusals));
        }
    }

    public static IReadOnlyList<Refusal> RefusalsOf(string? stored) => stored is null
        ? []
        : JsonSerializer.Deserialize<List<Refusal>>(stored, MessageJson.Options)!;

    public static void Planned(StoreTransaction transaction, string order)
    {
        var known = OrderStore.Find(transaction, order)!;
        var cuts = CutStore.OfOrder(transaction, order)
            .Where(cut => cut.OrderNumber == order && cut.VoidedAt is null).ToList();
        var id = Guid.NewGuid();
        var time = DateTimeOffset.FromUnixTimeMilliseconds(transaction.NowUnixMs);
        Outbox.Enqueue(transaction, id, new CuttingPlanned
        {
            Id = id,
            Source = Source,
            Type = "cutting-planned.v1",
            Subject = $"{order}/{known.Revision}",
            Time = time,
            Data = new CuttingPlanned.Planned
            {
                OrderNumber = order,
                Revision = (int)known.Revision,
                PlannedAt = DateTimeOffset.FromUnixTimeMilliseconds(known.DecidedAt!.Value),
                PlanNumber = (int)known.PlanNumber,
                PieceCount = cuts.Count,
                RollCount = cuts.Select(cut => cut.RollId).Distinct().Count(),
                Plans = [.. cuts.GroupBy(cut => cut.PlanId).Select(PlanOf)],
            },
        });
    }

    private static CuttingPlanned.Plan PlanOf(IEnumerable<CutRow> cuts)
    {
        var plan = cuts.First();
        return new CuttingPlanned.Plan
        {
            Product = plan.Product,
            WidthNm = plan.WidthNm,
            LowerBoundRolls = (int)plan.LowerBoundRolls,
            Proven = plan.Proven,
            Method = plan.Method,
            Rolls = [.. cuts.GroupBy(cut => cut.RollId).Select(RollOf)],
        };
    }

    private static CuttingPlanned.Roll RollOf(IEnumerable<CutRow> cuts)
    {
        var roll = cuts.First();
        return new CuttingPlanned.Roll
        {
            Number = (int)roll.Number,
            RollLengthNm = roll.RollLengthNm,
            EndTrimNm = roll.EndTrimNm,
            StockId = roll.StockId,
            Lot = roll.Lot,
            Cuts = [.. cuts.Select(cut => new CuttingPlanned.Cut
            {
                Sequence = (int)cut.Sequence,
                PieceId = cut.PieceId,
                Mark = cut.Mark,
                CutNm = cut.CutNm,
            })],
            LeftOverNm = roll.LeftOverNm,
            LeftOver = roll.LeavesOffcut ? "offcut" : "scrap",
        };
    }

    public static void Refused(
        StoreTransaction transaction, string order, IReadOnlyList<Refusal> refusals)
    {
        var known = OrderStore.Find(transaction, order)!;
        Refused(
            transaction, order, (int)known.Revision, (int)known.PlanNumber,
            DateTimeOffset.FromUnixTimeMilliseconds(known.DecidedAt!.Value), refusals);
    }

    /// <summary>Of an order that cannot even be taken into the queue.</summary>
    public static void NotTaken(
        StoreTransaction transaction, string order, int revision, string why) => Refused(
            transaction, order, revision, null,
            DateTimeOffset.FromUnixTimeMilliseconds(transaction.NowUnixMs),
            [new Refusal(Refusal.PlanRefused, null, null, why)]);

    private static void Refused(
        StoreTransaction transaction, string order, int revision, int? planNumber,
        DateTimeOffset at, IReadOnlyList<Refusal> refusals)
    {
        var id = Guid.NewGuid();
        Outbox.Enqueue(transaction, id, new CuttingRejected
        {
            Id = id,
            Source = Source,
            Type = "cutting-rejected.v1",
            Subject = $"{order}/{revision}",
            Time = DateTimeOffset.FromUnixTimeMilliseconds(transaction.NowUnixMs),
            Data = new CuttingRejected.Rejected
            {
                OrderNumber = order,
                Revision = revision,
                RejectedAt = at,
                PlanNumber = planNumber,
                Reasons = [.. refusals.Select(refusal => new CuttingRejected.Reason
                {
                    Code = refusal.Code,
                    PieceId = refusal.PieceId,
                    Mark = refusal.Mark,
                    Text = refusal.Text,
                })],
            },
        });
    }
}
