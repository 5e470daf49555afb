using PostFrame.Documents.Drawing;

namespace PostFrame.Documents.Maps;

/// <summary>
/// How a kind of plane is told apart: by its word, by its band's pattern, and last by colour. The
/// patterns stay apart in grey and on a printer that knows only black and white.
/// </summary>
internal static class PlaneLook
{
    /// <summary>
    /// A band across a sheet: the roof's is one solid bar, a sidewall's diagonal bars, an endwall's
    /// dots; always outlined.
    /// </summary>
    public static void Band(Sketch sketch, Frame band, PlaneKind kind)
    {
        switch (kind)
        {
            case PlaneKind.Roof:
                Solid(sketch, band);
                break;
            case PlaneKind.Sidewall:
                DiagonalBars(sketch, band);
                break;
            default:
                Dots(sketch, band);
                break;
        }

        sketch.Outline(band, Math.Clamp(band.Height / 12, 0.6, 1.6));
    }

    private static void Solid(Sketch sketch, Frame band)
    {
        sketch.Fill(band, Ink.Orange);
        sketch.Fill(
            band with { Y = band.Y + band.Height / 4, Height = band.Height / 2 }, Ink.Black);
    }

    /// <summary>
    /// Each bar is black beside green, with white between: the green may print as black.
    /// </summary>
    private static void DiagonalBars(Sketch sketch, Frame band)
    {
        sketch.Fill(band, Ink.White);
        var step = band.Height * 1.2;
        for (var x = band.X - band.Height - step; x < band.Right; x += step)
        {
            Bar(sketch, band, x, step * 0.3, Ink.Black);
            Bar(sketch, band, x + step * 0.3, step * 0.3, Ink.BluishGreen);
        }
    }

    private static void Bar(Sketch sketch, Frame band, double x, double width, string colour)
    {
        Spot[] bar =
        [
            new(x, band.Bottom),
            new(x + width, band.Bottom),
            new(x + width + band.Height, band.Y),
            new(x + band.Height, band.Y),
        ];
        var seen = Polygons.Clip(bar, band);
        if (seen.Count >= 3)
        {
            sketch.Fill(seen, colour);
        }
    }

    private static void Dots(Sketch sketch, Frame band)
    {
        sketch.Fill(band, Ink.ReddishPurple);
        var step = band.Height / 2;
        var columns = (int)(band.Width / step);
        var start = band.X + (band.Width - (columns - 1) * step) / 2;
        for (var i = 0; i < columns; i++)
        {
            var y = band.Y + band.Height * (i % 2 == 0 ? 0.27 : 0.73);
            sketch.Dot(new(start + i * step, y), band.Height * 0.17, Ink.Black);
        }
    }
}
