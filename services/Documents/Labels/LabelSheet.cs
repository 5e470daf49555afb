using PostFrame.Documents.Drawing;
using PostFrame.Documents.Labels;
using PostFrame.Documents.Maps;

namespace PostFrame.Documents;

/// <summary>Piece labels, 4 × 6 in, one to a page. The same set gives the same bytes.</summary>
public static class LabelSheet
{
    /// <exception cref="ArgumentException">A piece id that a bar code cannot carry.</exception>
    public static byte[] Pdf(LabelSet set) =>
        Paper.Pdf($"Labels {set.OrderNumber} revision {set.Revision}", Pages(set));

    /// <summary>One label as a picture; <paramref name="number"/> counts from 1.</summary>
    public static byte[] Png(LabelSet set, int number, double dotsPerInch) =>
        Paper.Png(Pages(set).ElementAt(number - 1), dotsPerInch);

    internal static IEnumerable<Sketch> Pages(LabelSet set)
    {
        var map = new SmallMap(set.Map, LabelPage.MapRoom);
        return set.Labels.Select((label, i) => new LabelPage(set, map, label, i + 1).Draw());
    }
}
