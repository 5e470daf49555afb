using System.ComponentModel;
using PostFrame.CuttingWorker.Plans;
using PostFrame.Messaging;
using PostFrame.Problems;

namespace PostFrame.CuttingWorker.Queue;

/// <summary>An order that is planned again.</summary>
public sealed record RetryBody(
    string OrderNumber, [property: Description("Always waiting.")] string State);

internal static class RetryOrder
{
    public static void MapRetry(this IEndpointRouteBuilder routes) =>
        routes.MapPost("/v1/cutting/plans/{orderNumber}/retry", Answer)
            .WithGroupName("cutting").WithName("retryCuttingPlan").WithTags("Queue")
            .WithSummary("Plan a refused order again")
            .WithDescription("After rolls long enough, or of the product, came to the rack.")
            .Produces<RetryBody>()
            .MapRefusals(
                ProblemKind.PlanNotFound, ProblemKind.StateConflict,
                ProblemKind.StoreUnavailable);

    private static async Task<IResult> Answer(
        string orderNumber, HttpContext context, PlanCutting planner,
        [FromKeyedServices(CuttingSetup.Service)] SqliteStore store)
    {
        var answer = await BenchRequest.AnswerAsync(
            context, store, transaction => Retry(transaction, orderNumber));
        planner.Wake();
        return answer;
    }

    private static BenchRequest.Outcome<RetryBody> Retry(
        StoreTransaction transaction, string order)
    {
        switch (OrderStore.Find(transaction, order)?.State)
        {
            case null:
                return new ProblemAnswer(
                    ProblemKind.PlanNotFound, "No order with this number came to be cut.");
            case "planned":
                return new ProblemAnswer(
                    ProblemKind.StateConflict, $"Order {order} has its plan already.");
            default:
                OrderStore.Retry(transaction, order);
                return new RetryBody(order, "waiting");
        }
    }
}
