namespace PostFrame.Documents.Drawing;

/// <summary>
/// One page as a list of marks [pt, y downward], independent of the paper it is put on. Everything
/// drawn is clipped when the mark is made, so no paper needs a clip path.
/// </summary>
internal sealed class Sketch(double widthPt, double heightPt)
{
    private readonly List<Mark> marks = [];

    public double WidthPt => widthPt;

    public double HeightPt => heightPt;

    public IReadOnlyList<Mark> Marks => marks;

    public void Add(Mark mark) => marks.Add(mark);

    public void Fill(IReadOnlyList<Spot> points, string colour) =>
        Add(new Shape(points, Fill: colour));

    public void Fill(Frame frame, string colour) => Fill(frame.Corners, colour);

    public void Outline(IReadOnlyList<Spot> points, double width, string colour = Ink.Black) =>
        Add(new Shape(points, Stroke: colour, Width: width));

    public void Outline(Frame frame, double width, string colour = Ink.Black) =>
        Outline(frame.Corners, width, colour);

    public void Line(
        Spot from, Spot to, double width, string colour = Ink.Black, double dash = 0) =>
        Add(new Shape([from, to], Stroke: colour, Width: width, Dash: dash, Open: true));

    public void Dot(Spot centre, double radius, string colour) =>
        Add(new Dot(centre, radius, colour));

    /// <summary>Black bars and squares of a code: never smoothed at the edges.</summary>
    public void Bars(IReadOnlyList<Frame> bars) => Add(new Bars(bars));

    public void Text(Words words)
    {
        if (words.Text.Length > 0)
        {
            Add(words);
        }
    }

    /// <summary>Marks that belong together, with a name a screen reader can say.</summary>
    public void Group(string name, Action draw)
    {
        Add(new GroupStart(name));
        draw();
        Add(new GroupEnd());
    }
}
