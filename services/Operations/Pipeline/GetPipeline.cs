using System.ComponentModel;
using System.Globalization;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;
using PostFrame.Messaging;
using PostFrame.Problems;

namespace PostFrame.Operations.Pipeline;

internal static class GetPipeline
{
    private const int UsualLimit = 100;
    private const int MostLimit = 500;
    private const int LongestSearch = 100;
    private const int LongestMark = 100;

    private static readonly string[] States =
        [OrderRow.Confirmed, OrderRow.Planned, OrderRow.Labelled, OrderRow.Parked];

    public static void MapPipeline(this IEndpointRouteBuilder routes) =>
        routes.MapGet("/v1/pipeline", Answer)
            .WithGroupName(OperationsSetup.Name).WithName("getPipeline").WithTags("Pipeline")
            .WithSummary("Where every order stands, the longest waiting first")
            .MapRefusals(ProblemKind.InvalidRequest, ProblemKind.StoreUnavailable);

    private static Results<Ok<PipelineBody>, ProblemAnswer> Answer(
        [FromKeyedServices(OperationsSetup.Name)] SqliteStore store,
        [FromServices] DescribeOrders describe, HttpRequest request,
        [FromQuery, Description("Orders a page, 1 to 500; 100 unless given.")]
        string? limit,
        [FromQuery, Description("What next said on the page before.")]
        string? after,
        [FromQuery, Description("Only orders in this state: confirmed, planned, labelled, parked.")]
        string? state,
        [FromQuery, Description("Only orders with this text in their number, ship-to or building.")]
        string? search)
    {
        _ = (limit, after, state, search); // Documented here, read as strictly as a body.
        var query = new RequestQuery(request);
        var most = (int)(query.Whole("limit", 1, MostLimit, "orders") ?? UsualLimit);
        var start = Start(query);
        var only = query.Choice("state", States);
        var sought = query.Text("search", LongestSearch);
        if (query.Refusal() is { } refusal)
        {
            return refusal;
        }

        var text = string.IsNullOrWhiteSpace(sought) ? null : sought.Trim();
        try
        {
            return TypedResults.Ok(store.Read(view => Body(
                view, describe, PipelineStore.Page(view, start, only, text, most + 1), most)));
        }
        catch (StoreUnavailableException)
        {
            return StoreAway();
        }
    }

    public static ProblemAnswer StoreAway() => new(
        ProblemKind.StoreUnavailable, "The board's store does not answer just now.")
    {
        RetryAfterSeconds = 5,
    };

    private static PipelineBody Body(
        StoreTransaction view, DescribeOrders describe, IReadOnlyList<OrderRow> rows, int most) =>
        new()
        {
            Orders = [.. rows.Take(most).Select(row => describe.Order(row, view.NowUnixMs))],
            Next = rows.Count > most
                ? string.Create(
                    CultureInfo.InvariantCulture,
                    $"{rows[most - 1].Place}.{rows[most - 1].OrderNumber}")
                : null,
            Summary = DescribeOrders.Summary(view),
            LastEventId = EventId.Latest(view).ToString(),
            AsOf = DateTimeOffset.FromUnixTimeMilliseconds(view.NowUnixMs),
            Links = describe.Links,
        };

    private static PageStart Start(RequestQuery query)
    {
        if (query.Text("after", LongestMark) is not { } after)
        {
            return PageStart.OfAll;
        }

        var dot = after.IndexOf('.', StringComparison.Ordinal);
        if (dot > 0 && long.TryParse(
                after.AsSpan(0, dot), NumberStyles.None, CultureInfo.InvariantCulture,
                out var place))
        {
            return new PageStart(place, after[(dot + 1)..]);
        }

        query.Wrong(
            "after", "not-a-page-mark", after,
            $"\"{after}\" is no page mark. Send what next said on the page before.");
        return PageStart.OfAll;
    }
}
