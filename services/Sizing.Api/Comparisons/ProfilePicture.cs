using System.Globalization;
using PostFrame.Engine.Heat;
using PostFrame.Engine.Quantities;

namespace PostFrame.SizingApi.Comparisons;

/// <summary>
/// Temperature and vapour pressure through a line at winter design. Across the page goes
/// resistance, over which temperature is a straight line.
/// </summary>
internal static class ProfilePicture
{
    private const double Left = 78;
    private const double Wide = ComparisonPictures.Width - Left - 40;
    private const double High = 160;
    private const double Top = 58;
    private const double Second = Top + High + 74;

    public static string Of(RebuiltLine line, Setting setting)
    {
        var heat = line.RealWinter!;
        var words = setting.Words;
        var state = StateOf(heat, line, setting);
        var name = $"\"{Svg.Fitted(line.Name, 40)}\"";
        var svg = new Svg(
            ComparisonPictures.Width, state is null ? Top + High + 62 : Second + High + 62,
            $"Through {name} in winter",
            string.Join("; ", heat.Profile.Select(node =>
                $"before {node.Name} {words.Of(node.Temperature)}")));
        svg.Text(16, 24, $"Through {name} at winter design, between members", style: "h");
        Temperatures(svg, heat, setting);
        if (state is not null) Pressures(svg, heat, state, words);
        else
            svg.Text(16, Top + High + 54, line.Moisture is null
                ? "No vapour picture: use, heating, place or permeance is not known."
                : "No vapour picture: there is no difference of temperature.", style: "s");
        return svg.ToString();
    }

    private static double X(AssemblyHeat heat, double r) =>
        Left + Wide * r / heat.ClearField.TotalSi;

    private static void Temperatures(Svg svg, AssemblyHeat heat, Setting setting)
    {
        var words = setting.Words;
        Layers(svg, heat, Top, named: true);
        var temps = heat.Profile.Select(node => words.Axis(node.Temperature)).ToArray();
        var dew = setting.IsUnheated ? null : setting.RoomAir?.Design;
        var lowest = Math.Min(temps.Min(), dew is null ? temps.Min() : words.Axis(dew.DewPoint));
        var step = ComparisonPictures.NiceStep(Math.Max(temps.Max() - lowest, 10), 6);
        var cold = Math.Floor(lowest / step) * step;
        // Room above the warmest point, where the room face is named.
        var warm = Math.Max(cold + step, Math.Ceiling(temps.Max() / step + 0.4) * step);
        double Y(double at) => Top + High * (warm - at) / (warm - cold);
        if (dew is not null)
        {
            var y = Y(words.Axis(dew.DewPoint));
            svg.Line(Left, y, Left + Wide, y, "dew").Haloed(
                Left + Wide - 4, y - 5,
                $"{(dew.IsFrost ? "frost" : "dew")} point of the room air "
                    + words.Of(dew.DewPoint), "s", "end");
        }
        var at = 0.0;
        var points = new List<(double, double)>();
        foreach (var (node, temp) in heat.Profile.Zip(temps))
        {
            points.Add((X(heat, at), Y(temp)));
            at += node.ToNext.TotalSi;
        }
        svg.Path(points, "temp");
        foreach (var i in (int[])[0, 1, temps.Length - 2, temps.Length - 1])
            svg.Dot(points[i].Item1, points[i].Item2, "dot");
        var face = points[1];
        svg.Haloed(face.Item1 + 7, face.Item2 - 6,
            $"room face {words.Of(heat.RoomFace)}", "s");
        ComparisonPictures.UprightAxis(
            svg, Left, Top, High, cold, warm, $"temperature [{words.Degrees}]", step);
        Across(svg, heat, Top, words);
    }

    private static void Across(Svg svg, AssemblyHeat heat, double top, UnitWords words)
    {
        var total = words.Axis(heat.ClearField);
        svg.Text(Left, top + High + 34, "room", style: "s")
            .Text(Left + Wide, top + High + 34, "outdoors", "end", "s");
        ComparisonPictures.LevelAxis(
            svg, Left, Wide, top + High, total, $"resistance from the room [{words.RUnit}]",
            ComparisonPictures.NiceStep(total, 8));
    }

    private static void Layers(Svg svg, AssemblyHeat heat, double top, bool named)
    {
        var at = 0.0;
        foreach (var (node, i) in heat.Profile.Select((node, i) => (node, i)))
        {
            var r = node.ToNext.TotalSi;
            var isFilm = i == 0 || i >= heat.Profile.Count - 2;
            var isAir = node.Name == "air space";
            var (from, to) = (X(heat, at), X(heat, at + r));
            if (r > 0)
            {
                svg.Box(from, top, to - from, High, isFilm || isAir ? "air" : "body");
                if (named && to - from > 48)
                    svg.Text(
                        (from + to) / 2, top - 6,
                        Svg.Fitted(node.Name, (int)((to - from) / 6.2)), "middle", "s");
            }
            at += r;
        }
    }

    private static DiffusionState? StateOf(AssemblyHeat heat, RebuiltLine line, Setting setting)
    {
        if (line.Moisture is null || setting.RoomAir is not { } air) return null;
        // Places follow from temperature, which without a difference tells none apart.
        if (Math.Abs(heat.Conditions.Room.KelvinsAbove(heat.Conditions.Outside)) < 1) return null;
        return Diffusion.Steady(
            heat.Profile, Math.Max(1, air.Design.Pa), air.Design.Outdoors.VapourPressurePa);
    }

    private static void Pressures(
        Svg svg, AssemblyHeat heat, DiffusionState state, UnitWords words)
    {
        Layers(svg, heat, Second, named: false);
        var span = heat.Conditions.Room.KelvinsAbove(heat.Conditions.Outside);
        var highest = state.Points.Max(point => Math.Max(point.SaturationPa, point.PressurePa));
        var step = ComparisonPictures.NiceStep(highest);
        var most = step * Math.Ceiling(highest / step);
        double Y(double pa) => Second + High * (1 - pa / most);
        // A point's place on the page follows from its temperature, which is straight over R.
        double At(VapourPoint point) => X(
            heat,
            heat.ClearField.TotalSi
                * heat.Conditions.Room.KelvinsAbove(point.Temperature) / span);
        svg.Line(Left, Second - 14, Left + 26, Second - 14, "sat")
            .Text(Left + 32, Second - 10, "saturation pressure", style: "s")
            .Line(Left + 170, Second - 14, Left + 196, Second - 14, "vap")
            .Text(Left + 202, Second - 10, "vapour pressure", style: "s")
            .Path(state.Points.Select(p => (At(p), Y(p.SaturationPa))), "sat")
            .Path(state.Points.Select(p => (At(p), Y(p.PressurePa))), "vap");
        var wet = state.Points.Where(point => point.CondensationKgPerM2S > 0).ToList();
        foreach (var point in wet) svg.Dot(At(point), Y(point.PressurePa), "drop");
        var rate = wet.Sum(point => point.CondensationKgPerM2S) * 86_400_000;
        svg.Text(
            Left + Wide, Second - 10,
            rate > 0.005
                ? string.Create(CultureInfo.InvariantCulture,
                    $"● water condenses here: {rate:0.##} g/m² a day while it lasts")
                : "nothing condenses inside", "end", "s");
        ComparisonPictures.UprightAxis(
            svg, Left, Second, High, 0, most, "vapour pressure [Pa]", step);
        Across(svg, heat, Second, words);
    }
}
