using System.Globalization;
using System.Security;
using System.Text;

namespace PostFrame.Documents.Drawing;

/// <summary>
/// Writes a sketch as SVG 1.1 that scales, can be read aloud and carries no script.
/// </summary>
internal static class SvgPaper
{
    public static byte[] Svg(Sketch page, string title, string description)
    {
        var svg = new StringBuilder();
        svg.Append(CultureInfo.InvariantCulture, $"""
            <svg xmlns="http://www.w3.org/2000/svg" role="img" aria-label="{Safe(title)}"
            """);
        svg.Append(CultureInfo.InvariantCulture,
            $" viewBox=\"0 0 {N(page.WidthPt)} {N(page.HeightPt)}\"");
        svg.Append(" font-family=\"Liberation Sans, Arial, Helvetica, sans-serif\">\n");
        svg.Append(CultureInfo.InvariantCulture,
            $"<title>{Safe(title)}</title>\n<desc>{Safe(description)}</desc>\n");
        svg.Append("<rect width=\"100%\" height=\"100%\" fill=\"#FFFFFF\"/>\n");
        foreach (var mark in page.Marks)
        {
            Append(svg, mark);
        }

        svg.Append("</svg>\n");
        return Encoding.UTF8.GetBytes(svg.ToString());
    }

    private static void Append(StringBuilder svg, Mark mark)
    {
        switch (mark)
        {
            case Shape shape:
                Append(svg, shape);
                break;
            case Outlines outlines:
                foreach (var polygon in outlines.Polygons)
                {
                    Append(svg, new Shape(polygon, Stroke: Ink.Black, Width: outlines.Width));
                }

                break;
            case Dot dot:
                svg.Append(CultureInfo.InvariantCulture,
                    $"<circle cx=\"{N(dot.Centre.X)}\" cy=\"{N(dot.Centre.Y)}\"");
                svg.Append(CultureInfo.InvariantCulture,
                    $" r=\"{N(dot.Radius)}\" fill=\"{dot.Colour}\"/>\n");
                break;
            case Bars bars:
                Append(svg, bars);
                break;
            case Words words:
                Append(svg, words);
                break;
            case GroupStart group:
                svg.Append(CultureInfo.InvariantCulture, $"<g><title>{Safe(group.Name)}</title>\n");
                break;
            case GroupEnd:
                svg.Append("</g>\n");
                break;
        }
    }

    private static void Append(StringBuilder svg, Shape shape)
    {
        svg.Append("<path d=\"");
        for (var i = 0; i < shape.Points.Count; i++)
        {
            var point = shape.Points[i];
            svg.Append(i == 0 ? 'M' : 'L').Append(N(point.X)).Append(' ').Append(N(point.Y));
        }

        svg.Append(shape.Open ? "\"" : "Z\"");
        svg.Append(CultureInfo.InvariantCulture, $" fill=\"{shape.Fill ?? "none"}\"");
        if (shape.Stroke is not null)
        {
            svg.Append(CultureInfo.InvariantCulture,
                $" stroke=\"{shape.Stroke}\" stroke-width=\"{N(shape.Width)}\"");
        }

        if (shape.Dash > 0)
        {
            svg.Append(CultureInfo.InvariantCulture, $" stroke-dasharray=\"{N(shape.Dash)}\"");
        }

        svg.Append("/>\n");
    }

    private static void Append(StringBuilder svg, Bars bars)
    {
        svg.Append("<path shape-rendering=\"crispEdges\" d=\"");
        foreach (var bar in bars.Frames)
        {
            svg.Append(CultureInfo.InvariantCulture,
                $"M{N(bar.X)} {N(bar.Y)}h{N(bar.Width)}v{N(bar.Height)}h-{N(bar.Width)}z");
        }

        svg.Append("\"/>\n");
    }

    /// <summary>Every text is held to the width it was laid out with: a viewer without the
    /// typeface would run it over its neighbours and off the sheet.</summary>
    private static void Append(StringBuilder svg, Words words)
    {
        var anchor = words.Anchor switch
        {
            Anchor.Middle => " text-anchor=\"middle\"",
            Anchor.End => " text-anchor=\"end\"",
            _ => "",
        };
        svg.Append(CultureInfo.InvariantCulture, $"<text font-size=\"{N(words.Size)}\"{anchor}");
        var wide = Lettering.Width(words.Text, words.Size, words.Bold);
        svg.Append(wide < 0.01
            ? ""
            : $" textLength=\"{N(wide)}\" lengthAdjust=\"spacingAndGlyphs\"");
        svg.Append(words.Bold ? " font-weight=\"bold\"" : "");
        svg.Append(words.Colour == Ink.Black ? "" : $" fill=\"{words.Colour}\"");
        svg.Append(CultureInfo.InvariantCulture,
            $" transform=\"translate({N(words.At.X)} {N(words.At.Y)})");
        svg.Append(words.Turn == 0 ? "" : $" rotate({N(words.Turn)})");
        svg.Append(words.ScaleX == 1 ? "" : $" scale({N(words.ScaleX)} 1)");
        svg.Append(CultureInfo.InvariantCulture, $"\">{Safe(words.Text)}</text>\n");
    }

    /// <summary>Two decimals of a point are finer than any screen or printer shows.</summary>
    private static string N(double value) =>
        Math.Round(value, 2).ToString("0.##", CultureInfo.InvariantCulture);

    private static string Safe(string text) => SecurityElement.Escape(text);
}
