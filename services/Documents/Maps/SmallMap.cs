using PostFrame.Documents.Drawing;

namespace PostFrame.Documents.Maps;

/// <summary>
/// The flat building without words: laid out once, then drawn, for a label with one strip filled.
/// </summary>
internal sealed class SmallMap
{
    private const double GapPt = 2.5;
    private const double OutlinePt = 0.9;
    private const double JointPt = 0.25;
    private const double LetterPt = 7;

    /// <summary>Thinner than this a filled strip looks like one more line.</summary>
    private const double LeastFillPt = 2.5;

    private readonly IReadOnlyList<PlacedPlane> planes;
    private readonly List<Mark> building = [];
    private readonly Frame drawn;

    public SmallMap(BuildingMap map, Frame room)
    {
        planes = MapLayout.Place(map, room.Inset(LetterPt), GapPt);
        drawn = Frame.Around(planes.SelectMany(placed => placed.Outline));
        foreach (var placed in planes)
        {
            var joints = placed.Plane.Strips.Select(strip => Seen(placed, strip))
                .Where(shape => shape.Count >= 3);
            building.Add(new Outlines([.. joints], JointPt));
            building.AddRange(Openings(placed));
            building.Add(new Shape(placed.Outline, Stroke: Ink.Black, Width: OutlinePt));
        }
    }

    /// <summary>
    /// The building with the strip of this mark filled; A, B, 1 and 2 name its sides.
    /// </summary>
    public void Draw(Sketch sketch, string? mark = null)
    {
        building.ForEach(sketch.Add);
        foreach (var placed in planes)
        {
            var strip = placed.Plane.Strips.FirstOrDefault(strip => strip.Mark == mark);
            if (strip is not null && Seen(placed, strip) is { Count: >= 3 } shape)
            {
                sketch.Fill(shape, Ink.Black);
                if (Missing(shape) is > 0 and var missing)
                {
                    sketch.Add(new Shape(shape, Stroke: Ink.Black, Width: missing));
                }

                Openings(placed).ToList().ForEach(sketch.Add);
            }
        }

        Letter(sketch, "B", drawn.Centre.X, drawn.Y - 1.5);
        Letter(sketch, "A", drawn.Centre.X, drawn.Bottom + 6.5);
        Letter(sketch, "1", drawn.X - 4, drawn.Centre.Y + 2.5);
        Letter(sketch, "2", drawn.Right + 4, drawn.Centre.Y + 2.5);
    }

    /// <summary>What a thin strip lacks to be found, half of it to be put on each side.</summary>
    private static double Missing(IReadOnlyList<Spot> shape)
    {
        var around = Frame.Around(shape);
        return LeastFillPt - Math.Min(around.Width, around.Height);
    }

    private static IReadOnlyList<Spot> Seen(PlacedPlane placed, MapStrip strip) => Polygons.Clip(
        placed.Outline, placed.Box(strip.FromIn, strip.ToIn, strip.BottomIn, strip.TopIn));

    private static IEnumerable<Mark> Openings(PlacedPlane placed) =>
        placed.Plane.Openings
            .Select(o => Polygons.Clip(
                placed.Outline, placed.Box(o.FromIn, o.ToIn, o.BottomIn, o.TopIn)))
            .Where(shape => shape.Count >= 3)
            .Select(shape => new Shape(shape, Ink.White, Ink.Black, OutlinePt * 0.7));

    private static void Letter(Sketch sketch, string letter, double x, double y) =>
        sketch.Text(new Words(letter, new(x, y), LetterPt)
        {
            Bold = true,
            Anchor = Anchor.Middle,
        });
}
