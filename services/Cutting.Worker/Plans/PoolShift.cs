using System.ComponentModel;
using Microsoft.AspNetCore.Mvc;
using PostFrame.CuttingWorker.Queue;
using PostFrame.Messaging;
using PostFrame.Problems;

namespace PostFrame.CuttingWorker.Plans;

internal static class PoolShift
{
    private const int LongestNumber = 40;

    public static void MapShift(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/v1/cutting/shift", Compare)
            .WithGroupName("cutting").WithName("compareShift").WithTags("Shift")
            .WithSummary("What cutting orders together would save")
            .WithDescription(
                "Every order that is not begun, or those named, planned one by one, in growing "
                + "groups and all together, from new rolls. Nothing is changed.")
            .Produces<ShiftBody>()
            .MapRefusals(ProblemKind.StateConflict, ProblemKind.InvalidRequest,
                ProblemKind.TooManyRequests);
        routes.MapPost("/v1/cutting/shift", Answer)
            .NeedsKey()
            .Accepts<ShiftWish>("application/json")
            .WithGroupName("cutting").WithName("poolShift").WithTags("Shift")
            .WithSummary("Cut orders together")
            .WithDescription("The orders are planned anew, in groups or one plane at a time as "
                + "wished; each is announced again and its labels follow.")
            .Produces<PooledBody>()
            .MapRefusals(
                ProblemKind.IdempotencyKeyMissing, ProblemKind.StateConflict,
                ProblemKind.UnsupportedMediaType, ProblemKind.InvalidRequest,
                ProblemKind.StoreUnavailable);
    }

    private static async Task<IResult> Compare(
        [FromQuery(Name = "order"), Description("An order to compare; several may be given.")]
        string[] orders,
        HttpRequest request, Shift shift, CancellationToken stop)
    {
        _ = orders; // Documented here, read as strictly as a body.
        var query = new RequestQuery(request);
        var wanted = query.Texts("order", Shift.MostOrders);
        return query.Refusal()
            ?? await shift.CompareAsync(wanted.Count == 0 ? null : wanted, stop);
    }

    private static async Task<IResult> Answer(
        HttpContext context, PlanCutting planner,
        [FromKeyedServices(CuttingSetup.Service)] SqliteStore store)
    {
        var answer = await BenchRequest.AnswerOnceAsync<ShiftWish, PooledBody>(
            context, store, Read, Pool);
        planner.Wake();
        return answer;
    }

    private static ShiftWish? Read(RequestObject root)
    {
        var orders = root.OptionalTexts("orders", Shift.MostOrders, LongestNumber);
        var together = root.OptionalWhole("ordersTogether", 1, Shift.MostOrders, "orders");
        var onePlane = root.OptionalFlag("onePlaneAtATime");
        if (onePlane == true && together > 1)
        {
            root.Wrong(
                "ordersTogether", "apart", $"{together}",
                "One plane at a time, each order is planned by itself; leave this out.", "1",
                "orders");
        }

        return new ShiftWish(orders, onePlane == true ? 1 : together, onePlane);
    }

    private static BenchRequest.Outcome<PooledBody> Pool(
        StoreTransaction transaction, ShiftWish wish)
    {
        var (orders, refusal) = Shift.Choose(transaction, wish.Orders);
        if (refusal is not null)
        {
            return refusal;
        }

        foreach (var other in PlanStore.TakeApart(transaction, orders))
        {
            OrderStore.Wait(transaction, other);
        }

        var groups = orders.Chunk(wish.OrdersTogether ?? orders.Count).ToList();
        foreach (var group in groups)
        {
            var pool = Guid.NewGuid().ToString();
            foreach (var order in group)
            {
                OrderStore.Pool(transaction, order, pool, wish.OnePlaneAtATime ?? false);
            }
        }

        PlanStore.CountChange(transaction);
        return new PooledBody(orders, "waiting", groups);
    }
}
