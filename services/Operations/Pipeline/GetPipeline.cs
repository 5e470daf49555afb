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

    private static readonly string[] States =
        [OrderRow.Confirmed, OrderRow.Planned, OrderRow.Labelled, OrderRow.Parked];

    public static void MapPipeline(this IEndpointRouteBuilder routes) =>
        routes.MapGet("/v1/pipeline", Answer)
            .WithGroupName(OperationsSetup.Name).WithName("getPipeline").WithTags("Pipeline")
            .WithSummary("Where every order stands, the longest waiting first")
            .MapRefusals(ProblemKind.InvalidRequest, ProblemKind.StoreUnavailable);

    private static Results<Ok<PipelineBody>, ProblemAnswer> Answer(
        [FromKeyedServices(OperationsSetup.Name)] SqliteStore store,
        [FromServices] DescribeOrders describe,
        [FromQuery, Description("Orders a page, 1 to 500; 100 unless given.")]
        string? limit,
        [FromQuery, Description("What next said on the page before.")]
        string? after,
        [FromQuery, Description("Only orders in this state: confirmed, planned, labelled, parked.")]
        string? state,
        [FromQuery, Description("Only orders with this text in their number, ship-to or building.")]
        string? search)
    {
        var mistakes = new Mistakes();
        var most = Limit(limit, mistakes);
        var start = Start(after, mistakes);
        if (state is not null && !States.Contains(state))
        {
            mistakes.Add(
                "/state", "unknown-word", state,
                $"The state \"{state}\" is none of {string.Join(", ", States)}.",
                string.Join(", ", States));
        }

        if (search?.Length > LongestSearch)
        {
            mistakes.Add(
                "/search", "text-too-long", search,
                $"The text to search for is {search.Length} characters long, at most "
                + $"{LongestSearch}.", $"{LongestSearch}", "characters");
        }

        if (mistakes.Any)
        {
            return ProblemAnswer.Invalid(mistakes);
        }

        var text = string.IsNullOrWhiteSpace(search) ? null : search.Trim();
        try
        {
            return TypedResults.Ok(store.Read(view => Body(
                view, describe, PipelineStore.Page(view, start, state, text, most + 1), most)));
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

    private static int Limit(string? limit, Mistakes mistakes)
    {
        if (limit is null)
        {
            return UsualLimit;
        }

        if (int.TryParse(limit, NumberStyles.None, CultureInfo.InvariantCulture, out var most)
            && most is >= 1 and <= MostLimit)
        {
            return most;
        }

        mistakes.Add(
            "/limit", "out-of-range", limit,
            $"The limit \"{limit}\" is not a whole number from 1 to {MostLimit}.",
            $"1 to {MostLimit}", "orders");
        return UsualLimit;
    }

    private static PageStart Start(string? after, Mistakes mistakes)
    {
        if (after is null)
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

        mistakes.Add(
            "/after", "not-a-page-mark", after,
            $"\"{after}\" is no page mark. Send what next said on the page before.");
        return PageStart.OfAll;
    }
}
