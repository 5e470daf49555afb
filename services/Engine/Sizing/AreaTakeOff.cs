using System.Globalization;
using PostFrame.Engine.Quantities;
using PostFrame.Engine.TakeOff;

namespace PostFrame.Engine;

/// <summary>Quantities of goods bought by area: foam by the board foot, batts, sheets.</summary>
/// <remarks>A board foot is a square foot one inch thick. Wide openings are deducted.</remarks>
internal static class AreaTakeOff
{
    public static IReadOnlyList<AreaGoods> Of(Job job) =>
    [
        .. job.Plan.Areas.GroupBy(a => (a.Assignment.Product.Code, Thickness(a)))
            .OrderBy(g => g.Key.Code, StringComparer.Ordinal).ThenBy(g => g.Key.Item2)
            .Select(g => One(job, [.. g])),
    ];

    private static Length Thickness(AreaCover cover) =>
        cover.Assignment.Input.Thickness ?? cover.Assignment.Product.Thickness.Value;

    private static AreaGoods One(Job job, IReadOnlyList<AreaCover> covers)
    {
        var product = covers[0].Assignment.Product;
        var thickness = Thickness(covers[0]);
        string[] planes = [.. covers.Select(c => c.Plane.Id)];
        var net = job.Planes.Where(p => planes.Contains(p.Plane))
            .Aggregate(Area.Zero, (sum, p) => sum + p.Net);
        var feet = net.TotalSquareFeet;
        if (product.Kind == ProductKind.SprayFoam)
            return new(
                product.Code, product.Title, planes, net, thickness,
                RoundedUp(feet * thickness.TotalInches), "board feet",
                Text($"{feet:0.0} ft² × {thickness.TotalInches:0.###} in"), "D");
        var each = product.UnitCoverageFt2!;
        return new(
            product.Code, product.Title, planes, net, thickness, RoundedUp(feet / each.Value),
            product.Kind == ProductKind.Batt ? "bags" : "sheets",
            Text($"{feet:0.0} ft² at {each.Value:0.#} ft² each"), each.Mark);
    }

    /// <summary>Up to a whole unit; a hair above a whole number counts as it.</summary>
    private static double RoundedUp(double value) => Math.Ceiling(value - 1e-6);

    private static string Text(FormattableString text) =>
        text.ToString(CultureInfo.InvariantCulture);
}
