using System.Globalization;
using System.Text;

namespace PostFrame.Benchmarks;

/// <summary>Draws measured series as panels of one SVG picture.</summary>
internal static class LinePlot
{
    private const int PanelWidth = 480;
    private const int PanelHeight = 290;
    private const double Left = 70;
    private const double Top = 44;
    private const double Width = 370;
    private const double Height = 180;
    private static readonly string[] Colours =
        ["#0072B2", "#D55E00", "#009E73", "#CC79A7", "#555555", "#E69F00"];

    public sealed record Series(string Name, IReadOnlyList<double> Values);

    public sealed record Panel(
        string Title, string Across, IReadOnlyList<string> At, IReadOnlyList<Series> Lines,
        bool FromZero = true);

    public static string Svg(string title, IReadOnlyList<Panel> panels)
    {
        var rows = (panels.Count + 1) / 2;
        var svg = new StringBuilder();
        svg.AppendLine(CultureInfo.InvariantCulture,
            $"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {2 * PanelWidth} "
            + $"{rows * PanelHeight}\" font-family=\"sans-serif\" font-size=\"13\">"
            + $"<title>{title}</title><rect width=\"100%\" height=\"100%\" fill=\"white\"/>");
        for (var p = 0; p < panels.Count; p++)
        {
            svg.AppendLine(CultureInfo.InvariantCulture,
                $"<g transform=\"translate({p % 2 * PanelWidth} {p / 2 * PanelHeight})\">");
            Draw(svg, panels[p]);
            svg.AppendLine("</g>");
        }

        return svg.AppendLine("</svg>").ToString();
    }

    private static void Draw(StringBuilder svg, Panel panel)
    {
        var values = panel.Lines.SelectMany(l => l.Values).Where(double.IsFinite).ToList();
        var least = panel.FromZero ? 0 : Math.Floor(values.Min());
        var step = Step((values.Max() - least) / 4);
        var most = least + step * Math.Max(1, Math.Ceiling((values.Max() - least) / step));
        double X(int k) => Left + Width * (k + 0.5) / panel.At.Count;
        double Y(double value) => Top + Height - Height * (value - least) / (most - least);
        svg.AppendLine(CultureInfo.InvariantCulture,
            $"<text x=\"{Left}\" y=\"26\" font-weight=\"bold\">{panel.Title}</text>"
            + $"<path d=\"M{Left} {Top}V{Top + Height}H{Left + Width}\" fill=\"none\" "
            + $"stroke=\"black\"/>");
        for (var value = least; value <= most * 1.0001; value += step)
            svg.AppendLine(CultureInfo.InvariantCulture,
                $"<path d=\"M{Left - 4} {Y(value):F1}h4\" stroke=\"black\"/><text x=\"{Left - 8}\" "
                + $"y=\"{Y(value) + 4:F1}\" text-anchor=\"end\">{value:0.###}</text>");
        for (var k = 0; k < panel.At.Count; k++)
            svg.AppendLine(CultureInfo.InvariantCulture,
                $"<text x=\"{X(k):F1}\" y=\"{Top + Height + 18}\" text-anchor=\"middle\">"
                + $"{panel.At[k]}</text>");
        svg.AppendLine(CultureInfo.InvariantCulture,
            $"<text x=\"{Left + Width / 2}\" y=\"{Top + Height + 38}\" text-anchor=\"middle\">"
            + $"{panel.Across}</text>");
        var rises = panel.Lines[0].Values[^1] > panel.Lines[0].Values[0];
        var (side, anchor) = rises ? (Left + 14, "start") : (Left + Width, "end");
        for (var s = 0; s < panel.Lines.Count; s++)
        {
            var (colour, line) = (Colours[s % Colours.Length], panel.Lines[s]);
            var points = Enumerable.Range(0, line.Values.Count)
                .Where(k => double.IsFinite(line.Values[k]))
                .Select(k => string.Create(
                    CultureInfo.InvariantCulture, $"{X(k):F1},{Y(line.Values[k]):F1}"))
                .ToList();
            svg.AppendLine(CultureInfo.InvariantCulture,
                $"<polyline points=\"{string.Join(' ', points)}\" fill=\"none\" stroke=\"{colour}\""
                + $" stroke-width=\"2\"/><text x=\"{side}\" y=\"{Top + 14 + 17 * s}\" "
                + $"text-anchor=\"{anchor}\" fill=\"{colour}\">{line.Name}</text>");
            foreach (var at in points.Select(p => p.Split(',')))
                svg.AppendLine(CultureInfo.InvariantCulture,
                    $"<circle cx=\"{at[0]}\" cy=\"{at[1]}\" r=\"3\" fill=\"{colour}\"/>");
        }
    }

    /// <summary>The next of 1, 2, 5 times a power of ten.</summary>
    private static double Step(double least)
    {
        var power = Math.Pow(10, Math.Floor(Math.Log10(Math.Max(least, 1e-9))));
        return power * new[] { 1.0, 2, 5, 10 }.First(f => power * f >= least * 0.999);
    }
}
