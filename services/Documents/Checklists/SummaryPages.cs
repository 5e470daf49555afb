using System.Globalization;
using PostFrame.Documents.Drawing;
using PostFrame.Documents.Maps;

namespace PostFrame.Documents.Checklists;

/// <summary>The packing list: what is in the delivery, counted.</summary>
internal sealed class SummaryPages(PackingList list)
{
    private const double HeadPt = 43;
    private const double RowPt = 24;

    /// <summary>A product stands once above its planes, in letters read standing.</summary>
    private const double ProductPt = 19;
    private const double LeastPicturePt = 150;
    private const double RoomPt = Sheet.Bottom - 30 - Sheet.Top - HeadPt;

    private sealed record Row(double HeightPt, Action<Sketch, double> Draw);

    public IEnumerable<Action<Sketch>> Bodies() =>
        Chunks().Select<List<Row>, Action<Sketch>>(rows => sketch => Page(sketch, rows));

    /// <summary>As many rows to a page as it has room for.</summary>
    private IEnumerable<List<Row>> Chunks()
    {
        List<Row> page = [];
        foreach (var row in Rows())
        {
            if (page.Sum(before => before.HeightPt) + row.HeightPt > RoomPt)
            {
                yield return page;
                page = [];
            }

            page.Add(row);
        }

        yield return page;
    }

    private IEnumerable<Row> Rows()
    {
        var product = "";
        foreach (var plane in list.Planes)
        {
            if (plane.ProductText != product)
            {
                product = plane.ProductText;
                yield return new Row(ProductPt, (sketch, y) => Product(sketch, plane, y));
            }

            yield return new Row(RowPt, (sketch, y) => Plane(sketch, plane, y));
        }

        yield return new Row(RowPt, Totals);
        foreach (var item in list.Accessories)
        {
            yield return new Row(RowPt, (sketch, y) => Accessory(sketch, item, y));
        }
    }

    private void Page(Sketch sketch, IReadOnlyList<Row> rows)
    {
        Sheet.Text(sketch, "PACKING LIST", new(Sheet.Left, Sheet.Top + 20), 300, 24, bold: true);
        var head = Sheet.Top + 38;
        Sheet.Text(sketch, "product and plane", new(Sheet.Left, head), 200, 9);
        Sheet.Text(sketch, "pieces", new(378, head), 60, 9, anchor: Anchor.End);
        Sheet.Text(sketch, "length", new(456, head), 70, 9, anchor: Anchor.End);
        Sheet.Text(sketch, "weight", new(514, head), 60, 9, anchor: Anchor.End);
        Sheet.Text(sketch, "received", new(Sheet.Right, head), 50, 9, anchor: Anchor.End);
        var y = Sheet.Top + HeadPt;
        foreach (var row in rows)
        {
            sketch.Line(new(Sheet.Left, y), new(Sheet.Right, y), 0.5);
            row.Draw(sketch, y + row.HeightPt / 2 + 4.5);
            y += row.HeightPt;
        }

        sketch.Line(new(Sheet.Left, y), new(Sheet.Right, y), 0.5);
        Signatures(sketch);
        var room = new Frame(Sheet.Left, y + 6, Sheet.Inner, Sheet.Bottom - 30 - y - 6);
        if (room.Height > LeastPicturePt)
        {
            Overview.DrawBare(sketch, list.Map, room);
        }
    }

    private static void Product(Sketch sketch, PackedPlane plane, double y) => Sheet.Text(
        sketch, plane.ProductText, new(Sheet.Left, y - 1), Sheet.Inner, 11);

    private void Plane(Sketch sketch, PackedPlane plane, double y)
    {
        var drawn = list.Map.Planes.FirstOrDefault(p => p.Id == plane.PlaneId)
            ?? throw new ArgumentException($"The map has no plane {plane.PlaneId}.");
        PlaneLook.Band(sketch, new Frame(Sheet.Left, y - 12, 44, 15), drawn.Kind);
        Sheet.Text(sketch, drawn.Title, new(Sheet.Left + 52, y), 250, 13, bold: true);
        var weight = plane.Pieces.Sum(piece => piece.WeightLb);
        Figures(sketch, plane.Pieces.Count, plane.TotalLengthText, weight, y);
    }

    private void Totals(Sketch sketch, double y)
    {
        var pieces = list.Planes.SelectMany(plane => plane.Pieces).ToList();
        Sheet.Text(sketch, "All planes", new(Sheet.Left + 52, y), 200, 13, bold: true);
        Figures(sketch, pieces.Count, "", pieces.Sum(piece => piece.WeightLb), y);
    }

    private static void Accessory(Sketch sketch, PackedAccessory item, double y)
    {
        Sheet.Text(sketch, item.Name, new(Sheet.Left + 52, y), 290, 12);
        Sheet.Text(sketch, item.Quantity, new(514, y), 130, 12, true, Anchor.End);
        Sheet.TickBox(sketch, new(Sheet.Right - 16, y - 4.5), 14);
    }

    private void Figures(
        Sketch sketch, int pieces, string length, double weightLb, double y)
    {
        var count = pieces.ToString(CultureInfo.InvariantCulture);
        Sheet.Text(sketch, count, new(378, y), 40, 14, true, Anchor.End);
        Sheet.Text(sketch, length, new(456, y), 74, 11, false, Anchor.End);
        var weight = Masses.Of(weightLb, list.IsMetric);
        Sheet.Text(sketch, weight, new(514, y), 56, 11, false, Anchor.End);
        Sheet.TickBox(sketch, new(Sheet.Right - 16, y - 4.5), 14);
    }

    private static void Signatures(Sketch sketch)
    {
        var y = Sheet.Bottom - 8;
        foreach (var (word, from, to) in new[]
        {
            ("Packed by, date", Sheet.Left, 205.0),
            ("Received by, date", 217.0, 386.0),
            ("Missing or damaged", 398.0, Sheet.Right),
        })
        {
            sketch.Line(new(from, y), new(to, y), 0.8);
            Sheet.Text(sketch, word, new(from, y + 9), to - from, 8);
        }
    }
}
