using System.Globalization;
using PostFrame.Engine.Heat;

namespace PostFrame.SizingApi.Comparisons;

/// <summary>Options side by side, profiles through each, and the months of water.</summary>
internal static class ComparisonPictures
{
    private const double Width = 760;

    private static readonly string[] MonthNames = CultureInfo.InvariantCulture
        .DateTimeFormat.AbbreviatedMonthNames;

    public static PicturesLine Of(IReadOnlyList<RebuiltLine> lines, Setting setting) => new(
        SideBySide(lines, setting),
        [.. lines.Where(line => line.Winter is not null)
            .Select(line => new PictureLine(line.Id, Profile(line, setting)))],
        [.. lines.Where(line => line.Moisture is not null)
            .Select(line => new PictureLine(line.Id, Months(line)))]);

    public static string SideBySide(IReadOnlyList<RebuiltLine> lines, Setting setting)
    {
        const double left = 250;
        const double row = 66;
        var plane = setting.Input.IsWall ? "wall" : "roof";
        var most = lines.Max(line => Math.Max(
            line.Winter?.R.TotalRValue ?? 1 / (line.U?.TotalUFactor ?? 1),
            line.Summer?.R.TotalRValue ?? 0));
        var scale = (Width - left - 90) / Math.Max(most, 1);
        var svg = new Svg(
            Width, 74 + row * lines.Count + 24, $"Assembly R of the {plane}, side by side",
            string.Join("; ", lines.Select(Words)));
        var heading = $"What the {plane} resists with each, films and framing included";
        svg.Text(16, 26, heading, style: "h")
            .Box(left, 40, 14, 12, "winter").Text(left + 20, 51, "winter, R [h·ft²·°F/Btu]")
            .Box(left + 210, 40, 14, 12, "summer").Text(left + 230, 51, "summer");
        var y = 68.0;
        foreach (var line in lines)
        {
            svg.Line(16, y - 4, Width - 16, y - 4, "grid")
                .Wrapped(16, y + 12, line.Name, 34, 2)
                .Text(16, y + 44, Svg.Fitted(Side(line), 42), style: "s");
            if (line.U is { } u && line.Winter is null)
                Bar(svg, left, y + 4, 1 / u.TotalUFactor, scale, "winter", "tested value");
            if (line.Winter is { } winter)
                Bar(svg, left, y + 4, winter.R.TotalRValue, scale, "winter");
            if (line.Summer is { } summer)
                Bar(svg, left, y + 28, summer.R.TotalRValue, scale, "summer");
            if (line.U is null) svg.Text(left, y + 24, "blank: see its questions");
            y += row;
        }
        svg.Line(left, 60, left, y - 8);
        return svg.Text(16, y + 10, Films.TitleOf(setting.Input.Basis), style: "s").ToString();
    }

    private static void Bar(
        Svg svg, double x, double y, double r, double scale, string style, string note = "") =>
        svg.Box(x, y, r * scale, 18, style).Text(
            x + r * scale + 6, y + 14,
            string.Create(CultureInfo.InvariantCulture, $"{r:0.0} {note}").TrimEnd());

    private static string Side(RebuiltLine line)
    {
        var price = line.Asked.PricePerFt2 is { } p
            ? string.Create(CultureInfo.InvariantCulture, $"{p:0.00} per ft²")
            : "no price";
        var claim = line.Asked.Candidate.ClaimedR is { } r
            ? string.Create(CultureInfo.InvariantCulture, $", claimed R-{r:0.#}")
            : "";
        return (line.Asked.Ours ? "ours, " : "quoted, ") + price + claim;
    }

    private static string Words(RebuiltLine line) => line.U is null
        ? $"{line.Name}: blank"
        : string.Create(CultureInfo.InvariantCulture,
            $"{line.Name}: winter R {1 / line.U.Value.TotalUFactor:0.0}")
            + (line.Summer is { } summer
                ? string.Create(
                    CultureInfo.InvariantCulture, $", summer R {summer.R.TotalRValue:0.0}")
                : "");

    /// <summary>Across the page goes resistance, on which temperature is a straight line.</summary>
    private static string Profile(RebuiltLine line, Setting setting)
    {
        const double left = 70, top = 56, high = 150, gap = 46;
        var heat = line.RealWinter!;
        var state = StateOf(heat, line, setting);
        var total = heat.ClearField.TotalSi;
        var wide = Width - left - 40;
        double X(double r) => left + wide * r / total;
        var temps = heat.Profile.Select(node => node.Temperature.TotalFahrenheit).ToArray();
        var (cold, warm) = (temps.Min() - 5, temps.Max() + 5);
        double Y(double f) => top + high * (warm - f) / (warm - cold);
        var svg = new Svg(
            Width, state is null ? 236 : 436, $"Through {line.Name} in winter",
            string.Join("; ", heat.Profile.Select(node => string.Create(
                CultureInfo.InvariantCulture,
                $"before {node.Name} {node.Temperature.TotalFahrenheit:0} °F"))));
        svg.Text(16, 26, $"Through {Svg.Fitted(line.Name, 50)} in winter, between members",
            style: "h");
        Layers(svg, heat, X, top, high);
        if (state is not null) Layers(svg, heat, X, top + high + gap, high, named: false);
        var at = 0.0;
        var points = new List<(double, double)>();
        foreach (var node in heat.Profile)
        {
            points.Add((X(at), Y(node.Temperature.TotalFahrenheit)));
            at += node.ToNext.TotalSi;
        }
        Scale(svg, left, top, high, cold, warm, "°F", 10);
        svg.Path(points, "temp")
            .Text(left, top + high + 16, "room", "start", "s")
            .Text(left + wide / 2, top + high + 16, "temperature, over resistance", "middle", "s")
            .Text(left + wide, top + high + 16, "outdoors", "end", "s");
        if (state is not null) Pressures(svg, heat, state, X, top + high + gap, high, left);
        return svg.ToString();
    }

    private static void Layers(
        Svg svg, AssemblyHeat heat, Func<double, double> x, double top, double height,
        bool named = true)
    {
        var at = 0.0;
        foreach (var (node, i) in heat.Profile.Select((node, i) => (node, i)))
        {
            var r = node.ToNext.TotalSi;
            var isFilm = i == 0 || i >= heat.Profile.Count - 2;
            var isAir = node.Name == "air space";
            if (r > 0)
            {
                svg.Box(x(at), top, x(at + r) - x(at), height, isFilm || isAir ? "air" : "body");
                if (named && x(at + r) - x(at) > 60)
                    svg.Text(
                        (x(at) + x(at + r)) / 2, top - 6,
                        Svg.Fitted(node.Name, (int)((x(at + r) - x(at)) / 6.2)), "middle", "s");
            }
            at += r;
        }
    }

    private static DiffusionState? StateOf(AssemblyHeat heat, RebuiltLine line, Setting setting)
    {
        if (line.Moisture is null || setting is not { Months: { } months, Room: { } room })
            return null;
        // Places follow from temperature, which without a difference tells none apart.
        if (Math.Abs(heat.Conditions.Room.KelvinsAbove(heat.Conditions.Outside)) < 1) return null;
        var coldest = months.MinBy(month => month.Mean.TotalCelsius)!;
        var humidity = room.VapourPa(coldest) / Vapour.Saturation(room.At(coldest.Mean));
        return Diffusion.Steady(
            heat.Profile, Math.Max(1, humidity * Vapour.Saturation(heat.Conditions.Room)),
            0.8 * Vapour.Saturation(heat.Conditions.Outside));
    }

    private static void Pressures(
        Svg svg, AssemblyHeat heat, DiffusionState state, Func<double, double> x, double top,
        double high, double left)
    {
        var span = heat.Conditions.Room.KelvinsAbove(heat.Conditions.Outside);
        var most = state.Points.Max(point => Math.Max(point.SaturationPa, point.PressurePa)) * 1.05;
        double Y(double pa) => top + high * (1 - pa / most);
        // A point's place on the page follows from its temperature, which is straight over R.
        double At(VapourPoint point) => x(
            heat.ClearField.TotalSi
                * heat.Conditions.Room.KelvinsAbove(point.Temperature) / span);
        Scale(svg, left, top, high, 0, most, "Pa", Math.Max(500, Math.Round(most / 5 / 500) * 500));
        svg.Path(state.Points.Select(p => (At(p), Y(p.SaturationPa))), "sat")
            .Path(state.Points.Select(p => (At(p), Y(p.PressurePa))), "vap")
            .Text(left, top + high + 18, "dashed: saturation pressure; solid: vapour pressure. "
                + "Where they meet, water condenses.", style: "s");
    }

    private static void Scale(
        Svg svg, double x, double top, double high, double from, double to, string unit,
        double step)
    {
        for (var value = Math.Ceiling(from / step) * step + 0.0; value <= to; value += step)
        {
            var y = top + high * (to - value) / (to - from);
            svg.Line(x - 4, y, x, y).Text(
                x - 8, y + 4, (value + 0.0).ToString("0.##", CultureInfo.InvariantCulture),
                "end", "s");
        }
        svg.Line(x, top, x, top + high).Text(x - 8, top - 8, unit, "end", "s");
    }

    private static string Months(RebuiltLine line)
    {
        const double left = 70, top = 60, high = 170;
        var year = line.Moisture!.Year;
        var most = Math.Max(1, year.Months.Max(month => month.HeldGPerM2));
        var least = Math.Min(0, year.Months.Min(month => month.ChangeGPerM2));
        var step = (Width - left - 30) / 12;
        double Y(double g) => top + high * (most - g) / (most - least);
        var svg = new Svg(
            Width, 310, $"Water inside {line.Name} month by month",
            line.Moisture.Text + " " + string.Join("; ", year.Months.Select(month =>
                string.Create(CultureInfo.InvariantCulture,
                    $"{MonthNames[month.Month - 1]} {month.HeldGPerM2:0.#} g/m²"))));
        var heading = $"Water inside {Svg.Fitted(line.Name, 50)}, month by month";
        svg.Text(16, 26, heading, style: "h")
            .Box(left, 38, 14, 12, "wet").Text(left + 20, 49, "held at the month's end [g/m²]")
            .Box(left + 240, 38, 14, 12, "dry").Text(left + 260, 49, "condensed or dried in it");
        Scale(svg, left, top, high, least, most, "", NiceStep(most - least));
        for (var i = 0; i < 12; i++)
        {
            var month = year.Months[i];
            var x = left + 6 + i * step;
            svg.Box(x, Y(month.HeldGPerM2), step * 0.42, Y(0) - Y(month.HeldGPerM2), "wet");
            var (from, to) = month.ChangeGPerM2 >= 0
                ? (Y(month.ChangeGPerM2), Y(0))
                : (Y(0), Y(month.ChangeGPerM2));
            svg.Box(x + step * 0.46, from, step * 0.34, to - from, "dry")
                .Text(x + step * 0.42, top + high + 18, MonthNames[month.Month - 1], "middle", "s");
        }
        return svg.Line(left, Y(0), Width - 24, Y(0))
            .Wrapped(16, top + high + 44, line.Moisture.Text, 120, 3, "s").ToString();
    }

    private static double NiceStep(double span)
    {
        var rough = Math.Max(span / 5, 0.2);
        var power = Math.Pow(10, Math.Floor(Math.Log10(rough)));
        return (rough / power) switch { < 1.5 => 1, < 3.5 => 2, < 7.5 => 5, _ => 10 } * power;
    }
}
