using System.Globalization;
using PostFrame.Documents.Drawing;

namespace PostFrame.Documents.Maps;

/// <summary>
/// Pattern and words above a plane: the word tells, pattern and colour support.
/// </summary>
internal sealed record PlaneTitle(Frame Swatch, IReadOnlyList<string> Lines, double SizePt)
{
    public const double LeastPt = 6.5;
    private const double MostPt = 9;

    /// <summary>Two lines of this size stand between two planes.</summary>
    private const double TwoLinesPt = 7;
    private const double SwatchPt = 20;
    private const double SpacePt = 4;

    /// <summary>A title longer than this has to shrink.</summary>
    private const double WidestPt = 110;

    /// <summary>Whether the pieces told of outside the plane are told of here.</summary>
    public bool SaysAll { get; private init; }

    /// <summary>The width a plane's title needs at its smallest.</summary>
    public static double LeastWidthPt(MapPlane plane) => Math.Min(WidestPt, SwatchPt + SpacePt
        + Lettering.Width(Lettering.Clean(plane.Title), LeastPt + 0.01, bold: true));

    /// <summary>
    /// As much as fits: with the pieces outside, without, in two lines; what the drawing misses to
    /// say comes before the pieces.
    /// </summary>
    public static PlaneTitle Of(
        PlacedPlane placed, string outside, string missed = "", MapPlane? whole = null)
    {
        var plane = whole ?? placed.Plane;
        var around = Frame.Around(placed.Outline);
        var (left, width) = placed.TitleRoom ?? (around.X, around.Width);
        var title = Lettering.Clean(plane.Title);
        string[] all = [title, Lettering.Clean(plane.SizeText), Count(plane), missed, outside];
        foreach (var parts in (string[][])[
            all, all[..4], [title, Count(plane), missed], [title, Count(plane)]])
        {
            var line = string.Join(" · ", parts.Where(part => part.Length > 0));
            var (text, size) = Lettering.Fit(
                line, width - SwatchPt - SpacePt, MostPt, LeastPt, bold: true);
            if (text == line)
            {
                return new PlaneTitle(Band(placed, left, width, line, size), [text], size)
                {
                    SaysAll = parts.Length == all.Length
                        || (outside.Length == 0 && (missed.Length == 0 || parts.Contains(missed))),
                };
            }
        }

        var room = width - SwatchPt - SpacePt;
        var (first, firstSize) = Lettering.Fit(title, room, TwoLinesPt, LeastPt, bold: true);
        var (second, _) = Lettering.Fit(Count(plane), room, firstSize, firstSize, bold: true);
        return new PlaneTitle(
            Band(placed, left, width, first, firstSize), [first, second], firstSize)
        {
            SaysAll = outside.Length == 0 && missed.Length == 0,
        };
    }

    public static string Count(MapPlane plane) => plane.Strips.Count switch
    {
        0 when plane.CoverText.Length > 0 => Lettering.Clean(plane.CoverText),
        0 => "nothing cut",
        1 => "1 piece",
        var count => string.Create(CultureInfo.InvariantCulture, $"{count} pieces"),
    };

    public void Draw(Sketch sketch, PlaneKind kind)
    {
        PlaneLook.Band(sketch, Swatch, kind);
        for (var i = 0; i < Lines.Count; i++)
        {
            var y = Swatch.Bottom - (Lines.Count - 1 - i) * (SizePt + 0.6);
            var at = new Spot(Swatch.Right + SpacePt, y);
            sketch.Text(new Words(Lines[i], at, SizePt) { Bold = true });
        }
    }

    /// <summary>Above the plane's own corner, or as far left as a longer title asks.</summary>
    private static Frame Band(
        PlacedPlane placed, double left, double width, string line, double size)
    {
        var around = Frame.Around(placed.Outline);
        var wide = SwatchPt + SpacePt + Lettering.Width(line, size, bold: true);
        var x = placed.Side is MapSide.End1 or MapSide.End2
            ? left
            : Math.Max(left, Math.Min(around.X, left + width - wide));
        return new Frame(x, around.Y - 12, SwatchPt, 8);
    }
}
