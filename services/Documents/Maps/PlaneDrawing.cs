using PostFrame.Documents.Drawing;

namespace PostFrame.Documents.Maps;

/// <summary>
/// Draws one placed plane: strips with the marks and lengths that fit them, laps, openings, lines.
/// </summary>
internal sealed class PlaneDrawing(Sketch sketch, PlacedPlane placed, PlaneLettering lettering)
{
    private readonly MapPlane plane = placed.Plane;
    private readonly MapDetail detail = lettering.Detail;
    private readonly List<string> unnamed = [];

    /// <summary>Where openings and words of lines stand.</summary>
    private readonly List<Frame> taken = [];

    /// <summary>Draws, and tells the words of openings too small to carry them.</summary>
    public IReadOnlyList<string> Draw()
    {
        sketch.Fill(placed.Outline, Ink.White);
        foreach (var strip in plane.Strips)
        {
            DrawStrip(strip);
        }

        taken.AddRange(plane.Openings.Select(opening => placed.Box(
            opening.FromIn, opening.ToIn, opening.BottomIn, opening.TopIn)));
        foreach (var line in plane.Lines.SelectMany(line => PlaneShape.OnPlane(plane, line)))
        {
            DrawLine(line);
        }

        foreach (var opening in plane.Openings)
        {
            DrawOpening(opening);
        }

        sketch.Outline(placed.Outline, detail.OutlinePt);
        return unnamed;
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
            if (lettering.Of(strip) is { } setting)
            {
                MapText.Set(sketch, setting);
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
            if (!MapText.WriteOnPatch(sketch, seen.Inset(1), word, detail))
            {
                unnamed.Add(word);
            }

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
    /// The line's word on a white patch, inside the plane when the line is its edge; none where it
    /// would run into another: the footer says what each kind of line means.
    /// </summary>
    private void WriteOn(MapLine line, Spot from, Spot to)
    {
        var size = Math.Max(Math.Min(detail.MostTextPt * 0.8, 10), detail.LeastTextPt);
        var text = Lettering.Clean(line.Word);
        var wide = Lettering.Width(text, size, bold: true);
        var around = Frame.Around(placed.Outline);
        if (text.Length == 0 || wide + 4 > Math.Abs(to.X - from.X) || around.Height < size * 2)
        {
            return;
        }

        var y = Math.Clamp(from.Y, around.Y + size, around.Bottom - size);
        foreach (var part in new[] { 0.5, 0.25, 0.75, 0.12, 0.88 })
        {
            var middle = from.X + (to.X - from.X) * part;
            var patch = new Frame(middle - wide / 2 - 2, y - size * 0.6, wide + 4, size * 1.2);
            if (patch.X < Math.Min(from.X, to.X) || patch.Right > Math.Max(from.X, to.X)
                || taken.Any(other => Meet(other, patch)))
            {
                continue;
            }

            taken.Add(patch);
            sketch.Fill(patch, Ink.White);
            sketch.Text(new Words(text, new(middle, y + size * 0.35), size)
            {
                Bold = true,
                Anchor = Anchor.Middle,
            });
            return;
        }
    }

    private static bool Meet(Frame a, Frame b) =>
        a.X < b.Right && b.X < a.Right && a.Y < b.Bottom && b.Y < a.Bottom;
}
