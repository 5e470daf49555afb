using System.Globalization;
using PostFrame.Engine.Quantities;
using PostFrame.Engine.TakeOff;

namespace PostFrame.Engine;

/// <summary>Prices a job by the shop's own list; what the list lacks is named, never guessed.
/// </summary>
internal static class Pricing
{
    public static Price? Of(
        Job job, IReadOnlyList<AreaGoods> goods, IReadOnlyList<Accessory> accessories,
        PriceList? list)
    {
        if (list is null) return null;
        var lines = new List<PriceLine>();
        var missing = new List<string>();
        foreach (var product in job.Pieces.GroupBy(p => p.Product)
            .OrderBy(g => g.Key, StringComparer.Ordinal))
            Add(product.Key, (decimal)Math.Round(product.Sum(p =>
                Area.Of(p.Width, p.Cut).TotalSquareFeet), 2), "ft²");
        foreach (var good in goods)
            if (job.ProductOf(good.Product).Kind == ProductKind.SprayFoam)
                Add(good.Product, (decimal)AreaTakeOff.BoardFeet(good.Net, good.Thickness),
                    "board feet");
            else
                Add(good.Product, (decimal)good.Quantity, good.Unit);
        foreach (var item in accessories) Add(item.Id, item.Quantity, item.Unit);
        if (list.PerPiece is { } each && job.Pieces.Count > 0)
            lines.Add(Line("cutting and bagging", job.Pieces.Count, "pieces", each));
        return new(
            list.Id, list.Version, list.Currency, list.Note, lines, lines.Sum(l => l.Amount),
            missing);

        void Add(string item, decimal quantity, string unit)
        {
            if (list.UnitPrices.TryGetValue(item, out var price))
                lines.Add(Line(item, quantity, unit, price));
            else
                missing.Add(string.Create(
                    CultureInfo.InvariantCulture,
                    $"{item}: {quantity:0.##} {CountWords.Unit(quantity, unit)}"));
        }
    }

    private static PriceLine Line(string item, decimal quantity, string unit, decimal price) =>
        new(item, quantity, unit, price,
            Math.Round(quantity * price, 2, MidpointRounding.AwayFromZero));
}
