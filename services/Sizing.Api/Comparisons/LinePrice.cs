using PostFrame.Engine.Heat;
using PostFrame.Engine.TakeOff;

namespace PostFrame.SizingApi.Comparisons;

/// <summary>A line's price per covered square foot, and where it comes from.</summary>
/// <param name="Origin">typed or list.</param>
internal sealed record LinePrice(
    double PerFt2, string Origin, string Formula, IReadOnlyList<WorkingInput> Inputs,
    string Source, string Mark)
{
    public static LinePrice Typed(double perFt2) =>
        new(perFt2, "typed", "as typed", [], "the request", "G");

    public static LinePrice Of(double price, double areaFt2) => new(
        price / areaFt2, "typed", "price/area",
        [new("price", price, "money"), new("area", areaFt2, "ft²")], "the request", "G");

    /// <summary>
    /// From the shop's list; null where it does not hold the product. Rolls are priced per square
    /// foot bought, laps along the edge included; waste at the ends is the take-off's to tell.
    /// </summary>
    public static LinePrice? Listed(Product product, PriceList list)
    {
        if (!list.UnitPrices.TryGetValue(product.Code, out var unit)) return null;
        var price = (double)unit;
        var source = $"price list {list.Id}, version {list.Version}, in {list.Currency}"
            + (list.Note is { } note ? $": {note}" : "");
        if (product.Kind == ProductKind.SprayFoam)
        {
            var inches = product.Thickness.Value.TotalInches;
            return new(price * inches, "list", "price·d",
                [new("price", price, "per board foot"), new("d", inches, "in")], source, "G");
        }
        if (product.UnitCoverageFt2 is { } covered)
            return new(price / covered.Value, "list", "price/covers",
                [
                    new("price", price, "per bag or sheet"), new("covers", covered.Value, "ft²"),
                ],
                source, "G");
        var widest = product.Rolls.MaxBy(roll => roll.Width)!.Width;
        var coverage = product.CoverageOf(widest);
        return new(
            price * widest.TotalInches / coverage.TotalInches, "list", "price·width/coverage",
            [
                new("price", price, "per ft² of roll"),
                new("width", widest.TotalInches, "in"),
                new("coverage", coverage.TotalInches, "in"),
            ],
            source, "G");
    }
}
