using System.Text.Json;
using PostFrame.Messaging;
using PostFrame.Operations.Messages;

namespace PostFrame.Operations.Pipeline;

/// <summary>What a message said of a revision, reduced to what the board needs.</summary>
internal sealed record Told
{
    public const string Order = "order";
    public const string Plan = "plan";
    public const string Labels = "labels";

    public required string OrderNumber { get; init; }

    public required long Revision { get; init; }

    public required string Kind { get; init; }

    /// <summary>Grows with what is decided, where clocks may not.</summary>
    public long Number { get; init; }

    public required long SaidAt { get; init; }

    public required string MessageId { get; init; }

    public required string Body { get; init; }

    public static Told By(OrderConfirmed message) => Of(
        message.Data.OrderNumber, message.Data.Revision, Order, message.Time, message.Id,
        new ToldOrder(
            message.Data.ShipTo.Name, message.Data.Building.Name, message.Data.Building.Summary,
            message.Data.NeededBy, message.Data.Pieces.Count,
            message.Data.ConfirmedAt.ToUnixTimeMilliseconds()));

    public static Told By(CuttingPlanned message) => Of(
        message.Data.OrderNumber, message.Data.Revision, Plan, message.Time, message.Id,
        new ToldPlan(
            message.Data.PlannedAt.ToUnixTimeMilliseconds(), message.Data.RollCount, [],
            message.Data.PlanNumber ?? 1),
        message.Data.PlanNumber ?? 1);

    public static Told By(CuttingRejected message) => Of(
        message.Data.OrderNumber, message.Data.Revision, Plan, message.Time, message.Id,
        new ToldPlan(
            message.Data.RejectedAt.ToUnixTimeMilliseconds(), null,
            [.. message.Data.Reasons.Select(reason => reason.Text)],
            message.Data.PlanNumber ?? 0),
        message.Data.PlanNumber ?? 0);

    public static Told By(LabelsPrinted message) => Of(
        message.Data.OrderNumber, message.Data.Revision, Labels, message.Time, message.Id,
        new ToldLabels(
            message.Data.PrintedAt.ToUnixTimeMilliseconds(), message.Data.LabelCount,
            message.Data.PlanNumber ?? 1),
        Done(message.Data.PlanNumber ?? 1));

    public static Told By(LabelsFailed message) => Of(
        message.Data.OrderNumber, message.Data.Revision, Labels, message.Time, message.Id,
        new ToldLabels(
            message.Data.FailedAt.ToUnixTimeMilliseconds(), null, message.Data.PlanNumber,
            [.. message.Data.Reasons.Select(reason => reason.Text)]),
        Done(message.Data.PlanNumber) - 1);

    /// <summary>Labels of a plan that could be drawn after all end its failure for good.</summary>
    private static long Done(int plan) => (plan * 2L) + 1;

    /// <summary>Any message of the service itself counts as said later than this.</summary>
    public static Told By(HeardOrder order) => new()
    {
        OrderNumber = order.OrderNumber,
        Revision = order.Revision,
        Kind = Order,
        SaidAt = order.Change - OrderRow.AfterAllWaiting,
        MessageId = "",
        Body = JsonSerializer.Serialize(
            new ToldOrder(
                order.ShipTo.Name, order.Building.Name, order.Building.Summary, order.NeededBy,
                order.Pieces, order.AcceptedAt.ToUnixTimeMilliseconds()),
            MessageJson.Options),
    };

    public TBody Read<TBody>() =>
        JsonSerializer.Deserialize<TBody>(Body, MessageJson.Options)!;

    private static Told Of<TBody>(
        string order, int revision, string kind, DateTimeOffset saidAt, Guid messageId, TBody body,
        long number = 0)
    {
        if (revision < 1 || string.IsNullOrWhiteSpace(order))
        {
            throw new InvalidOperationException(
                $"The {kind} message {messageId} names order \"{order}\", revision {revision}; "
                + "an order number and a revision of at least 1 are needed.");
        }

        return new Told
        {
            OrderNumber = order,
            Revision = revision,
            Kind = kind,
            Number = number,
            SaidAt = saidAt.ToUnixTimeMilliseconds(),
            MessageId = messageId.ToString(),
            Body = JsonSerializer.Serialize(body, MessageJson.Options),
        };
    }
}

internal sealed record ToldOrder(
    string ShipTo, string Building, string Summary, DateOnly NeededBy, int Pieces,
    long ConfirmedAtUnixMs);

/// <summary>What cutting decided: rolls, or the reasons why it cannot be planned.</summary>
internal sealed record ToldPlan(
    long DecidedAtUnixMs, int? Rolls, IReadOnlyList<string> Reasons, long Plan = 1);

/// <summary>The labels of a plan, or the reasons why they cannot be drawn.</summary>
internal sealed record ToldLabels(
    long PrintedAtUnixMs, int? Labels, long Plan = 1, IReadOnlyList<string>? Reasons = null);
