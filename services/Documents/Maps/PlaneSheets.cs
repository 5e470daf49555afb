using System.Globalization;
using PostFrame.Documents.Drawing;

namespace PostFrame.Documents.Maps;

/// <summary>
/// One plane as large as a sheet allows, standing on its foot and seen from outside. A long one is
/// cut into rows of few enough strips to be read, on as many sheets as that takes, at one scale.
/// </summary>
internal sealed class PlaneSheets
{
    /// <summary>A strip may have a header and a sill: twice as many call-outs fit a row.</summary>
    private const int MostInRow = 50;
    private const double CornerPt = 13;

    /// <summary>For a line about what the drawing has no room to say.</summary>
    private const double NotePt = 10;
    private static readonly MapDetail Detail = MapDetail.OnePlane;

    private readonly MapPlane plane;
    private readonly IReadOnlyList<MapPlane> rows;

    private readonly CallOuts callOuts;

    /// <param name="isListed">Its pieces stand in a list beside the drawing.</param>
    public PlaneSheets(MapPlane plane, Frame room, bool isListed = false)
    {
        this.plane = plane;
        callOuts = new(withLengths: !isListed);
        Room = room with { Height = room.Height - NotePt };
        rows = [.. Rows(plane, isListed ? int.MaxValue : MostInRow)];
        (Scale, FootPt) = Fit();
        var rowPt = Detail.GapPt + HeightIn * Scale + FootPt;
        RowsOnSheet = Math.Max(1, (int)(Room.Height / rowPt + 1e-9));
    }

    /// <summary>Points on paper to an inch of the building.</summary>
    public double Scale { get; }

    public int Count => (rows.Count + RowsOnSheet - 1) / RowsOnSheet;

    private Frame Room { get; }

    private double FootPt { get; }

    private int RowsOnSheet { get; }

    private double HeightIn =>
        plane.OutlineIn.Max(p => p.UpIn) - plane.OutlineIn.Min(p => p.UpIn);

    /// <summary>Draws a sheet; <paramref name="sheet"/> counts from 0.</summary>
    public void Draw(Sketch sketch, int sheet, bool withTitle = true)
    {
        var first = sheet * RowsOnSheet;
        var here = rows.Skip(first).Take(RowsOnSheet).ToList();
        var rowPt = Room.Height / (rows.Count == 1 ? 1 : RowsOnSheet);
        var unnamed = new List<string>();
        for (var i = 0; i < here.Count; i++)
        {
            var frame = new Frame(Room.X, Room.Y + i * rowPt, Room.Width, rowPt);
            unnamed.AddRange(DrawRow(sketch, here[i], first + i, frame, withTitle));
        }

        if (unnamed.Count > 0)
        {
            var words = string.Join(", ", unnamed.GroupBy(word => word).Select(same =>
                same.Count() == 1 ? same.Key : Invariant($"{same.Count()} × {same.Key}")));
            var (text, size) = Lettering.Fit(
                $"Too small to be named on the drawing: {words}", Room.Width, 7, 6);
            sketch.Text(new Words(text, new(Room.X, Room.Bottom + 8), size));
        }
    }

    private IReadOnlyList<string> DrawRow(
        Sketch sketch, MapPlane row, int index, Frame frame, bool withTitle)
    {
        var above = frame with { Height = frame.Height - FootPt };
        var placed = MapLayout.PlaceAlone(row, above, Detail.GapPt, Scale);
        var lettering = new PlaneLettering(placed, Detail);
        var unnamed = new PlaneDrawing(sketch, placed, lettering).Draw(() =>
        {
            if (lettering.Outside.Count > 0)
            {
                callOuts.Draw(sketch, placed, lettering.Outside, Room);
            }
        });

        if (withTitle)
        {
            var part = rows.Count == 1 ? "" : Invariant($"part {index + 1} of {rows.Count}");
            PlaneTitle.Of(placed, part, whole: plane).Draw(sketch, plane.Kind);
        }

        Corner(sketch, placed, index);
        return unnamed;
    }

    /// <summary>Which end strip 1 is at; on further rows, which end the row before is.</summary>
    private void Corner(Sketch sketch, PlacedPlane placed, int index)
    {
        var end = plane.Kind == PlaneKind.Endwall ? "sidewall A" : "endwall 1";
        var word = index == 0 ? $"{end} side" : $"toward {end}";
        var around = Frame.Around(placed.Outline);
        var onRight = placed.Side == MapSide.Mirrored;
        var at = new Spot(onRight ? around.Right : around.X, around.Bottom + FootPt - 2);
        sketch.Text(new Words(onRight ? $"{word} ▲" : $"▲ {word}", at, 9)
        {
            Anchor = onRight ? Anchor.End : Anchor.Start,
        });
    }

    /// <summary>
    /// The scale every row fits at, and the room below a row: call-outs need the more of it the
    /// smaller the scale, and take it from the drawing.
    /// </summary>
    private (double Scale, double FootPt) Fit()
    {
        var runIn = rows.Max(row =>
            row.OutlineIn.Max(p => p.AcrossIn) - row.OutlineIn.Min(p => p.AcrossIn));
        var foot = CornerPt;
        for (var round = 0; ; round++)
        {
            var scale = Math.Max(0, Math.Min(
                Room.Width / runIn, (Room.Height - Detail.GapPt - foot) / HeightIn));
            var outside = rows.SelectMany(row => new PlaneLettering(
                MapLayout.PlaceAlone(row, Room, Detail.GapPt, scale), Detail).Outside).ToList();
            var needed = outside.Count == 0 ? CornerPt : CornerPt + callOuts.DepthPt(outside);
            if (needed <= foot + 0.01 || round == 3)
            {
                return (scale, Math.Max(foot, needed));
            }

            foot = needed;
        }
    }

    private static IEnumerable<MapPlane> Rows(MapPlane plane, int mostInRow)
    {
        var (least, most) = PlaneShape.Ends(plane);
        var starts = plane.Strips.Select(strip => strip.FromIn)
            .Where(from => from < most - 0.01).Distinct().Order().ToList();
        var rows = Math.Max(1, (int)Math.Ceiling(starts.Count / (double)mostInRow));
        var each = (starts.Count + rows - 1) / rows;
        for (var i = 0; i < rows; i++)
        {
            var from = i == 0 ? least : starts[i * each];
            var isLast = (i + 1) * each >= starts.Count;
            var to = isLast ? most : starts[(i + 1) * each];
            yield return rows == 1 ? plane : PlaneShape.Part(plane, from, to, isLast);
            if (isLast)
            {
                yield break;
            }
        }
    }

    private static string Invariant(FormattableString text) =>
        text.ToString(CultureInfo.InvariantCulture);
}
