using PostFrame.Documents.Drawing;

namespace PostFrame.Documents.Maps;

/// <summary>Sets a mark and a length as large as their room allows, lying or standing.</summary>
internal static class MapText
{
    internal sealed record Setting(
        Frame Room, IReadOnlyList<string> Lines, bool Standing, double Size);

    /// <summary>
    /// Both texts in the room that lets them be largest; null if there is no room at all.
    /// </summary>
    public static Setting? Best(
        IReadOnlyList<Frame> rooms, string mark, string length, MapDetail detail) =>
        Best(rooms, [[mark, length], [$"{mark}  {length}"]], detail);

    /// <summary>
    /// A word on a white patch in the middle of its room; false if the room is too small.
    /// </summary>
    public static bool WriteOnPatch(Sketch sketch, Frame room, string word, MapDetail detail)
    {
        if (OnPatch(room, word, detail) is not { } best)
        {
            return false;
        }

        var along = best.Lines.Max(line => Lettering.Width(line, best.Size, bold: true)) + 3;
        var across = best.Size * 1.2 * best.Lines.Count;
        var (wide, high) = best.Standing ? (across, along) : (along, across);
        var centre = room.Centre;
        sketch.Fill(new Frame(centre.X - wide / 2, centre.Y - high / 2, wide, high), Ink.White);
        Set(sketch, best);
        return true;
    }

    public static bool FitsOnPatch(Frame room, string word, MapDetail detail) =>
        OnPatch(room, word, detail) is not null;

    private static Setting? OnPatch(Frame room, string word, MapDetail detail) =>
        Best([room], [[word], word.Split(' ')], detail) is { } best
            && best.Size >= detail.LeastTextPt
            ? best
            : null;

    public static void Set(Sketch sketch, Setting setting)
    {
        var centre = setting.Room.Centre;
        var step = setting.Size * 1.15;
        for (var i = 0; i < setting.Lines.Count; i++)
        {
            var off = (i - (setting.Lines.Count - 1) / 2.0) * step + setting.Size * 0.35;
            var at = setting.Standing
                ? centre with { X = centre.X + off }
                : centre with { Y = centre.Y + off };
            sketch.Text(new Words(setting.Lines[i], at, setting.Size)
            {
                Anchor = Anchor.Middle,
                Bold = i == 0,
                Turn = setting.Standing ? -90 : 0,
            });
        }
    }

    private static Setting? Best(
        IReadOnlyList<Frame> rooms, IReadOnlyList<string[]> layouts, MapDetail detail) =>
        rooms
            .Where(room => room.Width > 0 && room.Height > 0)
            .SelectMany(room => layouts.SelectMany(lines => new[]
            {
                Try(room, lines, false, detail),
                Try(room, lines, true, detail),
            }))
            .MaxBy(setting => (setting.Size, setting.Room.Width * setting.Room.Height));

    private static Setting Try(
        Frame room, IReadOnlyList<string> lines, bool standing, MapDetail detail)
    {
        var (along, across) = standing ? (room.Height, room.Width) : (room.Width, room.Height);
        var widest = lines.Max(line => Lettering.Width(line, 1, bold: true));
        var size = Math.Min(along / widest, across / (lines.Count * 1.15));
        return new Setting(room, lines, standing, Math.Min(size, detail.MostTextPt));
    }
}
