using PostFrame.Documents.Checklists;
using PostFrame.Documents.Drawing;

namespace PostFrame.Documents;

/// <summary>
/// Packing list, one checklist per plane and the cautions, on US Letter. The same list gives the
/// same bytes.
/// </summary>
public static class Checklist
{
    /// <exception cref="ArgumentException">A plane that is not on the map.</exception>
    public static byte[] Pdf(PackingList list) => Paper.Pdf(
        $"Packing list and checklist {list.OrderNumber} revision {list.Revision}", Pages(list));

    /// <summary>One page as a picture; <paramref name="page"/> counts from 1.</summary>
    public static byte[] Png(PackingList list, int page, double dotsPerInch) =>
        Paper.Png(Pages(list)[page - 1], dotsPerInch);

    internal static IReadOnlyList<Sketch> Pages(PackingList list)
    {
        List<Action<Sketch>> bodies =
        [
            .. new SummaryPages(list).Bodies(),
            .. list.Planes.SelectMany(plane => new PlanePages(list, plane).Bodies()),
            .. new CautionPages(list).Bodies(),
        ];
        return [.. bodies.Select((body, index) =>
        {
            var sketch = new Sketch(Sheet.WidthPt, Sheet.HeightPt);
            Sheet.Frame(sketch, list, index + 1, bodies.Count);
            body(sketch);
            return sketch;
        })];
    }
}
