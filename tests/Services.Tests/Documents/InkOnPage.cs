using PostFrame.Documents.Drawing;
using Xunit;

namespace PostFrame.ServicesTests.Documents;

/// <summary>Where text and codes lie on a page, to see that nothing runs into anything.</summary>
internal static class InkOnPage
{
    private const string Descending = "gjpqyQ,;()[]{}|@_/";

    /// <summary>
    /// No two texts touch, none leaves the page, none enters a code's quiet zone.
    /// </summary>
    public static void AssertNothingOverlaps(IEnumerable<Sketch> pages) =>
        Assert.Empty(pages.SelectMany((page, index) => Overlaps(page)
            .Select(found => $"page {index + 1}: {found}")).Take(10));

    private static IEnumerable<string> Overlaps(Sketch page)
    {
        var texts = page.Marks.OfType<Words>()
            .Select(words => (words.Text, Box: Box(words))).ToList();
        var codes = page.Marks.OfType<Bars>().Select(QuietZone).ToList();
        for (var i = 0; i < texts.Count; i++)
        {
            var (text, box) = texts[i];
            if (box.X < 0 || box.Y < 0 || box.Right > page.WidthPt || box.Bottom > page.HeightPt)
            {
                yield return $"\"{text}\" leaves the page at {Place(box)}";
            }

            if (codes.Any(code => Meet(box, code)))
            {
                yield return $"\"{text}\" is in a code's quiet zone at {Place(box)}";
            }

            foreach (var (other, otherBox) in texts.Skip(i + 1).Where(t => Meet(box, t.Box)))
            {
                yield return $"\"{text}\" {Place(box)} meets \"{other}\" {Place(otherBox)}";
            }
        }
    }

    private static string Place(Frame box) =>
        $"[{box.X:0.#}, {box.Y:0.#} to {box.Right:0.#}, {box.Bottom:0.#}]";

    public static Frame Box(Words words)
    {
        var left = words.Anchor switch
        {
            Anchor.Middle => -words.WidthPt / 2,
            Anchor.End => -words.WidthPt,
            _ => 0,
        };
        var above = words.Size * 0.72;
        var below = words.Text.Any(Descending.Contains) ? words.Size * 0.2 : 0;
        var (sin, cos) = Math.SinCos(words.Turn * Math.PI / 180);
        Spot[] corners = [new(left, -above), new(left + words.WidthPt, below)];
        return Frame.Around(corners.Select(corner => new Spot(
            words.At.X + corner.X * cos - corner.Y * sin,
            words.At.Y + corner.X * sin + corner.Y * cos)));
    }

    /// <summary>
    /// A QR code is square: 4 modules all round. Code 128: 10 modules left and right. The narrowest
    /// bar is one module.
    /// </summary>
    private static Frame QuietZone(Bars bars)
    {
        var around = Frame.Around(bars.Frames.SelectMany(frame => frame.Corners));
        var module = bars.Frames.Min(frame => frame.Width);
        var isSquare = Math.Abs(around.Width - around.Height) < 0.01;
        var (across, up) = isSquare ? (4 * module, 4 * module) : (10 * module, 0);
        return new Frame(
            around.X - across, around.Y - up, around.Width + 2 * across, around.Height + 2 * up);
    }

    private static bool Meet(Frame a, Frame b)
    {
        const double touch = 0.05;
        return a.X + touch < b.Right && b.X + touch < a.Right
            && a.Y + touch < b.Bottom && b.Y + touch < a.Bottom;
    }
}
