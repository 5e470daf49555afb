using PostFrame.Documents.BarCodes;
using PostFrame.Documents.Drawing;

namespace PostFrame.Documents.Checklists;

/// <summary>
/// What every checklist page has: heading, sheet code, page N of M, standing line.
/// </summary>
internal static class Sheet
{
    public const double WidthPt = 612;
    public const double HeightPt = 792;
    public const double Left = 36;
    public const double Right = WidthPt - 36;
    public const double Inner = Right - Left;

    /// <summary>Between these heights a page's own matter stands.</summary>
    public const double Top = 96;

    public const double Bottom = HeightPt - 62;

    /// <summary>
    /// Source: NIOSH lifting equation, load constant 51 lb; 50 lb is common practice.
    /// </summary>
    public const double OnePersonLb = 50;

    /// <summary>0.7 mm: read by hand at arm's length from an office printer's page.</summary>
    private const double MostQrModulePt = 2;

    /// <summary>Above the rule; a long order number makes squares smaller, 0.5 mm at least.
    /// </summary>
    private const double QrRoomPt = 66;

    public static void Frame(Sketch sketch, PackingList list, int page, int pages)
    {
        var sheetId = $"{list.OrderNumber}/{list.Revision}";
        var qr = new QrSymbol($"{sheetId} {page}/{pages}", forShopFloor: true);
        var module = Math.Min(MostQrModulePt, QrRoomPt / qr.Modules);
        var side = qr.Modules * module;
        qr.Draw(sketch, new(Right - side + 4 * module, 20), module);
        var room = Inner - side - 8;
        var order = $"Order {list.OrderNumber} · revision {list.Revision}";
        Text(sketch, order, new(Left, 44), room, 19, bold: true);
        var building = string.Join(
            " · ", ((string[])[list.Map.Title, list.Map.Summary]).Where(part => part.Length > 0));
        Text(sketch, building, new(Left, 60), room, 11);
        Text(sketch, $"Ship to {list.ShipTo} · needed by {list.NeededBy}", new(Left, 75), room, 11);
        if (Lettering.Lacks(list.ShipTo) || Lettering.Lacks(list.Map.Title))
        {
            Text(sketch, Lettering.LackRemark, new(Left, 83.5), room, 6.5);
        }

        sketch.Line(new(Left, 86), new(Right, 86), 1.2);

        sketch.Line(new(Left, HeightPt - 54), new(Right, HeightPt - 54), 0.8);
        var sheet = $"Sheet {sheetId} · page {page} of {pages}";
        Text(sketch, sheet, new(Right, HeightPt - 42), 180, 10, bold: true, Anchor.End);
        Standing(sketch, list.StandingLine);
    }

    /// <summary>Three small lines at the foot; it stands in full before the cautions.</summary>
    private static void Standing(Sketch sketch, string line)
    {
        const double room = Inner - 190;
        var rows = Lettering.Wrap(Lettering.Clean(line, Lettering.LongestText), room, 7).ToList();
        if (rows.Count > 3)
        {
            rows[2] = Lettering.Fit(rows[2] + " …", room, 7, 7).Text;
        }

        for (var i = 0; i < Math.Min(rows.Count, 3); i++)
        {
            sketch.Text(new Words(rows[i], new(Left, HeightPt - 43 + i * 8.2), 7));
        }
    }

    public static void Text(
        Sketch sketch,
        string text,
        Spot at,
        double room,
        double size,
        bool bold = false,
        Anchor anchor = Anchor.Start)
    {
        var (shown, fitted) = Lettering.Fit(Lettering.Clean(text), room, size, size * 0.6, bold);
        sketch.Text(new Words(shown, at, fitted) { Bold = bold, Anchor = anchor });
    }

    /// <summary>A box to tick with a gloved hand.</summary>
    public static void TickBox(Sketch sketch, Spot centre, double side) => sketch.Outline(
        new Frame(centre.X - side / 2, centre.Y - side / 2, side, side), 1.3);
}
