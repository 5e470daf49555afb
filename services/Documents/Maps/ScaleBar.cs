using System.Globalization;
using PostFrame.Documents.Drawing;

namespace PostFrame.Documents.Maps;

/// <summary>
/// A bar of a round length: still true when the page is printed smaller or larger.
/// </summary>
internal static class ScaleBar
{
    private const double LongestPt = 120;
    private static readonly int[] Steps = [500, 200, 100, 50, 20, 10, 5, 2, 1];

    /// <summary>With its right end here; <paramref name="scale"/> in points per inch.</summary>
    public static void Draw(Sketch sketch, Spot right, double scale, bool isMetric)
    {
        var (unit, inches) = isMetric ? ("m", 1000 / 25.4) : ("ft", 12.0);
        var count = Steps.FirstOrDefault(step => step * inches * scale <= LongestPt);
        if (count == 0 || scale <= 0)
        {
            return;
        }

        var length = count * inches * scale;
        var bar = new Frame(right.X - length, right.Y - 3, length, 3);
        sketch.Fill(bar with { Width = length / 2 }, Ink.Black);
        sketch.Outline(bar, 0.6);
        var words = string.Create(CultureInfo.InvariantCulture, $"{count} {unit}");
        sketch.Text(new Words(words, new(bar.X - 4, right.Y), 7.5) { Anchor = Anchor.End });
    }
}
