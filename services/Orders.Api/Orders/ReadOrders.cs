using System.Globalization;
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
        var mistakes = new Mistakes();
        var limit = Number(request, "limit", UsuallyListed, 1, MostListed, mistakes);
        var before = Number(request, "before", long.MaxValue, 1, long.MaxValue, mistakes);
        var after = Number(request, "changedAfter", -1, 0, long.MaxValue, mistakes);
        var state = request.Query["state"].ToString();
        if (state.Length > 0 && !States.Contains(state))
        {
            mistakes.Add(
                "/state", "choice", state, $"state must be one of {string.Join(", ", States)}.",
                string.Join(", ", States));
        }

        if (mistakes.Any)
        {
            return ProblemAnswer.Invalid(mistakes);
        }

        return after >= 0
            ? Listed(
                store.Read(view => OrderStore.ChangedAfter(view, after, (int)limit)), limit,
                last => $"?changedAfter={last.ChangeNo}&limit={limit}")
            : Listed(
                store.Read(view => OrderStore.Newest(
                    view, before, state.Length > 0 ? state : null, (int)limit)),
                limit,
                last => $"?before={last.Seq}&limit={limit}"
                    + (state.Length > 0 ? $"&state={state}" : ""));
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

    private static long Number(
        HttpRequest request, string name, long usual, long least, long most, Mistakes mistakes)
    {
        if (!request.Query.TryGetValue(name, out var sent))
        {
            return usual;
        }

        if (long.TryParse(
                sent.ToString(), NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            && number >= least && number <= most)
        {
            return number;
        }

        mistakes.Add(
            "/" + name, "whole-number", sent.ToString(),
            $"{name} must be a whole number from {least} to {most}.", $"{least} to {most}");
        return usual;
    }
}
