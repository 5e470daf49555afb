using System.Globalization;
using PostFrame.Engine.Heat;
using PostFrame.Engine.Quantities;

namespace PostFrame.SizingApi.Comparisons;

/// <summary>What the plane resists with each line in both seasons, and what was claimed.</summary>
internal static class SidePicture
{
    private const double Left = 262;
    private const double Row = 66;
    private const double Top = 72;

    public static string Of(IReadOnlyList<RebuiltLine> lines, Setting setting)
    {
        var words = setting.Words;
        var plane = setting.Input.IsWall ? "wall" : "roof";
        var most = lines.Max(line => Math.Max(
            Math.Max(Shown(line.WinterR, words), Shown(line.Summer?.R, words)),
            Shown(Claimed(line), words)));
        var step = ComparisonPictures.NiceStep(Math.Max(most, words.IsMetric ? 0.2 : 1));
        var to = step * Math.Max(1, Math.Ceiling(most / step - 1e-9));
        var wide = ComparisonPictures.Width - Left - 70;
        double Wide(ThermalResistance r) => wide * words.Axis(r) / to;
        var bottom = Top + Row * lines.Count;
        var svg = new Svg(
            ComparisonPictures.Width, bottom + 62, $"Assembly R of the {plane}, side by side",
            string.Join("; ", lines.Select(line => Told(line, words))));
        svg.Text(16, 26, $"What the {plane} resists with each, films and framing included",
                style: "h")
            .Box(Left, 40, 14, 12, "winter").Text(Left + 20, 51, "winter")
            .Box(Left + 90, 40, 14, 12, "summer").Text(Left + 110, 51, "summer")
            .Line(Left + 187, 39, Left + 187, 53, "claim")
            .Text(Left + 196, 51, "R as claimed");
        var y = Top;
        foreach (var line in lines)
        {
            svg.Line(16, y - 6, ComparisonPictures.Width - 16, y - 6, "grid")
                .Wrapped(16, y + 12, line.Name, 34, 2)
                .Text(16, y + 44, Svg.Fitted(Side(line, words), 42), style: "s");
            if (line.WinterR is not { } winter) Blank(svg, y, line);
            else
            {
                Bar(svg, y + 2, winter, Wide(winter), "winter", words,
                    line.Tested is null ? "" : ", tested value");
                if (line.Summer?.R is { } summer)
                    Bar(svg, y + 28, summer, Wide(summer), "summer", words);
            }
            if (Claimed(line) is { } claimed)
                svg.Line(Left + Wide(claimed), y - 2, Left + Wide(claimed), y + 52, "claim");
            y += Row;
        }
        svg.Line(Left, Top - 8, Left, bottom - 6);
        ComparisonPictures.LevelAxis(
            svg, Left, wide, bottom - 6, to, $"assembly R [{words.RUnit}]", step);
        return svg.Text(16, bottom + 48, "By " + Films.TitleOf(setting.Input.Basis), style: "s")
            .ToString();
    }

    private static void Bar(
        Svg svg, double y, ThermalResistance r, double wide, string style, UnitWords words,
        string note = "") =>
        svg.Box(Left, y, wide, 18, style).Haloed(
            Left + wide + 6, y + 14,
            words.Axis(r).ToString(words.RFormat, CultureInfo.InvariantCulture) + note);

    /// <summary>What is missing, in the words of its questions' members.</summary>
    private static void Blank(Svg svg, double y, RebuiltLine line)
    {
        var missing = line.Questions
            .Select(question => MissingOf(question.Pointer))
            .Distinct().ToList();
        svg.Haloed(Left + 10, y + 16, "left blank, nothing is assumed", "t")
            .Haloed(
                Left + 10, y + 34,
                missing.Count == 0
                    ? "no tested value is held for it"
                    : Svg.Fitted("to ask: " + string.Join(", ", missing), 68), "s");
    }

    private static string MissingOf(string pointer) => pointer[(pointer.LastIndexOf('/') + 1)..]
        switch
    {
        "claimedR" => "stated R",
        "roomFace" => "face to the room",
        "claddingFace" => "face to the cladding",
        "airSpaces" => "air spaces",
        "side" => "side of the air space",
        "kind" => "whether the air space is closed",
        "perm" => "perms",
        var other => other,
    };

    private static string Side(RebuiltLine line, UnitWords words)
    {
        var price = line.Asked.PricePerFt2 is { } p ? words.Price(p) : "no price";
        var claim = line.Asked.Candidate.ClaimedR is { } r
            ? $", claimed {UnitWords.Us.Claimed(r)}"
            : "";
        return (line.Asked.Ours ? "ours, " : "quoted, ") + price + claim;
    }

    private static string Told(RebuiltLine line, UnitWords words) => line.WinterR is not { } winter
        ? $"{line.Name}: blank"
        : $"{line.Name}: winter {words.Of(winter)}"
            + (line.Summer is { } summer ? $", summer {words.Of(summer.R)}" : "");

    private static ThermalResistance? Claimed(RebuiltLine line) =>
        line.Asked.Candidate.ClaimedR is { } r ? ThermalResistance.FromRValue(r) : null;

    private static double Shown(ThermalResistance? r, UnitWords words) =>
        r is { } value ? words.Axis(value) : 0;
}
