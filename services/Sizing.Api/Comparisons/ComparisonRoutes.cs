using PostFrame.Problems;
using PostFrame.SizingApi.Prices;

namespace PostFrame.SizingApi.Comparisons;

/// <summary>Options and quotes rebuilt on one basis.</summary>
internal static class ComparisonRoutes
{
    private const string Json = "application/json";
    private const string Svg = "image/svg+xml";

    public static void MapComparisons(this IEndpointRouteBuilder routes) =>
        routes.MapPost("/v1/comparisons", (Delegate)Answer)
            .Accepts<ComparisonRequest>(Json)
            .Produces<ComparisonBody>(200, Json)
            .WithGroupName("sizing").WithName("compare").WithTags("Comparisons")
            .WithSummary("Rebuild options and quotes on one basis")
            .WithDescription(
                "Our options and any rival lines as they were typed. Each is rebuilt in the same "
                + "plane, frame and weather: material R, assembly R in winter and in summer, "
                + "moisture month by month, code, price per covered square foot, and what the "
                + "claim amounts to. What was not said stays blank and is asked in questions. With "
                + "\"working\": true every number is opened to formula, inputs, source and mark. "
                + "Accept image/svg+xml gives the lines side by side as a picture.")
            .MapRefusals(
                ProblemKind.MalformedJson, ProblemKind.NotAcceptable, ProblemKind.BodyTooLarge,
                ProblemKind.UnsupportedMediaType, ProblemKind.InvalidRequest);

    private static async Task<IResult> Answer(HttpContext context, ShopPrices prices)
    {
        if (MediaTypes.Preferred(context.Request, Json, Svg) is not { } form)
            return MediaTypes.NoneOf(Json, Svg);
        var body = await RequestBody.ReadAsync(context.Request, context.RequestAborted);
        if (body.Refusal is { } unread) return unread;
        var (bytes, refusal) = form == Json
            ? Comparisons.Answer(body.Json, prices.List)
            : Comparisons.Picture(body.Json, prices.List);
        return bytes is null ? refusal! : TypedResults.Bytes(bytes, form);
    }
}
