using System.Globalization;
using PostFrame.Documents.Drawing;
using PostFrame.Documents.Maps;

namespace PostFrame.Documents.Checklists;

/// <summary>One plane: its drawing and a row to tick for each piece.</summary>
internal sealed class PlanePages(PackingList list, PackedPlane plane)
{
    private const double RowPt = 23;

    /// <summary>Closer than this a gloved hand ticks the wrong box.</summary>
    private const double LeastRowPt = 19.5;
    private const double TitlePt = 64;
    private const double LeastDrawingPt = 200;
    private const double MostDrawingPt = 330;
    private const double CaptionsPt = 40;
    private const double HeadPt = 16;
    private static readonly string[] Ticks = ["received", "fitted", "short", "damaged"];

    private readonly int total = list.Planes.Sum(p => p.Pieces.Count);
    private readonly MapPlane drawn = list.Map.Planes.FirstOrDefault(p => p.Id == plane.PlaneId)
        ?? throw new ArgumentException($"The map has no plane {plane.PlaneId}.");

    public IEnumerable<Action<Sketch>> Bodies()
    {
        var room = Sheet.Bottom - Sheet.Top - TitlePt - HeadPt;
        var together = (room - LeastDrawingPt) / plane.Pieces.Count;
        var rowPt = together >= LeastRowPt ? Math.Min(RowPt, together) : RowPt;
        var onFirst = (int)((room - LeastDrawingPt) / rowPt + 1e-9);
        var onNext = (int)(room / rowPt);
        var left = Math.Min(room - plane.Pieces.Count * rowPt, FullWidthPt());
        var drawingPt = Math.Clamp(left, LeastDrawingPt, MostDrawingPt);
        yield return sketch => Page(sketch, plane.Pieces.Take(onFirst), rowPt, drawingPt);
        foreach (var rows in plane.Pieces.Skip(onFirst).Chunk(onNext))
        {
            yield return sketch => Page(sketch, rows, rowPt, 0);
        }
    }

    /// <summary>What the drawing takes at the width of the sheet, with its captions.</summary>
    private double FullWidthPt()
    {
        if (drawn.OutlineIn.Count < 3)
        {
            return 0;
        }

        var wide = drawn.OutlineIn.Max(at => at.AcrossIn) - drawn.OutlineIn.Min(at => at.AcrossIn);
        var high = drawn.OutlineIn.Max(at => at.UpIn) - drawn.OutlineIn.Min(at => at.UpIn);
        return Sheet.Inner * high / Math.Max(wide, 1) + CaptionsPt;
    }

    /// <summary>Without a drawing where its height is 0: the plane's rows go on.</summary>
    private void Page(
        Sketch sketch, IEnumerable<PackedPiece> rows, double rowPt, double drawingPt)
    {
        PlaneLook.Band(sketch, new Frame(Sheet.Left, Sheet.Top, Sheet.Inner, 14), drawn.Kind);
        var title = Lettering.Clean(drawn.Title).ToUpperInvariant();
        var count = plane.Pieces.Count.ToString(CultureInfo.InvariantCulture);
        var pieces = $"{count} of {total} {(total == 1 ? "piece" : "pieces")}"
            + (drawingPt > 0 ? "" : ", continued");
        Sheet.Text(sketch, title, new(Sheet.Left, Sheet.Top + 41), 330, 28, bold: true);
        Sheet.Text(sketch, pieces, new(Sheet.Right, Sheet.Top + 41), 195, 13, true, Anchor.End);
        Sheet.Text(sketch, plane.ProductText, new(Sheet.Left, Sheet.Top + 58.5), Sheet.Inner, 10.5);
        var y = Sheet.Top + TitlePt;
        if (drawingPt > 0)
        {
            Drawing(sketch, new Frame(Sheet.Left, y - 6, Sheet.Inner, drawingPt - 10));
            y += drawingPt;
        }

        Head(sketch, y + 10);
        y += HeadPt;
        foreach (var row in rows)
        {
            sketch.Line(new(Sheet.Left, y), new(Sheet.Right, y), 0.5);
            Row(sketch, row, y, rowPt);
            y += rowPt;
        }

        sketch.Line(new(Sheet.Left, y), new(Sheet.Right, y), 0.5);
    }

    /// <summary>In one row: the list below says every piece, however thin it is drawn.</summary>
    private void Drawing(Sketch sketch, Frame room)
    {
        if (drawn.OutlineIn.Count >= 3)
        {
            new PlaneSheets(drawn, room, isListed: true).Draw(sketch, 0, withTitle: false);
        }
    }

    private static void Head(Sketch sketch, double y)
    {
        Sheet.Text(sketch, "piece", new(Sheet.Left, y), 60, 8.5);
        Sheet.Text(sketch, "cut length × width", new(112, y), 100, 8.5);
        Sheet.Text(sketch, "label", new(236, y), 60, 8.5);
        Sheet.Text(sketch, "id", new(296, y), 54, 8.5);
        Sheet.Text(sketch, "weight", new(396, y), 50, 8.5, anchor: Anchor.End);
        for (var i = 0; i < Ticks.Length; i++)
        {
            Sheet.Text(sketch, Ticks[i], new(TickX(i), y), 42, 8.5, anchor: Anchor.Middle);
        }
    }

    private void Row(Sketch sketch, PackedPiece piece, double y, double rowPt)
    {
        var line = y + rowPt / 2 + 5;
        var number = piece.LabelNumber.ToString(CultureInfo.InvariantCulture);
        var weight = Masses.Of(piece.WeightLb, list.IsMetric);
        var needsTwo = piece.WeightLb > Sheet.OnePersonLb;
        Sheet.Text(sketch, piece.Mark, new(Sheet.Left, line), 76, 16, bold: true);
        Sheet.Text(sketch, $"{piece.CutText} × {piece.WidthText}", new(112, line), 116, 12);
        Sheet.Text(sketch, $"{number} of {total}", new(236, line), 52, 10.5);
        Sheet.Text(sketch, piece.PieceId, new(296, line), 56, 10.5);
        Sheet.Text(sketch, weight, new(396, needsTwo ? line - 4 : line), 42, 10.5, needsTwo,
            Anchor.End);
        if (needsTwo)
        {
            Sheet.Text(sketch, "2 people", new(396, line + 3.2), 42, 7.5, true, Anchor.End);
        }

        for (var i = 0; i < Ticks.Length; i++)
        {
            Sheet.TickBox(sketch, new(TickX(i), y + rowPt / 2), 15);
        }
    }

    private static double TickX(int column) => 426 + column * 43.0;
}
