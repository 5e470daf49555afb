using System.Globalization;
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
    private const double SmallestTitlePt = 5;

    /// <summary>One drawing that scales with its page; US Letter landscape in proportion.</summary>
    public static byte[] Svg(BuildingMap map) => SvgPaper.Svg(
        Overview(map), Lettering.Clean($"Flat map of {map.Title}"), Description(map));

    /// <summary>The overview, then each plane on a page of its own; US Letter landscape.</summary>
    public static byte[] Pdf(BuildingMap map) =>
        Paper.Pdf($"Flat map of {map.Title}", Pages(map));

    /// <summary>The overview as a picture, <paramref name="widthPx"/> wide.</summary>
    public static byte[] Png(BuildingMap map, int widthPx) =>
        Paper.Png(Overview(map), widthPx * 72 / PageWidthPt);

    internal static IReadOnlyList<Sketch> Pages(BuildingMap map) =>
        [Overview(map), .. map.Planes.Select(plane => OnePlane(map, plane))];

    private static string Description(BuildingMap map) => Lettering.Clean(string.Join("; ",
        map.Planes.Select(plane => $"{plane.Title}: {plane.Strips.Count} pieces")));

    private static Sketch Overview(BuildingMap map)
    {
        var sketch = new Sketch(PageWidthPt, PageHeightPt);
        Heading(sketch, map.Title, map.Summary);
        var room = new Frame(
            MarginPt, 62, PageWidthPt - 2 * MarginPt, PageHeightPt - 62 - 50);
        DrawPlanes(sketch, map, room, MapDetail.Overview);
        Footer(sketch);
        return sketch;
    }

    private static Sketch OnePlane(BuildingMap map, MapPlane plane)
    {
        var sketch = new Sketch(PageWidthPt, PageHeightPt);
        Heading(sketch, map.Title, map.Summary);
        var room = new Frame(
            MarginPt, 62, PageWidthPt - 2 * MarginPt, PageHeightPt - 62 - 50);
        DrawPlane(sketch, plane, room);
        Footer(sketch);
        return sketch;
    }

    /// <summary>Draws the unfolded building in a room.</summary>
    internal static void DrawPlanes(
        Sketch sketch, BuildingMap map, Frame room, MapDetail detail)
    {
        foreach (var placed in MapLayout.Place(map, room, detail.GapPt))
        {
            new PlaneDrawing(sketch, placed, detail).Draw();
            PlaneTitle(sketch, placed, detail);
        }
    }

    /// <summary>One plane standing on its foot, with the words where its strip 1 begins.</summary>
    internal static void DrawPlane(
        Sketch sketch, MapPlane plane, Frame room, bool withTitle = true)
    {
        if (plane.OutlineIn.Count < 3)
        {
            return;
        }

        var detail = MapDetail.OnePlane;
        var footPt = 12.0;
        var placed = MapLayout.PlaceAlone(plane, Above(room, footPt), detail.GapPt);
        if (plane.Strips.Any(strip => StripRooms.IsTooNarrow(placed, strip, detail)))
        {
            footPt = 34;
            placed = MapLayout.PlaceAlone(plane, Above(room, footPt), detail.GapPt);
        }

        new PlaneDrawing(sketch, placed, detail).Draw();
        if (withTitle)
        {
            PlaneTitle(sketch, placed, detail);
        }

        var around = Frame.Around(placed.Outline);
        var word = plane.Kind == PlaneKind.Endwall ? "sidewall A side" : "endwall 1 side";
        var onRight = placed.Side == MapSide.Mirrored;
        var corner = new Spot(onRight ? around.Right : around.X, around.Bottom + footPt - 1);
        var text = onRight ? $"{word} ▲" : $"▲ {word}";
        sketch.Text(new Words(text, corner, 9)
        {
            Anchor = onRight ? Anchor.End : Anchor.Start,
        });
    }

    private static Frame Above(Frame room, double footPt) =>
        room with { Height = room.Height - footPt };

    /// <summary>
    /// Pattern and words above the plane: the word tells, pattern and colour support.
    /// </summary>
    private static void PlaneTitle(Sketch sketch, PlacedPlane placed, MapDetail detail)
    {
        var around = Frame.Around(placed.Outline);
        var (left, width) = placed.TitleRoom ?? (around.X, around.Width);
        left = placed.Side is MapSide.End1 or MapSide.End2 ? left : around.X;
        var swatch = new Frame(left, around.Y - 12, 22, 8);
        PlaneLook.Band(sketch, swatch, placed.Plane.Kind);
        var title = Lettering.Clean(placed.Plane.Title);
        string[] parts = [title, Lettering.Clean(placed.Plane.SizeText), Pieces(placed, detail)];
        var full = string.Join(" · ", parts.Where(part => part.Length > 0));
        var fits = Lettering.Width(full, SmallestTitlePt, bold: true) <= width - 26;
        var (text, size) = Lettering.Fit(
            fits ? full : title, width - 26, 9, SmallestTitlePt, bold: true);
        sketch.Text(new Words(text, new(swatch.Right + 4, swatch.Bottom), size) { Bold = true });
    }

    /// <summary>
    /// How many; and which, where the strips are too narrow to say it themselves.
    /// </summary>
    private static string Pieces(PlacedPlane placed, MapDetail detail)
    {
        var strips = placed.Plane.Strips;
        var count = strips.Count == 1
            ? "1 piece"
            : string.Create(CultureInfo.InvariantCulture, $"{strips.Count} pieces");
        if (detail.HasFootRoom
            || !strips.Any(strip => StripRooms.IsTooNarrow(placed, strip, detail)))
        {
            return count;
        }

        var (first, last) = (Lettering.Clean(strips[0].Mark), Lettering.Clean(strips[^1].Mark));
        return strips.Count == 1 ? $"{count}, {first}" : $"{count}, {first} to {last}";
    }

    private static void Heading(Sketch sketch, string title, string summary)
    {
        var (big, size) = Lettering.Fit(
            Lettering.Clean(title), PageWidthPt - 2 * MarginPt, 16, 9, bold: true);
        sketch.Text(new Words(big, new(MarginPt, 36), size) { Bold = true });
        var (small, smallSize) = Lettering.Fit(
            Lettering.Clean(summary), PageWidthPt - 2 * MarginPt, 10, 7);
        sketch.Text(new Words(small, new(MarginPt, 50), smallSize));
    }

    private static void Footer(Sketch sketch)
    {
        string[] lines =
        [
            "Seen from outside. Strips count from endwall 1 and from sidewall A. Solid line: joint;"
                + " dashed: the tab's lap; crossed: opening. Lengths are cut lengths; walls are "
                + "square-cut to the highest point and trimmed to the rake on site.",
            "Faced blanket hides holes and holds nothing: never step on it. This sheet helps you"
                + " cut and lay blanket; the building code, your building official and the"
                + " licensed designer decide.",
        ];
        var y = PageHeightPt - 36;
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
