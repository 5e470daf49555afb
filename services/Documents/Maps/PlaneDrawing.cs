using PostFrame.Documents.Drawing;

namespace PostFrame.Documents.Maps;

/// <summary>Draws one placed plane: strips with marks and lengths, laps, openings, lines.</summary>
internal sealed class PlaneDrawing(Sketch sketch, PlacedPlane placed, MapDetail detail)
{
    private readonly MapPlane plane = placed.Plane;

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
            sketch.Fill(shape, strip.IsHighlighted ? Ink.Black : Ink.White);
            DrawLap(strip);
            sketch.Outline(shape, detail.JointPt);
            if (detail.HasText && !strip.IsHighlighted)
            {
                Write(strip);
            }
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
        if (!detail.HasText || plane.LapIn <= 0 || !hasNext)
        {
            return;
        }

        var edge = strip.FromIn + lapIn;
        if (strip.FromIn <= plane.Strips.Min(s => s.FromIn) + 0.1)
        {
            return;
        }

        var (bottom, top) = Reach(edge, edge, strip);
        sketch.Line(
            placed.At(edge, bottom), placed.At(edge, top), detail.JointPt, Ink.Grey, dash: 2);
    }

    /// <summary>What of a strip's height lies inside the outline over all of [from, to].</summary>
    private (double BottomIn, double TopIn) Reach(double fromIn, double toIn, MapStrip strip)
    {
        var (bottom, top) = (strip.BottomIn, strip.TopIn);
        var between = plane.OutlineIn
            .Select(point => point.AcrossIn)
            .Where(across => across > fromIn && across < toIn);
        foreach (var across in between.Append(fromIn + 0.01).Append(toIn - 0.01))
        {
            var crossings = Crossings(across);
            if (crossings.Count >= 2)
            {
                bottom = Math.Max(bottom, crossings[0]);
                top = Math.Min(top, crossings[^1]);
            }
        }

        return (bottom, Math.Max(bottom, top));
    }

    private List<double> Crossings(double across)
    {
        var found = new List<double>();
        for (var i = 0; i < plane.OutlineIn.Count; i++)
        {
            var a = plane.OutlineIn[i];
            var b = plane.OutlineIn[(i + 1) % plane.OutlineIn.Count];
            if (a.AcrossIn <= across != b.AcrossIn <= across)
            {
                var part = (across - a.AcrossIn) / (b.AcrossIn - a.AcrossIn);
                found.Add(a.UpIn + part * (b.UpIn - a.UpIn));
            }
        }

        found.Sort();
        return found;
    }

    /// <summary>Mark and length in the strip's longest stretch free of openings and lines.</summary>
    private void Write(MapStrip strip)
    {
        var (bottom, top) = Reach(strip.FromIn, strip.ToIn, strip);
        var pad = detail.MostTextPt / placed.Scale;
        var blocks = plane.Openings
            .Where(o => o.FromIn < strip.ToIn && o.ToIn > strip.FromIn)
            .Select(o => (From: o.BottomIn, To: o.TopIn))
            .Concat(plane.Lines
                .Where(l => l.FromIn < strip.ToIn && l.ToIn > strip.FromIn)
                .Select(l => (From: l.UpIn - pad, To: l.UpIn + pad)))
            .OrderBy(block => block.From);
        var (freeFrom, freeTo) = (bottom, bottom);
        var at = bottom;
        foreach (var (from, to) in blocks.Append((From: top, To: top)))
        {
            var end = Math.Min(from, top);
            if (end - at > freeTo - freeFrom)
            {
                (freeFrom, freeTo) = (at, end);
            }

            at = Math.Max(at, to);
        }

        var room = placed.Box(strip.FromIn, strip.ToIn, freeFrom, freeTo).Inset(1.2);
        MapText.Write(
            sketch, room, Lettering.Clean(strip.Mark), Lettering.Clean(strip.LengthText), detail);
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
            sketch.Fill(shape, detail.HasText ? Ink.Pale : Ink.White);
            if (detail.HasText)
            {
                sketch.Line(new(seen.X, seen.Y), new(seen.Right, seen.Bottom), 0.4);
                sketch.Line(new(seen.X, seen.Bottom), new(seen.Right, seen.Y), 0.4);
                MapText.WriteOnLabel(sketch, seen.Inset(1), word, detail);
            }

            sketch.Outline(shape, detail.OutlinePt * 0.8);
        });
    }

    private void DrawLine(MapLine line)
    {
        var from = placed.At(line.FromIn, line.UpIn);
        var to = placed.At(line.ToIn, line.UpIn);
        if (!detail.HasText)
        {
            sketch.Line(from, to, detail.JointPt);
            return;
        }

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

        var word = Lettering.Clean(line.Word);
        var size = Math.Min(detail.MostTextPt, 7);
        var (text, fitted) = Lettering.Fit(word, Math.Abs(to.X - from.X) - 4, size, 4, bold: true);
        var wide = Lettering.Width(text, fitted, bold: true);
        var mid = new Spot((from.X + to.X) / 2, (from.Y + to.Y) / 2);
        sketch.Fill(new Frame(mid.X - wide / 2 - 2, mid.Y - size * 0.6, wide + 4, size * 1.2),
            Ink.White);
        sketch.Text(new Words(text, mid with { Y = mid.Y + size * 0.35 }, fitted)
        {
            Bold = true,
            Anchor = Anchor.Middle,
        });
    }
}
