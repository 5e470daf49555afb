using System.Globalization;

namespace PostFrame.SizingApi.Comparisons;

/// <summary>The water inside a line, month by month.</summary>
internal static class MonthPicture
{
    private const double Left = 78;
    private const double Top = 66;
    private const double High = 170;

    private static readonly string[] MonthNames = CultureInfo.InvariantCulture
        .DateTimeFormat.AbbreviatedMonthNames;

    public static string Of(RebuiltLine line)
    {
        var year = line.Moisture!.Year;
        var (highest, lowest) = (
            Math.Max(1, year.Months.Max(month => month.HeldGPerM2)),
            Math.Min(0, year.Months.Min(month => month.ChangeGPerM2)));
        var tick = ComparisonPictures.NiceStep(highest - lowest);
        var most = tick * Math.Ceiling(highest * 1.08 / tick);
        var least = tick * Math.Floor(lowest / tick);
        var step = (ComparisonPictures.Width - Left - 30) / 12;
        double Y(double g) => Top + High * (most - g) / (most - least);
        var name = $"\"{Svg.Fitted(line.Name, 40)}\"";
        var svg = new Svg(
            ComparisonPictures.Width, 328, $"Water inside {name} month by month",
            line.Moisture.Text + " " + string.Join("; ", year.Months.Select(month =>
                string.Create(CultureInfo.InvariantCulture,
                    $"{MonthNames[month.Month - 1]} {month.HeldGPerM2:0.#} g/m²"))));
        svg.Text(16, 24, $"Water inside {name} in an average year", style: "h")
            .Box(Left, 38, 14, 12, "wet").Text(Left + 20, 49, "held at the month's end")
            .Box(Left + 200, 38, 14, 12, "dry")
            .Text(Left + 220, 49, "condensed in the month, dried below zero");
        ComparisonPictures.UprightAxis(svg, Left, Top, High, least, most, "water [g/m²]", tick);
        for (var i = 0; i < 12; i++)
        {
            var month = year.Months[i];
            var x = Left + 6 + i * step;
            svg.Box(x, Y(month.HeldGPerM2), step * 0.42, Y(0) - Y(month.HeldGPerM2), "wet");
            var (from, to) = month.ChangeGPerM2 >= 0
                ? (Y(month.ChangeGPerM2), Y(0))
                : (Y(0), Y(month.ChangeGPerM2));
            svg.Box(x + step * 0.46, from, step * 0.34, to - from, "dry")
                .Text(x + step * 0.42, Top + High + 18, MonthNames[month.Month - 1], "middle", "s");
            if (month.HeldGPerM2 >= 0.05)
                svg.Text(
                    x + step * 0.21, Y(month.HeldGPerM2) - 4,
                    month.HeldGPerM2.ToString(
                        month.HeldGPerM2 < 9.95 ? "0.0" : "0", CultureInfo.InvariantCulture),
                    "middle", "s");
        }
        return svg.Line(Left, Y(0), ComparisonPictures.Width - 24, Y(0))
            .Wrapped(16, Top + High + 44, line.Moisture.Text, 116, 3, "s").ToString();
    }
}
