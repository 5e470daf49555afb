using System.Text.Json;
using PostFrame.Messaging;

namespace PostFrame.Operations.Pipeline;

/// <summary>
/// What an order's row says, from everything that was told of its newest confirmed revision. The
/// services' own messages come first; what Orders says stands in for those that are missing.
/// </summary>
internal static class BoardRow
{
    /// <summary>Orders' own reason: the labels did not come, though there is a plan.</summary>
    private const string NoLabels = "no-labels";

    /// <summary>Brings an order's row up to date; true when it became another.</summary>
    public static bool Bring(StoreTransaction transaction, string order)
    {
        if (PipelineStore.NewestConfirmed(transaction, order) is not { } revision)
        {
            return false;
        }

        PipelineStore.Forget(transaction, order, revision);
        var known = PipelineStore.Known(transaction, order, revision)
            .ToDictionary(told => told.Kind);
        return PipelineStore.Track(
            transaction, Row(known, HeardStore.Find(transaction, order, revision)));
    }

    private static OrderRow Row(Dictionary<string, Told> known, HeardOrder? heard)
    {
        var confirmed = known[Told.Order];
        var order = confirmed.Read<ToldOrder>();
        var plan = Plan(known.GetValueOrDefault(Told.Plan)?.Read<ToldPlan>(), heard);
        var told = known.GetValueOrDefault(Told.Labels)?.Read<ToldLabels>();
        var labels = Labels(told, heard);
        var hold = Hold(plan, told, labels, heard);
        var state = hold is not null ? OrderRow.Parked
            : labels is not null && labels.Plan >= (plan?.Plan ?? 0) ? OrderRow.Labelled
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
            Reasons = JsonSerializer.Serialize(hold?.Reasons ?? [], MessageJson.Options),
            ConfirmedAt = order.ConfirmedAtUnixMs,
            DecidedAt = (hold ?? plan)?.DecidedAtUnixMs,
            FinishedAt = finishedAt,
            Place = finishedAt is { } at ? OrderRow.AfterAllWaiting - at : order.ConfirmedAtUnixMs,
        };
    }

    /// <summary>Orders keeps the instants of the cutting service, so that these compare.</summary>
    private static ToldPlan? Plan(ToldPlan? told, HeardOrder? heard) =>
        heard is { PlannedAt: { } plannedAt, Rolls: { } rolls }
            && (told is null || heard.PlanNumber > told.Plan || (told.Rolls is null
                && plannedAt.ToUnixTimeMilliseconds() > told.DecidedAtUnixMs))
            ? new ToldPlan(plannedAt.ToUnixTimeMilliseconds(), rolls, [], heard.PlanNumber ?? 1)
            : told;

    /// <summary>The newest labels that can be fetched.</summary>
    private static ToldLabels? Labels(ToldLabels? told, HeardOrder? heard) =>
        heard is { LabelledAt: { } printedAt, Labels: { } labels }
            && (told?.Labels is null || heard.LabelsPlanNumber > told.Plan)
            ? new ToldLabels(
                printedAt.ToUnixTimeMilliseconds(), labels, heard.LabelsPlanNumber ?? 1)
            : told?.Labels is null ? null : told;

    /// <summary>
    /// Why it is parked, or null: cutting refused it, its labels failed, or Orders gave up waiting.
    /// </summary>
    private static ToldPlan? Hold(
        ToldPlan? plan, ToldLabels? told, ToldLabels? labels, HeardOrder? heard)
    {
        if (plan is { Rolls: null })
        {
            return plan;
        }

        if (told is { Labels: null } && told.Plan >= (plan?.Plan ?? 0)
            && told.Plan > (labels?.Plan ?? 0))
        {
            return new ToldPlan(told.PrintedAtUnixMs, null, told.Reasons ?? [], told.Plan);
        }

        var isParked = heard?.State == OrderRow.Parked
            && (labels is null || labels.Plan < (plan?.Plan ?? 0))
            && (plan is null || heard.ParkReasons.Any(reason => reason.Code == NoLabels));
        return isParked
            ? new ToldPlan(
                (heard!.WaitingSince ?? heard.AcceptedAt).ToUnixTimeMilliseconds(), null,
                [.. heard.ParkReasons.Select(reason => reason.Text)])
            : null;
    }
}
