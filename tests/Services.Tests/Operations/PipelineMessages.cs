using System.Text.Json;
using PostFrame.Messaging;
using PostFrame.Operations.Messages;

namespace PostFrame.ServicesTests.Operations;

/// <summary>The messages of <c>contracts/messages</c>, and variations of them.</summary>
internal static class PipelineMessages
{
    public static OrderConfirmed Confirmed { get; } = Read<OrderConfirmed>("order-confirmed");

    public static CuttingPlanned Planned { get; } = Read<CuttingPlanned>("cutting-planned");

    public static CuttingRejected Rejected { get; } = Read<CuttingRejected>("cutting-rejected");

    public static LabelsFailed Failed { get; } = Read<LabelsFailed>("labels-failed");

    public static LabelsPrinted Printed { get; } = Read<LabelsPrinted>("labels-printed");

    public static OrderConfirmed ConfirmedOf(string order, int revision = 1, int minute = 0) =>
        Confirmed with
        {
            Id = Guid.NewGuid(),
            Time = Confirmed.Time.AddMinutes(minute),
            Data = Confirmed.Data with
            {
                OrderNumber = order,
                Revision = revision,
                ConfirmedAt = Confirmed.Data.ConfirmedAt.AddMinutes(minute),
                ShipTo = new() { Name = "Cedar Bend Farm" },
            },
        };

    public static CuttingPlanned PlannedOf(
        string order, int revision = 1, int minute = 0, int rolls = 8, int plan = 1) =>
        Planned with
        {
            Id = Guid.NewGuid(),
            Time = Planned.Time.AddMinutes(minute),
            Data = Planned.Data with
            {
                OrderNumber = order,
                Revision = revision,
                PlannedAt = Planned.Data.PlannedAt.AddMinutes(minute),
                PlanNumber = plan,
                RollCount = rolls,
            },
        };

    public static CuttingRejected RejectedOf(string order, int revision = 1, int minute = 0) =>
        Rejected with
        {
            Id = Guid.NewGuid(),
            Time = Planned.Time.AddMinutes(minute),
            Data = Rejected.Data with { OrderNumber = order, Revision = revision },
        };

    public static LabelsPrinted PrintedOf(
        string order, int revision = 1, int minute = 0, int plan = 1) =>
        Printed with
        {
            Id = Guid.NewGuid(),
            Time = Printed.Time.AddMinutes(minute),
            Data = Printed.Data with
            {
                OrderNumber = order,
                Revision = revision,
                PlanNumber = plan,
            },
        };

    public static LabelsFailed FailedOf(string order, int plan = 1, int minute = 0) =>
        Failed with
        {
            Id = Guid.NewGuid(),
            Time = Printed.Time.AddMinutes(minute),
            Data = Failed.Data with { OrderNumber = order, PlanNumber = plan },
        };

    private static TMessage Read<TMessage>(string name)
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!Directory.Exists(Path.Combine(folder.FullName, "contracts", "messages")))
        {
            folder = folder.Parent
                ?? throw new InvalidOperationException("contracts/messages is nowhere above.");
        }

        var path = Path.Combine(
            folder.FullName, "contracts", "messages", name + ".v1.example.json");
        return JsonSerializer.Deserialize<TMessage>(File.ReadAllText(path), MessageJson.Options)!;
    }
}
