using SkiaSharp;

namespace PostFrame.Documents.Drawing;

/// <summary>Puts sketches on PDF pages or into a PNG, through one canvas.</summary>
internal static class Paper
{
    /// <summary>
    /// One page per sketch. Without a date the same sketches give the same bytes; with one the
    /// bytes depend on that date only.
    /// </summary>
    public static byte[] Pdf(string title, IEnumerable<Sketch> pages, DateTimeOffset? made = null)
    {
        var facts = new SKDocumentPdfMetadata
        {
            Title = Lettering.Clean(title),
            Creator = "PostFrameServices",
            Producer = "PostFrameServices",
            RasterDpi = 300,
            EncodingQuality = 101,
            Creation = made?.UtcDateTime,
            Modified = made?.UtcDateTime,
        };
        using var bytes = new MemoryStream();
        using (var document = SKDocument.CreatePdf(bytes, facts))
        {
            foreach (var page in pages)
            {
                var canvas = document.BeginPage((float)page.WidthPt, (float)page.HeightPt);
                Draw(canvas, page);
                document.EndPage();
            }

            document.Close();
        }

        return bytes.ToArray();
    }

    /// <summary>The sketch on white at a resolution [dots per inch].</summary>
    public static byte[] Png(Sketch page, double dotsPerInch)
    {
        var scale = dotsPerInch / 72;
        var size = new SKImageInfo(
            (int)Math.Round(page.WidthPt * scale), (int)Math.Round(page.HeightPt * scale));
        using var surface = SKSurface.Create(size)
            ?? throw new InvalidOperationException($"No picture of {size.Width}×{size.Height}.");
        surface.Canvas.Clear(SKColors.White);
        surface.Canvas.Scale((float)scale);
        Draw(surface.Canvas, page);
        using var picture = surface.Snapshot();
        using var png = picture.Encode(SKEncodedImageFormat.Png, 100);
        return png.ToArray();
    }

    private static void Draw(SKCanvas canvas, Sketch page)
    {
        foreach (var mark in page.Marks)
        {
            switch (mark)
            {
                case Shape shape:
                    Draw(canvas, shape);
                    break;
                case Outlines outlines:
                    Draw(canvas, outlines);
                    break;
                case Dot dot:
                    Draw(canvas, dot);
                    break;
                case Bars bars:
                    Draw(canvas, bars);
                    break;
                case Words words:
                    Draw(canvas, words);
                    break;
            }
        }
    }

    private static void Draw(SKCanvas canvas, Shape shape)
    {
        using var outline = new SKPathBuilder();
        outline.AddPoly([.. shape.Points.Select(Point)], !shape.Open);
        using var path = outline.Detach();
        if (shape.Fill is not null)
        {
            using var fill = Brush(shape.Fill);
            canvas.DrawPath(path, fill);
        }

        if (shape.Stroke is null)
        {
            return;
        }

        using var pen = Brush(shape.Stroke);
        pen.Style = SKPaintStyle.Stroke;
        pen.StrokeWidth = (float)shape.Width;
        pen.StrokeJoin = SKStrokeJoin.Miter;
        if (shape.Dash > 0)
        {
            using var dashes = SKPathEffect.CreateDash([(float)shape.Dash, (float)shape.Dash], 0);
            pen.PathEffect = dashes;
            canvas.DrawPath(path, pen);
            return;
        }

        canvas.DrawPath(path, pen);
    }

    private static void Draw(SKCanvas canvas, Outlines outlines)
    {
        using var builder = new SKPathBuilder();
        foreach (var polygon in outlines.Polygons)
        {
            builder.AddPoly([.. polygon.Select(Point)], true);
        }

        using var path = builder.Detach();
        using var pen = Brush(Ink.Black);
        pen.Style = SKPaintStyle.Stroke;
        pen.StrokeWidth = (float)outlines.Width;
        canvas.DrawPath(path, pen);
    }

    private static void Draw(SKCanvas canvas, Dot dot)
    {
        using var fill = Brush(dot.Colour);
        canvas.DrawCircle(Point(dot.Centre), (float)dot.Radius, fill);
    }

    private static void Draw(SKCanvas canvas, Bars bars)
    {
        using var ink = new SKPaint { Color = SKColors.Black, IsAntialias = false };
        foreach (var bar in bars.Frames)
        {
            var from = Point(new Spot(bar.X, bar.Y));
            canvas.DrawRect(from.X, from.Y, (float)bar.Width, (float)bar.Height, ink);
        }
    }

    private static void Draw(SKCanvas canvas, Words words)
    {
        using var font = Lettering.Font(words);
        using var ink = Brush(words.Colour);
        var back = words.Anchor switch
        {
            Anchor.Middle => words.WidthPt / 2,
            Anchor.End => words.WidthPt,
            _ => 0,
        };
        canvas.Save();
        canvas.Translate((float)words.At.X, (float)words.At.Y);
        canvas.RotateDegrees((float)words.Turn);
        canvas.DrawText(
            ReadingOrder.OnPaper(words.Text), (float)-back, 0, SKTextAlign.Left, font, ink);
        canvas.Restore();
    }

    private static SKPaint Brush(string colour) =>
        new() { Color = SKColor.Parse(colour), IsAntialias = true };

    private static SKPoint Point(Spot spot) => new((float)spot.X, (float)spot.Y);
}
