using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using PostFrame.Problems;

namespace PostFrame.OrdersApi.Orders;

/// <summary>
/// An order as sent. Building, insulation and practice are sizing's to judge: they are passed on
/// as they stand, so its pointers into them are right for this request too.
/// </summary>
internal sealed partial record OrderRequest
{
    private const int LongestShipTo = 120;
    private const int MostYears = 10;
    private static readonly string[] ForSizing = ["building", "insulation", "practice"];

    public required string? OrderNumber { get; init; }

    public required DateOnly? NeededBy { get; init; }

    public required string? ShipTo { get; init; }

    /// <summary>What sizing is asked.</summary>
    public required byte[] Sizing { get; init; }

    /// <summary>Reads the members that are not sizing's; what is wrong is noted in the
    /// request's mistakes.</summary>
    public static OrderRequest Read(
        JsonRequest request, ReadOnlyMemory<byte> body, DateOnly today)
    {
        var root = request.Root;
        var shipTo = root.Object("shipTo");
        var order = new OrderRequest
        {
            OrderNumber = NumberIn(root),
            NeededBy = NeededByIn(root, today),
            ShipTo = shipTo.Text("name", LongestShipTo),
            Sizing = SizingPart(body, root),
        };
        shipTo.Close();
        root.Close();
        return order;
    }

    private static string? NumberIn(RequestObject root)
    {
        var number = root.Text("orderNumber");
        if (number is null || OrderNumberForm().IsMatch(number))
        {
            return number;
        }

        root.Wrong(
            "orderNumber", "order-number", number,
            "An order number has 1 to 40 letters, digits, dots, dashes or underscores and starts "
            + "with a letter or digit.", "40", "characters");
        return null;
    }

    private static DateOnly? NeededByIn(RequestObject root, DateOnly today)
    {
        var date = root.Date("neededBy");
        var (earliest, latest) = (today.AddYears(-MostYears), today.AddYears(MostYears));
        if (date is null || (date >= earliest && date <= latest))
        {
            return date;
        }

        var bound = date < earliest ? earliest : latest;
        root.Wrong(
            "neededBy", date < earliest ? "at-least" : "at-most",
            date.Value.ToString("O", CultureInfo.InvariantCulture),
            $"The day is more than {MostYears} years from today.",
            bound.ToString("O", CultureInfo.InvariantCulture), "date");
        return null;
    }

    private static byte[] SizingPart(ReadOnlyMemory<byte> body, RequestObject root)
    {
        var sent = ForSizing.Where(root.Has).ToList();
        if (sent.Count == 0)
        {
            return "{}"u8.ToArray();
        }

        using var whole = JsonDocument.Parse(WithoutMark(body));
        return Encoding.UTF8.GetBytes("{" + string.Join(",", sent.Select(
            name => $"\"{name}\":{whole.RootElement.GetProperty(name).GetRawText()}")) + "}");
    }

    private static ReadOnlyMemory<byte> WithoutMark(ReadOnlyMemory<byte> body) =>
        body.Span.StartsWith("\uFEFF"u8) ? body[3..] : body;

    [GeneratedRegex("^[A-Za-z0-9][A-Za-z0-9._-]{0,39}$")]
    private static partial Regex OrderNumberForm();
}
