using PostFrame.Documents.Drawing;

namespace PostFrame.Documents.Maps;

/// <summary>
/// Words of strips too small for them, standing in a row below the plane's foot, each with a line
/// to its strip. Only for a plane that stands on its foot.
/// </summary>
/// <param name="withLengths">Unless a list beside the drawing says them: marks take less room.
/// </param>
internal sealed class CallOuts(bool withLengths)
{
    private const double LeaderPt = 9;

    /// <summary>No honest mark and length are longer.</summary>
    private const double LongestPt = 110;

    /// <summary>With lengths, as many must stand beside each other as a row has strips.</summary>
    private readonly double letterPt = withLengths ? 6 : 7.5;

    private double StepPt => letterPt * 1.2;

    /// <summary>How far below the foot the words of these strips reach.</summary>
    public double DepthPt(IEnumerable<MapStrip> strips) => LeaderPt + 2 + strips
        .Select(strip => Lettering.Width(Words(strip), letterPt, bold: true))
        .DefaultIfEmpty(0)
        .Max();

    /// <summary>How many fit beside each other.</summary>
    public int Most(double widthPt) => Math.Max(1, (int)(widthPt / StepPt));

    /// <summary>
    /// Between two margins; where even so there are too many, every second, third or further one
    /// and the last.
    /// </summary>
    public void Draw(
        Sketch sketch, PlacedPlane placed, IReadOnlyList<MapStrip> strips, Frame room)
    {
        var step = (strips.Count + Most(room.Width) - 1) / Most(room.Width);
        var shown = strips.Where((_, i) => i % step == 0)
            .Select(strip => (strip, Mark: Middle(placed, strip)))
            .OrderBy(entry => entry.Mark.X).ToList();
        var foot = Frame.Around(placed.Outline).Bottom;
        var places = Spread([.. shown.Select(entry => entry.Mark.X)], room.X, room.Right);
        for (var i = 0; i < shown.Count; i++)
        {
            var (strip, mark) = shown[i];
            var head = new Spot(places[i], foot + LeaderPt);
            sketch.Dot(mark, 0.9, Ink.Black);
            sketch.Line(mark, new(mark.X, foot + 2), 0.35);
            sketch.Line(new(mark.X, foot + 2), head, 0.35);
            sketch.Text(new Drawing.Words(
                Words(strip), new(head.X + letterPt * 0.35, head.Y + 1), letterPt)
            {
                Bold = true,
                Turn = -90,
                Anchor = Anchor.End,
            });
        }
    }

    private string Words(MapStrip strip) => Lettering.Fit(
        withLengths ? PlaneLettering.Words(strip) : Lettering.Clean(strip.Mark),
        LongestPt, letterPt, letterPt, bold: true).Text;

    /// <summary>Low in the strip, where the least lies below it.</summary>
    private static Spot Middle(PlacedPlane placed, MapStrip strip)
    {
        var (from, to) = PlaneShape.Run(placed.Plane, strip);
        var (bottom, top) = StripRooms.Reach(placed.Plane, from, to, strip);
        var low = bottom + Math.Min((top - bottom) / 2, 3 / placed.Scale);
        // A header and a sill of one strip keep their lines apart.
        var part = strip.BottomIn > placed.Plane.OutlineIn.Min(p => p.UpIn) + 1 ? 0.35 : 0.65;
        return placed.At(from + (to - from) * part, low);
    }

    /// <summary>Each as near to its wish as its neighbours allow, in order, within the room.
    /// </summary>
    private double[] Spread(double[] wishes, double least, double most)
    {
        var places = new double[wishes.Length];
        for (var i = 0; i < wishes.Length; i++)
        {
            var after = i == 0 ? least + StepPt / 2 : places[i - 1] + StepPt;
            places[i] = Math.Max(wishes[i], after);
        }

        for (var i = wishes.Length - 1; i >= 0; i--)
        {
            var before = i == wishes.Length - 1 ? most - StepPt / 2 : places[i + 1] - StepPt;
            places[i] = Math.Min(places[i], before);
        }

        return places;
    }
}
