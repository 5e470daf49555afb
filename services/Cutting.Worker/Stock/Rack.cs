using System.ComponentModel;
using Microsoft.AspNetCore.Http.HttpResults;
using PostFrame.CuttingWorker.Plans;
using PostFrame.Messaging;
using PostFrame.Problems;

namespace PostFrame.CuttingWorker.Stock;

/// <summary>Rolls that came in, all alike.</summary>
public sealed record ReceiptWish(
    [property: Description("A code of GET /v1/products.")] string Product,
    [property: Description("Nominal width: \"48 in\".")] string RollWidth,
    [property: Description("As labelled: \"100 ft\".")] string RollLength,
    [property: Description("Lost once to square the end. Default \"6 in\".")]
    string? EndTrim = null,
    [property: Description("The maker's lot, where it matters.")] string? Lot = null,
    [property: Description("How many, 1 to 500. Default 1.")] int? Count = null);

internal static class Rack
{
    private const int MostListed = 1000;
    private const int MostReceived = 500;

    /// <summary>Shop setting, common practice: enough to square a torn end [nm].</summary>
    private const long DefaultEndTrimNm = 6 * 25_400_000L;

    private const long LongestNm = 1_000_000_000_000;

    public static void MapRack(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/v1/cutting/stock", List)
            .WithGroupName("cutting").WithName("getStock").WithTags("Stock")
            .WithSummary("What lies on the rack, oldest first");
        routes.MapPost("/v1/cutting/stock", Answer)
            .NeedsKey()
            .Accepts<ReceiptWish>("application/json")
            .WithGroupName("cutting").WithName("receiveStock").WithTags("Stock")
            .WithSummary("Put rolls that came in on the rack")
            .WithDescription(
                "Each roll gets a stock id for its label. Plans use the rack before they ask for "
                + "new rolls: offcuts first, then the oldest roll.")
            .Produces<RackBody>()
            .MapRefusals(
                ProblemKind.IdempotencyKeyMissing, ProblemKind.UnsupportedMediaType,
                ProblemKind.InvalidRequest, ProblemKind.StoreUnavailable);
    }

    private static Ok<RackBody> List([FromKeyedServices(CuttingSetup.Service)] SqliteStore store)
    {
        var rows = store.Read(view => StockStore.Rack(view, MostListed + 1));
        return TypedResults.Ok(new RackBody
        {
            Stock = [.. rows.Take(MostListed).Select(StockBody.Of)],
            HasMore = rows.Count > MostListed,
        });
    }

    private static Task<IResult> Answer(
        HttpContext context, [FromKeyedServices(CuttingSetup.Service)] SqliteStore store) =>
        BenchRequest.AnswerOnceAsync<Receipt, RackBody>(context, store, Read, Receive);

    private static Receipt? Read(RequestObject root)
    {
        var product = root.Text("product", 80);
        var width = Positive(root, "rollWidth", root.Length("rollWidth")?.Nanometres);
        var length = Positive(root, "rollLength", root.Length("rollLength")?.Nanometres);
        var trim = root.OptionalLength("endTrim")?.Nanometres ?? DefaultEndTrimNm;
        var lot = root.OptionalText("lot", 40);
        var count = root.OptionalWhole("count", 1, MostReceived, "rolls") ?? 1;
        if (length is { } labelled && (trim < 0 || trim >= labelled))
        {
            root.Wrong(
                "endTrim", "end-trim", Words.Length(Math.Abs(trim)),
                "The end trim is 0 or more and less than the roll.", Words.Length(labelled));
        }

        return product is null || width is null || length is null
            ? null
            : new Receipt(product, width.Value, length.Value, trim, lot, count);
    }

    private static long? Positive(RequestObject root, string name, long? lengthNm)
    {
        if (lengthNm is null or (> 0 and <= LongestNm))
        {
            return lengthNm;
        }

        root.Wrong(
            name, "range", Words.Length(Math.Abs(lengthNm.Value)),
            "A roll is more than 0 and at most 1000 m long and wide.", "1000", "m");
        return null;
    }

    private static BenchRequest.Outcome<RackBody> Receive(
        StoreTransaction transaction, Receipt receipt)
    {
        var ids = Enumerable.Range(0, receipt.Count).Select(_ => StockStore.Add(
            transaction, new NewStock
            {
                Product = receipt.Product,
                WidthNm = receipt.WidthNm,
                LengthNm = receipt.LengthNm,
                EndTrimNm = receipt.EndTrimNm,
                Lot = receipt.Lot,
            })).ToList();
        PlanStore.CountChange(transaction);
        return new RackBody
        {
            Stock = [.. ids.Select(id => StockBody.Of(StockStore.Find(transaction, id)))],
            HasMore = false,
        };
    }

    private sealed record Receipt(
        string Product, long WidthNm, long LengthNm, long EndTrimNm, string? Lot, int Count);
}
