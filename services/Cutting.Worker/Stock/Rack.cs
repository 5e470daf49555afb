using System.ComponentModel;
using Microsoft.AspNetCore.Http.HttpResults;
using PostFrame.CuttingWorker.Planning;
using PostFrame.CuttingWorker.Plans;
using PostFrame.Messaging;
using PostFrame.Problems;

namespace PostFrame.CuttingWorker.Stock;

/// <summary>Rolls that came in, all alike.</summary>
public sealed record ReceiptWish(
    [property: Description("A code of GET /v1/products that comes on rolls.")] string Product,
    [property: Description("Nominal width the product comes in: \"48 in\".")] string RollWidth,
    [property: Description("As labelled: \"100 ft\".")] string RollLength,
    [property: Description("Lost once to square the end. Default \"6 in\".")]
    string? EndTrim = null,
    [property: Description("The maker's lot. A plane whose film is seen is cut from one lot.")]
    string? Lot = null,
    [property: Description("When they came, such as 2026-11-25: the oldest are cut first. "
        + "Default today.")]
    string? ReceivedOn = null,
    [property: Description("How many, 1 to 500. Default 1; with flaws only 1.")]
    int? Count = null,
    [property: Description("Factory splices and flaws from the outer end on: no piece holds one. "
        + "The sound parts of 6 ft and more come to the rack, each with its own label.")]
    IReadOnlyList<FlawWish>? Flaws = null);

/// <summary>Where a roll must be cut apart.</summary>
public sealed record FlawWish(
    [property: Description("From the outer end of the roll: \"40 ft\".")] string At,
    [property: Description("What is cut out. Default nothing: a splice.")] string? Length = null);

internal static class Rack
{
    private const int MostListed = 1000;

    /// <summary>
    /// A shorter part of a roll with flaws is not kept: common practice, as for an offcut [nm].
    /// </summary>
    private const long LeastPartNm = 72 * 25_400_000L;

    public static void MapRack(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/v1/cutting/stock", List)
            .WithGroupName("cutting").WithName("getStock").WithTags("Stock")
            .WithSummary("What lies on the rack, oldest first")
            .MapRefusals(ProblemKind.InvalidRequest);
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

    private static Results<Ok<RackBody>, ProblemAnswer> List(
        HttpRequest request, [FromKeyedServices(CuttingSetup.Service)] SqliteStore store)
    {
        if (new RequestQuery(request).Refusal() is { } refusal)
        {
            return refusal;
        }

        var rows = store.Read(view => StockStore.Rack(view, MostListed + 1));
        return TypedResults.Ok(new RackBody
        {
            Stock = [.. rows.Take(MostListed).Select(StockBody.Of)],
            HasMore = rows.Count > MostListed,
        });
    }

    private static Task<IResult> Answer(
        HttpContext context, TimeProvider time,
        [FromKeyedServices(CuttingSetup.Service)] SqliteStore store) =>
        BenchRequest.AnswerOnceAsync<Receipt, RackBody>(
            context, store,
            root => ReadReceipt.From(root, DateOnly.FromDateTime(time.GetUtcNow().UtcDateTime)),
            Receive);

    private static BenchRequest.Outcome<RackBody> Receive(
        StoreTransaction transaction, Receipt receipt)
    {
        var ids = Enumerable.Range(0, receipt.Count)
            .SelectMany(_ => Put(transaction, receipt)).ToList();
        PlanStore.CountChange(transaction);
        return new RackBody
        {
            Stock = [.. ids.Select(id => StockBody.Of(StockStore.Find(transaction, id)))],
            HasMore = false,
        };
    }

    /// <summary>One roll, or what is sound of it; answers the ids.</summary>
    private static List<string> Put(StoreTransaction transaction, Receipt receipt)
    {
        var roll = StockStore.NextId(transaction, StockStore.Roll);
        var stock = new NewStock
        {
            Product = receipt.Product,
            WidthNm = receipt.WidthNm,
            LengthNm = receipt.LengthNm,
            EndTrimNm = receipt.EndTrimNm,
            Lot = receipt.Lot,
            ReceivedAtUnixMs = receipt.ReceivedOn is { } on
                ? new DateTimeOffset(on, TimeOnly.MinValue, TimeSpan.Zero).ToUnixTimeMilliseconds()
                : null,
        };
        if (receipt.Flaws.Count == 0)
        {
            StockStore.Add(transaction, roll, StockStore.Roll, stock);
            return [roll];
        }

        var parts = Parts(roll, receipt).Where(part => part.UsableNm >= LeastPartNm).ToList();
        var ids = parts.Select((_, index) => $"{roll}-{index + 1}").ToList();
        foreach (var (id, part) in ids.Zip(parts))
        {
            StockStore.Add(transaction, id, StockStore.Roll, stock with
            {
                LengthNm = part.UsableNm + part.EndTrimNm,
                EndTrimNm = part.EndTrimNm,
                PartOf = roll,
                StartsNm = part.StartsNm,
            });
        }

        return ids;
    }

    private static IEnumerable<(long StartsNm, long UsableNm, long EndTrimNm)> Parts(
        string roll, Receipt receipt)
    {
        var whole = new StockType
        {
            Key = roll,
            LengthNm = receipt.LengthNm,
            EndTrimNm = receipt.EndTrimNm,
        };
        var starts = receipt.Flaws.Select(flaw => flaw.AtNm + flaw.LengthNm).Prepend(0L)
            .Zip(receipt.Flaws.Select(flaw => flaw.AtNm).Append(receipt.LengthNm))
            .Where(part => part.Second > part.First).Select(part => part.First);
        return starts.Zip(Flaws.SoundParts(whole, receipt.Flaws)).Select(
            part => (part.First, part.Second.UsableNm, part.Second.EndTrimNm));
    }
}
