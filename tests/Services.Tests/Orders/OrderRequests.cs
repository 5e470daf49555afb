using System.Text;
using System.Text.Json.Nodes;

namespace PostFrame.ServicesTests.Orders;

/// <summary>
/// Orders to post: the committed example, and a small shed that is quick to make.
/// </summary>
internal static class OrderRequests
{
    public static byte[] Example { get; } = File.ReadAllBytes(
        Path.Combine(Root(), "contracts", "examples", "w1-plain-gable.order.json"));

    /// <summary>A 12 by 16 ft shed: some 16 pieces.</summary>
    public static byte[] Shed(string orderNumber) => Changed(order =>
    {
        order["orderNumber"] = orderNumber;
        order["building"]!["width"] = "12 ft";
        order["building"]!["length"] = "16 ft";
        order["building"]!["eaveHeight"] = "8 ft";
        order["building"]!["openings"] = new JsonArray();
    });

    public static byte[] Changed(Action<JsonNode> change)
    {
        var order = JsonNode.Parse(Example)!;
        change(order);
        return Encoding.UTF8.GetBytes(order.ToJsonString());
    }

    private static string Root()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!Directory.Exists(Path.Combine(folder.FullName, "contracts")))
        {
            folder = folder.Parent
                ?? throw new InvalidOperationException("No contracts folder above the tests.");
        }

        return folder.FullName;
    }
}
