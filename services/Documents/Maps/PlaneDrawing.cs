using PostFrame.Documents.Drawing;

namespace PostFrame.Documents.Maps;

/// <summary>Draws one placed plane: strips with marks and lengths, laps, openings, lines.</summary>
internal sealed class PlaneDrawing(Sketch sketch, PlacedPlane placed, MapDetail asked)
{
    /// <summary>
    /// Strips with less room than this beside the usual one are lettered smaller.
    /// </summary>
    private const double LeastOfUsual = 0.75;

    private readonly MapPlane plane = placed.Plane;
    private readonly MapDetail detail =
        asked with { MostTextPt = EvenTextPt(placed, asked) };

    public void Draw()
    {
        sketch.Fill(placed.Outline, Ink.White);
        foreach (var strip in plane.Strips)
        {
            DrawStrip(strip);
        }

        foreach (var opening in plane.Openings)
        {
            DrawOpening(opening);
        }

        foreach (var line in plane.Lines)
        {
            DrawLine(line);
        }

        sketch.Outline(placed.Outline, detail.OutlinePt);
    }

    /// <summary>The letter size most strips of a plane can take, so that they look alike.</summary>
    private static double EvenTextPt(PlacedPlane placed, MapDetail asked)
    {
        var sizes = placed.Plane.Strips
            .Select(strip => MapText.Largest(
                StripRooms.Free(placed, strip, asked.MostTextPt),
                Lettering.Clean(strip.Mark), Lettering.Clean(strip.LengthText), asked))
            .Where(size => size >= asked.LeastTextPt)
            .Order().ToList();
        var usual = sizes.Count == 0 ? asked.MostTextPt : sizes[sizes.Count / 2];
        return sizes.Where(size => size >= usual * LeastOfUsual).DefaultIfEmpty(usual).Min();
    }

    private void DrawStrip(MapStrip strip)
    {
        var name = Lettering.Clean($"{plane.Title}: {strip.Mark}, {strip.LengthText}");
        var box = placed.Box(strip.FromIn, strip.ToIn, strip.BottomIn, strip.TopIn);
        var shape = Polygons.Clip(placed.Outline, box);
        if (shape.Count < 3)
        {
            return;
        }

        sketch.Group(name, () =>
        {
            sketch.Fill(shape, Ink.White);
            DrawLap(strip);
            sketch.Outline(shape, detail.JointPt);
            Write(strip);
        });
    }

    /// <summary>
    /// The tab's edge over the next strip, drawn at least far enough from the joint to be seen.
    /// </summary>
    private void DrawLap(MapStrip strip)
    {
        var lapIn = Math.Max(plane.LapIn, detail.LeastLapPt / placed.Scale);
        var hasNext = plane.Strips.Any(next => Math.Abs(next.FromIn - strip.ToIn) < 0.1
            && next.BottomIn < strip.TopIn && next.TopIn > strip.BottomIn);
        if (plane.LapIn <= 0 || !hasNext)
        {
            return;
        }

        var edge = strip.FromIn + lapIn;
        if (strip.FromIn <= plane.Strips.Min(s => s.FromIn) + 0.1)
        {
            return;
        }

        var (bottom, top) = StripRooms.Reach(plane, edge, edge, strip);
        sketch.Line(
            placed.At(edge, bottom), placed.At(edge, top), detail.JointPt, Ink.Grey, dash: 2);
    }

    /// <summary>Mark and length where they can be largest, clear of openings and lines.</summary>
    private void Write(MapStrip strip)
    {
        var mark = Lettering.Clean(strip.Mark);
        var length = Lettering.Clean(strip.LengthText);
        var rooms = StripRooms.Free(placed, strip, detail.MostTextPt);
        if (!MapText.Write(sketch, rooms, mark, length, detail)
            && (detail.HasFootRoom || placed.Side is MapSide.End1 or MapSide.End2))
        {
            CallOut(strip, mark);
        }
    }

    /// <summary>
    /// The mark of a strip too narrow for text, set outside at the foot of the plane.
    /// </summary>
    private void CallOut(MapStrip strip, string mark)
    {
        var toIn = Math.Min(strip.ToIn, plane.OutlineIn.Max(point => point.AcrossIn));
        var foot = placed.At(
            (strip.FromIn + toIn) / 2, plane.OutlineIn.Min(point => point.UpIn));
        var size = detail.LeastTextPt + 0.8;
        var sink = size * 0.35;
        var words = placed.Side switch
        {
            MapSide.End1 => new Words(mark, new(foot.X - 3, foot.Y + sink), size)
            {
                Anchor = Anchor.End,
            },
            MapSide.End2 => new Words(mark, new(foot.X + 3, foot.Y + sink), size),
            MapSide.B => new Words(mark, new(foot.X + sink, foot.Y - 2), size) { Turn = -90 },
            _ => new Words(mark, new(foot.X + sink, foot.Y + 2), size)
            {
                Turn = -90,
                Anchor = Anchor.End,
            },
        };
        sketch.Text(words with { Bold = true });
    }

    private void DrawOpening(MapOpening opening)
    {
        var box = placed.Box(opening.FromIn, opening.ToIn, opening.BottomIn, opening.TopIn);
        var shape = Polygons.Clip(placed.Outline, box);
        if (shape.Count < 3)
        {
            return;
        }

        var word = Lettering.Clean(opening.Word);
        sketch.Group(Lettering.Clean($"{plane.Title}: {opening.Word}"), () =>
        {
            var seen = Frame.Around(shape);
            sketch.Fill(shape, Ink.Pale);
            sketch.Line(new(seen.X, seen.Y), new(seen.Right, seen.Bottom), 0.4);
            sketch.Line(new(seen.X, seen.Bottom), new(seen.Right, seen.Y), 0.4);
            MapText.WriteOnPatch(sketch, seen.Inset(1), word, detail);
            sketch.Outline(shape, detail.OutlinePt * 0.8);
        });
    }

    private void DrawLine(MapLine line)
    {
        var from = placed.At(line.FromIn, line.UpIn);
        var to = placed.At(line.ToIn, line.UpIn);
        if (line.IsVent)
        {
            sketch.Line(from, to, 4.5);
            sketch.Line(from, to, 3, Ink.White);
            sketch.Line(from, to, 3, Ink.Black, dash: 3);
        }
        else
        {
            sketch.Line(from, to, 1.2);
        }

        if (line.IsVent || !plane.Lines.Any(other => other.IsVent && Meets(line, other)))
        {
            WriteOn(line, from, to);
        }
    }

    private static bool Meets(MapLine line, MapLine other) =>
        Math.Abs(line.UpIn - other.UpIn) < 1
        && line.FromIn < other.ToIn && line.ToIn > other.FromIn;

    /// <summary>
    /// The line's word on a white patch; inside the plane when the line is its edge.
    /// </summary>
    private void WriteOn(MapLine line, Spot from, Spot to)
    {
        var size = Math.Min(detail.MostTextPt * 0.8, 10);
        var (text, fitted) = Lettering.Fit(
            Lettering.Clean(line.Word), Math.Abs(to.X - from.X) - 4, size, 4, bold: true);
        var wide = Lettering.Width(text, fitted, bold: true);
        var around = Frame.Around(placed.Outline);
        // A plane thinner than two letters has no inside to keep to: its middle is nearest.
        var inset = Math.Min(size, around.Height / 2);
        var y = Math.Max(around.Y + inset, Math.Min(from.Y, around.Bottom - inset));
        var mid = new Spot(FreeAlong(line, from, to, wide), y);
        sketch.Fill(new Frame(mid.X - wide / 2 - 2, mid.Y - size * 0.6, wide + 4, size * 1.2),
            Ink.White);
        sketch.Text(new Words(text, mid with { Y = mid.Y + size * 0.35 }, fitted)
        {
            Bold = true,
            Anchor = Anchor.Middle,
        });
    }

    /// <summary>
    /// The middle of the line, or a quarter along it where an opening is in the way.
    /// </summary>
    private double FreeAlong(MapLine line, Spot from, Spot to, double wide)
    {
        var reach = (wide / 2 + 4) / placed.Scale;
        var near = detail.MostTextPt * 2 / placed.Scale;
        foreach (var part in new[] { 0.5, 0.25, 0.75, 0.12, 0.88 })
        {
            var at = line.FromIn + (line.ToIn - line.FromIn) * part;
            if (!plane.Openings.Any(o => o.FromIn < at + reach && o.ToIn > at - reach
                && o.BottomIn < line.UpIn + near && o.TopIn > line.UpIn - near))
            {
                return from.X + (to.X - from.X) * part;
            }
        }

        return (from.X + to.X) / 2;
    }
}
