using System.Text.Json;
using Microsoft.Extensions.DependencyInjection;
using PostFrame.Messaging;
using PostFrame.Problems;

namespace PostFrame.OrdersApi.Orders;

/// <summary>The orders as they stand: one with its history, or many.</summary>
public sealed class ReadOrders([FromKeyedServices(OrdersSetup.Service)] SqliteStore store)
{
    private const int MostListed = 500;
    private const int UsuallyListed = 100;
    private static readonly string[] States = ["confirmed", "planned", "labelled", "parked"];

    public IResult One(string orderNumber)
    {
        var order = store.Read(view => OrderStore.Find(view, orderNumber) is { } row
            ? OrderLine.From(row) with
            {
                History = [.. OrderStore.HistoryOf(view, row.Seq).Select(entry => new HistoryLine(
                    OrderLine.At(entry.At), (int)entry.Revision, entry.Event, entry.Text))],
            }
            : null);
        return order is null
            ? Unknown
            : TypedResults.Json(order, MessageJson.Options);
    }

    public static ProblemAnswer Unknown => new(
        ProblemKind.OrderNotFound, "No order with the number in the address was accepted.");

    public IResult Many(HttpRequest request)
    {
        var query = new RequestQuery(request);
        var limit = query.Whole("limit", 1, MostListed, "orders") ?? UsuallyListed;
        var before = query.Whole("before", 1, long.MaxValue) ?? long.MaxValue;
        var after = query.Whole("changedAfter", 0, long.MaxValue) ?? -1;
        var state = query.Choice("state", States);
        if (query.Refusal() is { } refusal)
        {
            return refusal;
        }

        return after >= 0
            ? Listed(
                store.Read(view => OrderStore.ChangedAfter(view, after, (int)limit)), limit,
                last => $"?changedAfter={last.ChangeNo}&limit={limit}")
            : Listed(
                store.Read(view => OrderStore.Newest(
                    view, before, state, (int)limit)),
                limit,
                last => $"?before={last.Seq}&limit={limit}"
                    + (state is null ? "" : $"&state={state}"));
    }

    /// <summary>All orders changed since, up to a page full, as the list's body.</summary>
    public byte[] ChangedAfter(long change) => JsonSerializer.SerializeToUtf8Bytes(
        List(
            store.Read(view => OrderStore.ChangedAfter(view, change, MostListed)), MostListed,
            last => $"?changedAfter={last.ChangeNo}&limit={MostListed}"),
        MessageJson.Options);

    private static IResult Listed(
        IReadOnlyList<OrderRow> rows, long limit, Func<OrderRow, string> next) =>
        TypedResults.Json(List(rows, limit, next), MessageJson.Options);

    private static OrderList List(
        IReadOnlyList<OrderRow> rows, long limit, Func<OrderRow, string> next) => new(
            [.. rows.Select(OrderLine.From)],
            rows.Count == limit ? "/v1/orders" + next(rows[^1]) : null);
}
