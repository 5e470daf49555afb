using System.Globalization;
using PostFrame.Engine.Quantities;
using PostFrame.Engine.TakeOff;

namespace PostFrame.Engine;

/// <summary>Quantities of goods bought by area: foam by the board foot or in hundredths of a cubic
/// metre, batts by the bag, board by the sheet.</summary>
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
        var title = product.TitleIn(job.Metric);
        if (product.Kind == ProductKind.SprayFoam)
            return new(
                product.Code, title, planes, net, thickness,
                job.Metric
                    ? RoundedUp(net.TotalSquareMetres * thickness.TotalMetres * 100) / 100
                    : BoardFeet(net, thickness),
                job.Metric ? "m³" : "board feet",
                $"{Say(job, net, "0.0")} × {thickness.Say(job.Metric)}", "D");
        var each = product.UnitCoverageFt2!;
        return new(
            product.Code, title, planes, net, thickness,
            RoundedUp(net.TotalSquareFeet / each.Value),
            product.Kind == ProductKind.Batt ? "bags" : "sheets",
            $"{Say(job, net, "0.0")} at {Say(job, Area.FromSquareFeet(each.Value), "0.##")} each",
            each.Mark);
    }

    /// <summary>What a list's price of foam is for, whatever the units of the job.</summary>
    public static double BoardFeet(Area net, Length thickness) =>
        RoundedUp(net.TotalSquareFeet * thickness.TotalInches);

    /// <summary>Up to a whole unit; a hair above a whole number counts as it.</summary>
    private static double RoundedUp(double value) => Math.Ceiling(value - 1e-6);

    private static string Say(Job job, Area area, string format) =>
        (job.Metric ? area.TotalSquareMetres : area.TotalSquareFeet)
            .ToString(format, CultureInfo.InvariantCulture) + (job.Metric ? " m²" : " ft²");
}
