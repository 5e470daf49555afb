using System.Globalization;
using System.Net;
using System.Text;

namespace PostFrame.SizingApi.Comparisons;

/// <summary>
/// A small SVG: black on white, told apart by pattern and word, never by colour alone.
/// </summary>
internal sealed class Svg(double width, double height, string title, string description)
{
    private readonly StringBuilder _body = new();

    public Svg Line(double x1, double y1, double x2, double y2, string style = "axis")
    {
        _body.Append(CultureInfo.InvariantCulture,
            $"<line class=\"{style}\" x1=\"{x1:0.#}\" y1=\"{y1:0.#}\" ")
            .Append(CultureInfo.InvariantCulture, $"x2=\"{x2:0.#}\" y2=\"{y2:0.#}\"/>");
        return this;
    }

    public Svg Path(IEnumerable<(double X, double Y)> points, string style)
    {
        var d = string.Join(' ', points.Select((p, i) => string.Create(
            CultureInfo.InvariantCulture, $"{(i == 0 ? 'M' : 'L')}{p.X:0.#} {p.Y:0.#}")));
        _body.Append(CultureInfo.InvariantCulture, $"<path class=\"{style}\" d=\"{d}\"/>");
        return this;
    }

    public Svg Box(double x, double y, double w, double h, string style)
    {
        _body.Append(CultureInfo.InvariantCulture,
            $"<rect class=\"{style}\" x=\"{x:0.#}\" y=\"{y:0.#}\" width=\"{Math.Max(w, 0):0.#}\" ")
            .Append(CultureInfo.InvariantCulture, $"height=\"{Math.Max(h, 0):0.#}\"/>");
        return this;
    }

    public Svg Text(double x, double y, string text, string anchor = "start", string style = "t")
    {
        _body.Append(CultureInfo.InvariantCulture,
            $"<text class=\"{style}\" x=\"{x:0.#}\" y=\"{y:0.#}\" text-anchor=\"{anchor}\">")
            .Append(WebUtility.HtmlEncode(text)).Append("</text>");
        return this;
    }

    /// <summary>Text that stays legible over lines and hatching.</summary>
    public Svg Haloed(
        double x, double y, string text, string style = "t", string anchor = "start") =>
        Text(x, y, text, anchor, style + " halo");

    /// <summary>A title along an upright axis, read from below.</summary>
    public Svg Upright(double x, double y, string text, string style)
    {
        _body.Append(CultureInfo.InvariantCulture,
            $"<text class=\"{style}\" text-anchor=\"middle\" ")
            .Append(CultureInfo.InvariantCulture,
                $"transform=\"translate({x:0.#} {y:0.#}) rotate(-90)\">")
            .Append(WebUtility.HtmlEncode(text)).Append("</text>");
        return this;
    }

    public Svg Dot(double x, double y, string style)
    {
        _body.Append(CultureInfo.InvariantCulture,
            $"<circle class=\"{style}\" cx=\"{x:0.#}\" cy=\"{y:0.#}\" r=\"4\"/>");
        return this;
    }

    /// <summary>Words no wider than the room there is.</summary>
    public static string Fitted(string text, int characters) =>
        text.Length <= characters ? text : text[..(characters - 1)].TrimEnd() + "…";

    /// <summary>Words over as many lines as they need, up to a limit.</summary>
    public Svg Wrapped(
        double x, double y, string text, int characters, int most, string style = "t")
    {
        var rest = text;
        for (var line = 0; line < most && rest.Length > 0; line++)
        {
            var cut = rest.Length <= characters || line == most - 1
                ? rest.Length
                : Math.Max(rest.LastIndexOf(' ', characters), 1);
            Text(x, y + 15 * line, Fitted(rest[..cut], characters), style: style);
            rest = rest[cut..].TrimStart();
        }
        return this;
    }

    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {width:0} {height:0}\" ")
        + "role=\"img\" "
        + string.Create(CultureInfo.InvariantCulture, $"width=\"{width:0}\" height=\"{height:0}\">")
        + $"<title>{WebUtility.HtmlEncode(title)}</title>"
        + $"<desc>{WebUtility.HtmlEncode(description)}</desc>" + Style
        + $"<rect width=\"100%\" height=\"100%\" fill=\"#fff\"/>{_body}</svg>";

    private const string Style =
        "<defs><pattern id=\"bars\" width=\"6\" height=\"6\" patternUnits=\"userSpaceOnUse\" "
        + "patternTransform=\"rotate(45)\"><rect width=\"6\" height=\"6\" fill=\"#fff\"/>"
        + "<rect width=\"2.4\" height=\"6\" fill=\"#8a4b00\"/></pattern></defs>"
        + "<style>text{font-family:system-ui,sans-serif;fill:#111}.t{font-size:13px}"
        + ".s{font-size:11px}.h{font-size:15px;font-weight:600}.axis{stroke:#333;stroke-width:1}"
        + ".grid{stroke:#ccc;stroke-width:1}.winter{fill:#0b4f79;stroke:#0b4f79}"
        + ".summer{fill:url(#bars);stroke:#8a4b00}.body{fill:#f3efe4;stroke:#555}"
        + ".air{fill:#fff;stroke:#555;stroke-dasharray:3 3}"
        + ".temp{fill:none;stroke:#0b4f79;stroke-width:2.5}"
        + ".sat{fill:none;stroke:#8a4b00;stroke-width:2;stroke-dasharray:7 4}"
        + ".vap{fill:none;stroke:#111;stroke-width:2.5}.wet{fill:#0b4f79;stroke:#0b4f79}"
        + ".dry{fill:url(#bars);stroke:#8a4b00}.halo{paint-order:stroke;stroke:#fff;"
        + "stroke-width:4px;stroke-linejoin:round}.claim{stroke:#111;stroke-width:2.5;"
        + "stroke-dasharray:3 3}.dew{stroke:#111;stroke-width:1.5;stroke-dasharray:9 3 2 3}"
        + ".dot{fill:#fff;stroke:#0b4f79;stroke-width:2}.drop{fill:#111}</style>";
}
