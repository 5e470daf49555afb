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

    private readonly PlaneWords words = new(placed, lettering.Detail);

    /// <summary>
    /// Draws, and tells the words of openings and vents too small to carry them.
    /// </summary>
    /// <param name="underWords">Draws what may run across openings but not their words.</param>
    public IReadOnlyList<string> Draw(Action? underWords = null)
    {
        sketch.Fill(placed.Outline, Ink.White);
        foreach (var strip in plane.Strips)
        {
            DrawStrip(strip);
        }

        foreach (var line in words.Lines())
        {
            DrawLine(line);
        }

        foreach (var word in words.OfLines)
        {
            Write(word);
        }

        var openings = plane.Openings
            .Select(opening => (Opening: opening, Shape: Seen(opening)))
            .Where(seen => seen.Shape.Count >= 3).ToList();
        openings.ForEach(seen => DrawOpening(seen.Opening, seen.Shape));
        underWords?.Invoke();
        openings.ForEach(seen => WriteOpening(seen.Opening, seen.Shape));
        sketch.Outline(placed.Outline, detail.OutlinePt);
        return [.. unnamed, .. words.VentsMissed()];
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
    /// The edge of the tab of the strip before, drawn far enough from the joint to be seen.
    /// </summary>
    private void DrawLap(MapStrip strip)
    {
        var edge = strip.FromIn + Math.Max(plane.LapIn, detail.LeastLapPt / placed.Scale);
        var hasBefore = plane.Strips.Any(before => Math.Abs(before.ToIn - strip.FromIn) < 0.1
            && before.BottomIn < strip.TopIn && before.TopIn > strip.BottomIn);
        if (plane.LapIn <= 0 || !hasBefore
            || edge + detail.LeastLapPt / placed.Scale > PlaneShape.Run(plane, strip).To)
        {
            return;
        }

        var (bottom, top) = StripRooms.Reach(plane, edge, edge, strip);
        sketch.Line(
            placed.At(edge, bottom), placed.At(edge, top), detail.JointPt, Ink.Grey, dash: 2);
    }

    private IReadOnlyList<Spot> Seen(MapOpening opening) => Polygons.Clip(
        placed.Outline,
        placed.Box(opening.FromIn, opening.ToIn, opening.BottomIn, opening.TopIn));

    private void DrawOpening(MapOpening opening, IReadOnlyList<Spot> shape) =>
        sketch.Group(Lettering.Clean($"{plane.Title}: {opening.Word}"), () =>
        {
            var seen = Frame.Around(shape);
            sketch.Fill(shape, Ink.Pale);
            sketch.Line(new(seen.X, seen.Y), new(seen.Right, seen.Bottom), 0.4);
            sketch.Line(new(seen.X, seen.Bottom), new(seen.Right, seen.Y), 0.4);
            sketch.Outline(shape, detail.OutlinePt * 0.8);
        });

    private void WriteOpening(MapOpening opening, IReadOnlyList<Spot> shape)
    {
        var word = Lettering.Clean(opening.Word);
        if (!MapText.WriteOnPatch(sketch, Frame.Around(shape).Inset(1), word, detail))
        {
            unnamed.Add(word);
        }
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
    }

    private void Write(PlaneWords.Word word)
    {
        var middle = word.Patch.Centre;
        sketch.Fill(word.Patch, Ink.White);
        sketch.Text(new Words(word.Text, middle with { Y = middle.Y + word.Size * 0.35 }, word.Size)
        {
            Bold = true,
            Anchor = Anchor.Middle,
        });
    }
}
