using PostFrame.Documents.Drawing;
using PostFrame.Documents.Maps;

namespace PostFrame.Documents;

/// <summary>
/// The flat map: a building unfolded, every plane true to one scale with its strips, marks,
/// lengths, openings, laps and ridge vent. Legible in black and white. The same map gives the same
/// bytes.
/// </summary>
public static class FlatMap
{
    private const double PageWidthPt = 792;
    private const double PageHeightPt = 612;
    private const double MarginPt = 30;
    private const double ScaleBarPt = 170;

    /// <summary>One drawing that scales with its page; US Letter landscape in proportion.</summary>
    public static byte[] Svg(BuildingMap map) => SvgPaper.Svg(
        WholeBuilding(map), Lettering.Clean($"Flat map of {map.Title}"), Description(map));

    /// <summary>The overview, then each plane on a page of its own; US Letter landscape.</summary>
    public static byte[] Pdf(BuildingMap map) =>
        Paper.Pdf($"Flat map of {map.Title}", Pages(map));

    /// <summary>The overview as a picture, <paramref name="widthPx"/> wide.</summary>
    public static byte[] Png(BuildingMap map, int widthPx) =>
        Paper.Png(WholeBuilding(map), widthPx * 72 / PageWidthPt);

    internal static IReadOnlyList<Sketch> Pages(BuildingMap map) =>
        [WholeBuilding(map), .. map.Planes.SelectMany(plane => OnePlane(map, plane))];

    private static string Description(BuildingMap map) => Lettering.Clean(string.Join("; ",
        map.Planes.Select(plane => $"{plane.Title}: {PlaneTitle.Count(plane)}")));

    private static Sketch WholeBuilding(BuildingMap map)
    {
        var overview = new Overview(map);
        var longer = overview.Draw(new Sketch(PageWidthPt, PageHeightPt), Room);
        var sketch = new Sketch(PageWidthPt, PageHeightPt + longer);
        Heading(sketch, map, overview.Scale);
        overview.Draw(sketch, Room);
        Footer(sketch);
        return sketch;
    }

    private static IEnumerable<Sketch> OnePlane(BuildingMap map, MapPlane plane)
    {
        if (plane.OutlineIn.Count < 3)
        {
            yield break;
        }

        var sheets = new PlaneSheets(plane, Room);
        for (var i = 0; i < sheets.Count; i++)
        {
            var sketch = new Sketch(PageWidthPt, PageHeightPt);
            Heading(sketch, map, sheets.Scale);
            sheets.Draw(sketch, i);
            Footer(sketch);
            yield return sketch;
        }
    }

    private static Frame Room => new(
        MarginPt, 62, PageWidthPt - 2 * MarginPt, PageHeightPt - 62 - 50);

    private static void Heading(Sketch sketch, BuildingMap map, double scale)
    {
        const double room = PageWidthPt - 2 * MarginPt - ScaleBarPt;
        var (big, size) = Lettering.Fit(Lettering.Clean(map.Title), room, 16, 9, bold: true);
        sketch.Text(new Words(big, new(MarginPt, 36), size) { Bold = true });
        var (small, smallSize) = Lettering.Fit(Lettering.Clean(map.Summary), room, 10, 7);
        sketch.Text(new Words(small, new(MarginPt, 50), smallSize));
        if (Lettering.Lacks(map.Title))
        {
            sketch.Text(new Words(Lettering.LackRemark, new(MarginPt, 59.5), 6.5));
        }

        ScaleBar.Draw(sketch, new(PageWidthPt - MarginPt, 50), scale, map.IsMetric);
    }

    private static void Footer(Sketch sketch)
    {
        string[] lines =
        [
            "Seen from outside. Strips count from endwall 1 and from sidewall A. Solid line: joint;"
                + " dashed: the tab's lap; crossed: opening; thick dashed band: ridge vent, which"
                + " no blanket may cross. Lengths are cut lengths; walls are square-cut to the"
                + " highest point and trimmed to the rake on site.",
            "Faced blanket hides holes and holds nothing: never step on it. This sheet helps you"
                + " cut and lay blanket; the building code, your building official and the"
                + " licensed designer decide.",
        ];
        var y = sketch.HeightPt - 36;
        foreach (var line in lines)
        {
            foreach (var row in Lettering.Wrap(line, PageWidthPt - 2 * MarginPt, 7))
            {
                sketch.Text(new Words(row, new(MarginPt, y), 7) { Colour = Ink.Black });
                y += 8.5;
            }
        }
    }
}
