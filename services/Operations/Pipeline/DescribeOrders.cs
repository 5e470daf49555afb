using System.Globalization;
using System.Text.Json;
using Microsoft.Extensions.Options;
using PostFrame.Messaging;

namespace PostFrame.Operations.Pipeline;

/// <summary>Says what the store knows in the words of the API.</summary>
internal sealed class DescribeOrders(IOptions<LinkOptions> options)
{
    private readonly LinkOptions _links = options.Value;

    public PipelineLinks Links => new()
    {
        Desk = _links.Desk + "/",
        CuttingQueue = _links.Cutting + "/v1/cutting/queue",
        Shift = _links.Cutting + "/v1/cutting/shift",
    };

    public static PipelineSummary Summary(StoreTransaction view)
    {
        var counts = PipelineStore.Counts(view);
        int Of(string state) => (int)counts.Where(count => count.State == state)
            .Sum(count => count.Orders);
        var waiting = counts.Where(count => count.State != OrderRow.Labelled).ToList();
        return new PipelineSummary
        {
            Orders = (int)counts.Sum(count => count.Orders),
            Confirmed = Of(OrderRow.Confirmed),
            Planned = Of(OrderRow.Planned),
            Labelled = Of(OrderRow.Labelled),
            Parked = Of(OrderRow.Parked),
            OldestWaitingSince = waiting.Count == 0
                ? null
                : Instant(waiting.Min(count => count.OldestConfirmedAt)),
        };
    }

    public TrackedOrder Order(OrderRow row, long nowUnixMs)
    {
        var waits = row.State != OrderRow.Labelled;
        return new TrackedOrder
        {
            OrderNumber = row.OrderNumber,
            Revision = (int)row.Revision,
            ShipTo = row.ShipTo,
            Building = row.Building,
            BuildingSummary = row.Summary,
            NeededBy = DateOnly.Parse(row.NeededBy, CultureInfo.InvariantCulture),
            Pieces = (int)row.Pieces,
            Rolls = (int?)row.Rolls,
            Labels = (int?)row.Labels,
            State = row.State,
            Reasons = JsonSerializer.Deserialize<List<string>>(
                row.Reasons, MessageJson.Options)!,
            WaitingSince = waits ? Instant(row.ConfirmedAt) : null,
            WaitingSeconds = waits ? Math.Max(0, nowUnixMs - row.ConfirmedAt) / 1000 : null,
            ConfirmedAt = Instant(row.ConfirmedAt),
            PlannedAt = row.Rolls is null || row.State == OrderRow.Parked
                ? null
                : InstantOrNull(row.DecidedAt),
            ParkedAt = row.State == OrderRow.Parked ? InstantOrNull(row.DecidedAt) : null,
            FinishedAt = InstantOrNull(row.FinishedAt),
            Links = LinksOf(row),
        };
    }

    private OrderLinks LinksOf(OrderRow row)
    {
        var number = Uri.EscapeDataString(row.OrderNumber);
        var order = $"{_links.Orders}/v1/orders/{number}";
        var labels = row.Labels is null ? null : $"{_links.Labels}/v1/labels/{number}";
        return new OrderLinks
        {
            Order = order,
            Plan = row.Rolls is null ? null : $"{_links.Cutting}/v1/cutting/plans/{number}",
            Labels = labels is null ? null : labels + ".pdf",
            Checklist = labels is null ? null : labels + "/checklist.pdf",
            TryAgain = row.State == OrderRow.Parked ? order + "/retry" : null,
        };
    }

    private static DateTimeOffset? InstantOrNull(long? unixMs) =>
        unixMs is { } known ? Instant(known) : null;

    private static DateTimeOffset Instant(long unixMs) =>
        DateTimeOffset.FromUnixTimeMilliseconds(unixMs);
}
