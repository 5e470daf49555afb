using System.Text.Json;
using PostFrame.CuttingWorker.Messages;
using PostFrame.Messaging;

namespace PostFrame.ServicesTests.Cutting;

/// <summary>The order of <c>contracts/messages</c> (W1: 46 pieces), and variations of it.</summary>
internal static class ExampleOrders
{
    public const long NmPerInch = 25_400_000;

    public static OrderConfirmed W1 { get; } = Read();

    /// <summary>The same building under another number, with piece ids of its own.</summary>
    public static OrderConfirmed Numbered(string number, int minutesLater = 0)
    {
        var tag = number.Split('-')[^1];
        return W1 with
        {
            Id = Guid.NewGuid(),
            Subject = $"{number}/1",
            Data = W1.Data with
            {
                OrderNumber = number,
                ConfirmedAt = W1.Data.ConfirmedAt.AddMinutes(minutesLater),
                Pieces = [.. W1.Data.Pieces.Select(
                    (piece, index) => piece with { PieceId = $"{tag}-{index:000}" })],
            },
        };
    }

    public static OrderConfirmed Revised(
        this OrderConfirmed order, Func<OrderConfirmed.Confirmed, OrderConfirmed.Confirmed> change)
    {
        var data = change(order.Data) with { Revision = order.Data.Revision + 1 };
        return order with
        {
            Id = Guid.NewGuid(),
            Subject = $"{data.OrderNumber}/{data.Revision}",
            Data = data,
        };
    }

    private static OrderConfirmed Read()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "PostFrameServices.sln")))
        {
            folder = folder.Parent!;
        }

        var path = Path.Combine(
            folder.FullName, "contracts", "messages", "order-confirmed.v1.example.json");
        return JsonSerializer.Deserialize<OrderConfirmed>(
            File.ReadAllText(path), MessageJson.Options)!;
    }
}
