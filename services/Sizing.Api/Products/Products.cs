using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using PostFrame.Engine.Quantities;
using PostFrame.Engine.TakeOff;
using PostFrame.Problems;
using PostFrame.SizingApi.Sizings;

namespace PostFrame.SizingApi.Products;

/// <summary>The catalogue a request may name products of.</summary>
public sealed record ProductsBody(IReadOnlyList<ProductBody> Products);

/// <summary>
/// One product. Every figure says where it comes from; a shop replaces it by its own.
/// </summary>
public sealed record ProductBody
{
    public required string Code { get; init; }

    public required string Title { get; init; }

    /// <summary>
    /// <c>blanket</c>, <c>bubbleSheet</c>, <c>sprayFoam</c>, <c>batt</c>, <c>board</c>.
    /// </summary>
    public required string Kind { get; init; }

    public string? Facing { get; init; }

    public required Figure<decimal> ThicknessIn { get; init; }

    /// <summary>The product alone, before installation, h·ft²·°F/Btu.</summary>
    public required Figure<double> NominalR { get; init; }

    /// <summary>What a roll's width means: <c>tabOutside</c>, <c>lapInside</c>, …</summary>
    public required Figure<string> Construction { get; init; }

    public required decimal TabIn { get; init; }

    public required decimal LapInsideIn { get; init; }

    public required IReadOnlyList<RollBody> Rolls { get; init; }

    public required string RollsMark { get; init; }

    public required Figure<double> WeightLbPerFt2 { get; init; }

    public required Figure<double> UsPerm { get; init; }

    public required Figure<double> RoomFaceEmittance { get; init; }

    public required Figure<double> CladdingFaceEmittance { get; init; }

    /// <summary>What one bag or sheet covers; absent for rolls and foam.</summary>
    public Figure<double>? UnitCoverageFt2 { get; init; }
}

/// <summary>
/// A figure with its mark: P published, C common practice, M from memory, D derived.
/// </summary>
public sealed record Figure<T>(T Value, string Mark, string Source);

/// <summary>A roll as stocked, and what one strip of it covers.</summary>
public sealed record RollBody(
    decimal WidthIn, decimal WidthMm, string WidthText, decimal LengthFt, decimal CoverageIn,
    bool Metric);

internal static class CatalogueRoutes
{
    private static readonly byte[] Catalogue = JsonSerializer.SerializeToUtf8Bytes(
        new ProductsBody([.. ProductCatalogue.All.Select(From)]), ProductsJson.Wire.ProductsBody);

    public static void MapProducts(this IEndpointRouteBuilder routes) =>
        routes.MapGet("/v1/products", (HttpRequest request) =>
            MediaTypes.Preferred(request, "application/json") is null
                ? (IResult)MediaTypes.NoneOf("application/json")
                : TypedResults.Bytes(Catalogue, "application/json"))
            .WithGroupName("sizing").WithName("getProducts").WithTags("Products")
            .WithSummary("The products a request may name")
            .WithDescription("Codes are our own. Each figure says where it comes from.")
            .Produces<ProductsBody>(200, "application/json")
            .MapRefusals(ProblemKind.NotAcceptable);

    private static ProductBody From(Product product) => new()
    {
        Code = product.Code,
        Title = product.Title,
        Kind = WireNames<ProductKind>.Of(product.Kind),
        Facing = product.Facing,
        ThicknessIn = Of(product.Thickness, LengthWords.Inches),
        NominalR = Of(product.NominalR, r => WriteTakeOff.Rounded(r.TotalRValue, 2)),
        Construction = Of(product.Construction, WireNames<StripConstruction>.Of),
        TabIn = LengthWords.Inches(product.Tab),
        LapInsideIn = LengthWords.Inches(product.LapInsideWidth),
        Rolls = [.. product.Rolls.Select(roll => Roll(product, roll))],
        RollsMark = product.RollsMark,
        WeightLbPerFt2 = Of(product.PoundsPerSquareFoot, value => value),
        UsPerm = Of(product.Perm, value => value),
        RoomFaceEmittance = Of(product.RoomFaceEmittance, value => value),
        CladdingFaceEmittance = Of(product.CladdingFaceEmittance, value => value),
        UnitCoverageFt2 = product.UnitCoverageFt2 is { } coverage
            ? Of(coverage, value => value)
            : null,
    };

    private static RollBody Roll(Product product, RollSize roll) => new(
        LengthWords.Inches(roll.Width), LengthWords.Millimetres(roll.Width),
        roll.Metric
            ? $"{LengthWords.Millimetres(roll.Width):0.###} mm"
            : $"{LengthWords.Inches(roll.Width):0.###} in",
        LengthWords.Inches(roll.RollLength) / 12,
        LengthWords.Inches(product.CoverageOf(roll.Width)), roll.Metric);

    private static Figure<TWire> Of<T, TWire>(Marked<T> marked, Func<T, TWire> value) =>
        new(value(marked.Value), marked.Mark, marked.Source);
}

[JsonSerializable(typeof(ProductsBody))]
internal sealed partial class ProductsJson : JsonSerializerContext
{
    internal static readonly ProductsJson Wire = new(new JsonSerializerOptions
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    });
}
