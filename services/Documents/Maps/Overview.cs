using PostFrame.Documents.Drawing;

namespace PostFrame.Documents.Maps;

/// <summary>
/// The whole building on one sheet; what its planes are too small to say stands in a table below
/// them, for which they give up room.
/// </summary>
internal sealed class Overview(BuildingMap map)
{
    private const double TextPt = 6.5;
    private const double StepPt = 8.2;

    /// <summary>A longer table makes the sheet longer instead of the drawing smaller.</summary>
    private const double MostOfRoom = 0.4;

    private const double MostForTitles = 0.65;

    /// <param name="Beside">What the plane itself is too small to say.</param>
    private sealed record Drawn(
        PlacedPlane Placed, PlaneLettering Lettering, PlaneTitle Title, string Beside);

    private sealed record Row(string Text, bool Bold);

    /// <summary>Of the last drawing [pt to an inch of the building].</summary>
    public double Scale { get; private set; }

    /// <summary>Draws into the room; answers how much longer than the room it came [pt].</summary>
    public double Draw(Sketch sketch, Frame room)
    {
        var tablePt = 0.0;
        List<Drawn> planes = [];
        List<Row> rows = [];
        for (var round = 0; round < 4; round++)
        {
            var left = room.Height - Math.Min(tablePt, room.Height * MostOfRoom);
            planes = [.. Lay(room with { Height = left })];
            rows = [.. Table(planes, room.Width)];
            var needed = rows.Count == 0 ? 0 : rows.Count * StepPt + 6;
            if (needed <= tablePt)
            {
                break;
            }

            tablePt = needed;
        }

        Scale = planes.Select(plane => plane.Placed.Scale).FirstOrDefault();
        Draw(sketch, planes);
        var y = room.Bottom - Math.Min(tablePt, room.Height * MostOfRoom) + StepPt + 4;
        foreach (var row in rows)
        {
            sketch.Text(new Words(row.Text, new(room.X, y), TextPt) { Bold = row.Bold });
            y += StepPt;
        }

        return Math.Max(0, y - StepPt - room.Bottom);
    }

    /// <summary>
    /// Drawing and titles alone, for a sheet that lists the pieces itself; without titles where
    /// they would leave the planes no room.
    /// </summary>
    public static void DrawBare(Sketch sketch, BuildingMap map, Frame room)
    {
        var stacked = map.Planes.Count(plane => plane.Kind != PlaneKind.Endwall);
        if (stacked * MapDetail.Overview.GapPt > room.Height * MostForTitles)
        {
            new SmallMap(map, room).Draw(sketch);
        }
        else
        {
            Draw(sketch, new Overview(map).Lay(room));
        }
    }

    private static void Draw(Sketch sketch, IEnumerable<Drawn> planes)
    {
        foreach (var plane in planes)
        {
            new PlaneDrawing(sketch, plane.Placed, plane.Lettering).Draw();
            plane.Title.Draw(sketch, plane.Placed.Plane.Kind);
        }
    }

    private IEnumerable<Drawn> Lay(Frame room) => MapLayout
        .Place(map, room, MapDetail.Overview.GapPt, PlaneTitle.LeastWidthPt)
        .Select(placed =>
        {
            var lettering = new PlaneLettering(placed, MapDetail.Overview);
            var missed = new PlaneWords(placed, lettering.Detail).Missed;
            var outside = PieceRanges.Words(placed.Plane, lettering.Outside);
            string[] beside = [missed, outside];
            return new Drawn(
                placed, lettering, PlaneTitle.Of(placed, outside, missed),
                string.Join(PieceRanges.Between, beside.Where(words => words.Length > 0)));
        });

    private IEnumerable<Row> Table(IReadOnlyList<Drawn> planes, double width)
    {
        foreach (var plane in planes.Where(plane => !plane.Title.SaysAll))
        {
            foreach (var row in Rows(plane, width))
            {
                yield return new Row(row, true);
            }
        }

        foreach (var note in map.Notes)
        {
            foreach (var row in Wrapped(note, width))
            {
                yield return new Row(row, true);
            }
        }
    }

    /// <summary>A plane's pieces, broken between lengths and never within one.</summary>
    private static IEnumerable<string> Rows(Drawn plane, double width)
    {
        var row = $"{Lettering.Clean(plane.Placed.Plane.Title)}:";
        foreach (var group in plane.Beside.Split(PieceRanges.Between))
        {
            var longer = row.EndsWith(':') ? $"{row} {group}" : row + PieceRanges.Between + group;
            if (Lettering.Width(longer, TextPt, bold: true) <= width)
            {
                row = longer;
                continue;
            }

            var wrapped = Wrapped(row.EndsWith(':') ? longer : group, width).ToList();
            if (!row.EndsWith(':'))
            {
                yield return row;
            }

            foreach (var full in wrapped.SkipLast(1))
            {
                yield return full;
            }

            row = wrapped[^1];
        }

        yield return row;
    }

    private static IEnumerable<string> Wrapped(string text, double width) => Lettering.Wrap(
        Lettering.Clean(text, Lettering.LongestText), width, TextPt, bold: true);
}
