using System.Globalization;
using PostFrame.Documents.Drawing;

namespace PostFrame.Documents.Maps;

/// <summary>
/// Where the words of a placed plane's lines stand, clear of its openings and of each other, and
/// which words there is no room for.
/// </summary>
internal sealed class PlaneWords
{
    /// <summary>There are few of them, and the crew looks for them.</summary>
    private const double LeastWordPt = 6.5;

    private readonly PlacedPlane placed;
    private readonly MapDetail detail;

    /// <summary>Where openings and words of lines stand.</summary>
    private readonly List<Frame> taken = [];
    private readonly List<Word> lines = [];

    public PlaneWords(PlacedPlane placed, MapDetail detail)
    {
        (this.placed, this.detail) = (placed, detail);
        taken.AddRange(placed.Plane.Openings.Select(opening => placed.Box(
            opening.FromIn, opening.ToIn, opening.BottomIn, opening.TopIn)));
        foreach (var line in Lines().Where(Speaks))
        {
            if (On(line) is { } word)
            {
                lines.Add(word);
                taken.Add(word.Patch);
            }
        }
    }

    public sealed record Word(MapLine Line, string Text, Frame Patch, double Size);

    /// <summary>On white patches.</summary>
    public IReadOnlyList<Word> OfLines => lines;

    /// <summary>
    /// What the crew must not miss and the drawing has no room to say, such as "ridge vent ·
    /// 2 × translucent panel"; empty when it says all.
    /// </summary>
    public string Missed => string.Join(PieceRanges.Between, [.. VentsMissed(), .. PanelsMissed()]);

    /// <summary>Words of vents that stand nowhere on the plane.</summary>
    public IEnumerable<string> VentsMissed() => Lines().Where(line => line.IsVent)
        .Select(line => Lettering.Clean(line.Word))
        .Distinct().Where(text => text.Length > 0 && lines.All(word => word.Text != text));

    /// <summary>The lines where the plane is.</summary>
    public IEnumerable<MapLine> Lines() =>
        placed.Plane.Lines.SelectMany(line => PlaneShape.OnPlane(placed.Plane, line));

    private IEnumerable<string> PanelsMissed() => placed.Plane.Openings
        .Where(opening => opening.IsPanel && !MapText.FitsOnPatch(
            Seen(opening).Inset(1), Lettering.Clean(opening.Word), detail))
        .GroupBy(opening => Lettering.Clean(opening.Word))
        .Select(same => same.Count() == 1
            ? same.Key
            : string.Create(CultureInfo.InvariantCulture, $"{same.Count()} × {same.Key}"));

    private Frame Seen(MapOpening opening)
    {
        var shape = Polygons.Clip(placed.Outline, placed.Box(
            opening.FromIn, opening.ToIn, opening.BottomIn, opening.TopIn));
        return shape.Count >= 3 ? Frame.Around(shape) : new Frame(0, 0, 0, 0);
    }

    /// <summary>Beside a vent a ridge needs no word.</summary>
    private bool Speaks(MapLine line) => line.IsVent || !placed.Plane.Lines.Any(other =>
        other.IsVent && Math.Abs(line.UpIn - other.UpIn) < 1
        && line.FromIn < other.ToIn && line.ToIn > other.FromIn);

    /// <summary>
    /// Inside the plane when the line is its edge; none where it would run into another.
    /// </summary>
    private Word? On(MapLine line)
    {
        var (from, to) = (placed.At(line.FromIn, line.UpIn), placed.At(line.ToIn, line.UpIn));
        var size = Math.Clamp(detail.MostTextPt * 0.8, LeastWordPt, 10);
        var text = Lettering.Clean(line.Word);
        var wide = Lettering.Width(text, size, bold: true);
        var around = Frame.Around(placed.Outline);
        if (text.Length == 0 || wide + 4 > Math.Abs(to.X - from.X) || around.Height < size * 2)
        {
            return null;
        }

        var y = Math.Clamp(from.Y, around.Y + size, around.Bottom - size);
        return new[] { 0.5, 0.25, 0.75, 0.12, 0.88 }
            .Select(part => from.X + (to.X - from.X) * part)
            .Select(middle => new Frame(
                middle - wide / 2 - 2, y - size * 0.6, wide + 4, size * 1.2))
            .Where(patch => patch.X >= Math.Min(from.X, to.X)
                && patch.Right <= Math.Max(from.X, to.X)
                && !taken.Any(other => Meet(other, patch)))
            .Select(patch => new Word(line, text, patch, size))
            .FirstOrDefault();
    }

    private static bool Meet(Frame a, Frame b) =>
        a.X < b.Right && b.X < a.Right && a.Y < b.Bottom && b.Y < a.Bottom;
}
