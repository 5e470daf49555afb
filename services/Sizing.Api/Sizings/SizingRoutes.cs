using PostFrame.Documents;
using PostFrame.Problems;
using PostFrame.SizingApi.ApiPages;
using PostFrame.SizingApi.Drawings;
using PostFrame.SizingApi.Prices;

namespace PostFrame.SizingApi.Sizings;

/// <summary>The two operations on a sizing request: the take-off, and its drawing.</summary>
internal static class SizingRoutes
{
    private const string Json = "application/json";
    private const string Svg = "image/svg+xml";
    private const string Pdf = "application/pdf";

    public static void MapSizings(this IEndpointRouteBuilder routes)
    {
        routes.MapPost("/v1/sizings", (HttpContext context, ShopPrices prices) =>
                Answer(context, prices, Json, Svg, Pdf))
            .Described("size", "Take a building off")
            .WithDescription(
                "A building and what it is insulated with; back come the pieces to cut and how "
                + "each length came about. Stateless: the same request gives the same bytes. "
                + "Accept image/svg+xml or application/pdf gives the flat map instead.")
            .Produces<TakeOffBody>(200, Json);

        routes.MapPost("/v1/sizings/drawing", (HttpContext context, ShopPrices prices) =>
                Answer(context, prices, Svg, Pdf))
            .Described("draw", "Draw the flat map")
            .WithDescription(
                "Every plane unfolded and true to scale with its strips, their marks and lengths, "
                + "openings, laps and ridge vent. Legible in black and white.")
            .Produces(200, contentType: Svg, additionalContentTypes: Pdf);
    }

    private static RouteHandlerBuilder Described(
        this RouteHandlerBuilder route, string name, string summary)
    {
        route.Accepts<SizingRequest>(Json)
            .WithGroupName("sizing").WithName(name).WithTags("Sizings").WithSummary(summary)
            .MapRefusals(
                ProblemKind.MalformedJson, ProblemKind.NotAcceptable, ProblemKind.BodyTooLarge,
                ProblemKind.UnsupportedMediaType, ProblemKind.InvalidRequest);
        return route;
    }

    private static async Task<IResult> Answer(
        HttpContext context, ShopPrices prices, params string[] forms)
    {
        if (MediaTypes.Preferred(context.Request, forms) is not { } form)
        {
            return MediaTypes.NoneOf(forms);
        }

        var body = await RequestBody.ReadAsync(context.Request, context.RequestAborted);
        if (body.Refusal is { } refusal)
        {
            return refusal;
        }

        if (form == Json)
        {
            var answer = Sizings.Answer(
                body.Json, prices.List, ProblemAnswer.TraceIdOf(context));
            return new WireAnswer(
                answer.Status, answer.Body, answer.Status == 200 ? Json : ProblemAnswer.MediaType);
        }

        var asked = Sizings.Ask(body.Json, prices.List);
        if (asked.Refusal is { } problem)
        {
            return problem;
        }

        var map = DrawMap.Of(asked.Result!);
        return new WireAnswer(200, form == Svg ? FlatMap.Svg(map) : FlatMap.Pdf(map), form);
    }

    /// <summary>
    /// Bytes with their status; TypedResults has no such answer for other than 200.
    /// </summary>
    private sealed class WireAnswer(int status, byte[] body, string mediaType) : IResult
    {
        public Task ExecuteAsync(HttpContext httpContext)
        {
            var response = httpContext.Response;
            response.StatusCode = status;
            response.ContentType = mediaType;
            response.ContentLength = body.Length;
            return response.Body.WriteAsync(body, httpContext.RequestAborted).AsTask();
        }
    }
}
