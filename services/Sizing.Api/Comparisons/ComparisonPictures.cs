using System.Globalization;

namespace PostFrame.SizingApi.Comparisons;

/// <summary>Options side by side, profiles through each, and the months of water.</summary>
internal static class ComparisonPictures
{
    public const double Width = 760;

    public static PicturesLine Of(IReadOnlyList<RebuiltLine> lines, Setting setting) => new(
        SidePicture.Of(lines, setting),
        [.. lines.Where(line => line.Winter is not null)
            .Select(line => new PictureLine(line.Id, ProfilePicture.Of(line, setting)))],
        [.. lines.Where(line => line.Moisture is not null)
            .Select(line => new PictureLine(line.Id, MonthPicture.Of(line)))]);

    /// <summary>An upright axis with its title along it.</summary>
    public static void UprightAxis(
        Svg svg, double x, double top, double high, double from, double to, string title,
        double step)
    {
        for (var value = Math.Ceiling(from / step - 1e-9) * step; value <= to + 1e-9; value += step)
        {
            var y = top + high * (to - value) / (to - from);
            svg.Line(x - 4, y, x, y).Text(x - 8, y + 4, Number(value), "end", "s");
        }
        svg.Line(x, top, x, top + high).Upright(x - 46, top + high / 2, title, "s");
    }

    /// <summary>A level axis under a picture, with its title below.</summary>
    public static void LevelAxis(
        Svg svg, double left, double wide, double y, double to, string title, double step)
    {
        for (var value = 0.0; value <= to + 1e-9; value += step)
        {
            var x = left + wide * value / to;
            svg.Line(x, y, x, y + 4).Text(x, y + 16, Number(value), "middle", "s");
        }
        svg.Line(left, y, left + wide, y).Text(left + wide / 2, y + 32, title, "middle", "s");
    }

    /// <summary>1, 2 or 5 times a power of ten: about so many steps to the span.</summary>
    public static double NiceStep(double span, int steps = 5)
    {
        var rough = Math.Max(span / steps, 1e-3);
        var power = Math.Pow(10, Math.Floor(Math.Log10(rough)));
        return (rough / power) switch { < 1.5 => 1, < 3.5 => 2, < 7.5 => 5, _ => 10 } * power;
    }

    private static string Number(double value) =>
        (Math.Round(value, 6) + 0.0).ToString("0.###", CultureInfo.InvariantCulture);
}
