using System.Globalization;
using PostFrame.Documents.Drawing;
using PostFrame.Documents.Maps;

namespace PostFrame.Documents.Checklists;

/// <summary>The packing list: what is in the delivery, counted.</summary>
internal sealed class SummaryPages(PackingList list)
{
    private const double RowPt = 27;
    private const int MostRows = 18;

    private sealed record Row(Action<Sketch, double> Draw);

    public IEnumerable<Action<Sketch>> Bodies()
    {
        List<Row> rows =
        [
            .. list.Planes.Select(plane => new Row((sketch, y) => Plane(sketch, plane, y))),
            new Row(Totals),
            .. list.Accessories.Select(item => new Row((sketch, y) => Accessory(sketch, item, y))),
        ];
        foreach (var chunk in rows.Chunk(MostRows))
        {
            yield return sketch => Page(sketch, chunk);
        }
    }

    private void Page(Sketch sketch, Row[] rows)
    {
        Sheet.Text(sketch, "PACKING LIST", new(Sheet.Left, Sheet.Top + 20), 300, 24, bold: true);
        var head = Sheet.Top + 38;
        Sheet.Text(sketch, "plane and product", new(Sheet.Left + 52, head), 200, 9);
        Sheet.Text(sketch, "pieces", new(378, head), 60, 9, anchor: Anchor.End);
        Sheet.Text(sketch, "length", new(456, head), 70, 9, anchor: Anchor.End);
        Sheet.Text(sketch, "weight", new(514, head), 60, 9, anchor: Anchor.End);
        Sheet.Text(sketch, "received", new(Sheet.Right, head), 50, 9, anchor: Anchor.End);
        var y = head + 5;
        foreach (var row in rows)
        {
            sketch.Line(new(Sheet.Left, y), new(Sheet.Right, y), 0.5);
            row.Draw(sketch, y + 18);
            y += RowPt;
        }

        sketch.Line(new(Sheet.Left, y), new(Sheet.Right, y), 0.5);
        Signatures(sketch);
        var room = new Frame(Sheet.Left, y + 16, Sheet.Inner, Sheet.Bottom - 44 - y - 16);
        if (room.Height > 170)
        {
            Overview.DrawBare(sketch, list.Map, room);
        }
    }

    private void Plane(Sketch sketch, PackedPlane plane, double y)
    {
        var drawn = list.Map.Planes.FirstOrDefault(p => p.Id == plane.PlaneId)
            ?? throw new ArgumentException($"The map has no plane {plane.PlaneId}.");
        PlaneLook.Band(sketch, new Frame(Sheet.Left, y - 12, 44, 15), drawn.Kind);
        Sheet.Text(sketch, drawn.Title, new(Sheet.Left + 52, y - 4), 250, 13, bold: true);
        Sheet.Text(sketch, plane.ProductText, new(Sheet.Left + 52, y + 5.5), 250, 8.5);
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
