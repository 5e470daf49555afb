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
            message.Data.PlannedAt.ToUnixTimeMilliseconds(), message.Data.RollCount, []));

    public static Told By(CuttingRejected message) => Of(
        message.Data.OrderNumber, message.Data.Revision, Plan, message.Time, message.Id,
        new ToldPlan(
            message.Data.RejectedAt.ToUnixTimeMilliseconds(), null,
            [.. message.Data.Reasons.Select(reason => reason.Text)]));

    public static Told By(LabelsPrinted message) => Of(
        message.Data.OrderNumber, message.Data.Revision, Labels, message.Time, message.Id,
        new ToldLabels(
            message.Data.PrintedAt.ToUnixTimeMilliseconds(), message.Data.LabelCount));

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
        string order, int revision, string kind, DateTimeOffset saidAt, Guid messageId, TBody body)
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
internal sealed record ToldPlan(long DecidedAtUnixMs, int? Rolls, IReadOnlyList<string> Reasons);

internal sealed record ToldLabels(long PrintedAtUnixMs, int Labels);
