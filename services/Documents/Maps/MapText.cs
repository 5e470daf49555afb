using PostFrame.Documents.Drawing;

namespace PostFrame.Documents.Maps;

/// <summary>Writes a mark and a length as large as their room allows, lying or standing.</summary>
internal static class MapText
{
    private sealed record Setting(IReadOnlyList<string> Lines, bool Standing, double Size);

    public static void Write(
        Sketch sketch, Frame room, string mark, string length, MapDetail detail)
    {
        if (room.Width <= 0 || room.Height <= 0)
        {
            return;
        }

        List<Setting> full =
        [
            Try(room, [mark, length], false, detail),
            Try(room, [mark, length], true, detail),
            Try(room, [$"{mark}  {length}"], false, detail),
            Try(room, [$"{mark}  {length}"], true, detail),
        ];
        var best = full.MaxBy(setting => setting.Size)!;
        if (best.Size < detail.LeastTextPt)
        {
            List<Setting> markOnly =
            [
                Try(room, [mark], false, detail),
                Try(room, [mark], true, detail),
            ];
            best = markOnly.MaxBy(setting => setting.Size)!;
        }

        if (best.Size >= detail.LeastTextPt)
        {
            Set(sketch, room, best);
        }
    }

    /// <summary>A word on a white patch in the middle of its room, or nothing if too small.</summary>
    public static void WriteOnLabel(Sketch sketch, Frame room, string word, MapDetail detail)
    {
        var size = Math.Min(detail.MostTextPt, room.Height * 0.7);
        if (size < detail.LeastTextPt * 0.8)
        {
            return;
        }

        var (text, fitted) = Lettering.Fit(
            word, room.Width - 4, size, Math.Min(size, detail.LeastTextPt * 0.8));
        if (text.Length < 3)
        {
            return;
        }

        var wide = Lettering.Width(text, fitted, bold: false);
        var centre = room.Centre;
        sketch.Fill(
            new Frame(centre.X - wide / 2 - 1.5, centre.Y - fitted * 0.6, wide + 3, fitted * 1.2),
            Ink.White);
        sketch.Text(new Words(text, centre with { Y = centre.Y + fitted * 0.35 }, fitted)
        {
            Anchor = Anchor.Middle,
        });
    }

    private static Setting Try(
        Frame room, IReadOnlyList<string> lines, bool standing, MapDetail detail)
    {
        var (along, across) = standing ? (room.Height, room.Width) : (room.Width, room.Height);
        var widest = lines.Max(line => Lettering.Width(line, 1, bold: true));
        var size = Math.Min(along / widest, across / (lines.Count * 1.15));
        return new Setting(lines, standing, Math.Min(size, detail.MostTextPt));
    }

    private static void Set(Sketch sketch, Frame room, Setting setting)
    {
        var step = setting.Size * 1.15;
        for (var i = 0; i < setting.Lines.Count; i++)
        {
            var off = (i - (setting.Lines.Count - 1) / 2.0) * step + setting.Size * 0.35;
            var at = setting.Standing
                ? new Spot(room.Centre.X + off, room.Centre.Y)
                : new Spot(room.Centre.X, room.Centre.Y + off);
            sketch.Text(new Words(setting.Lines[i], at, setting.Size)
            {
                Anchor = Anchor.Middle,
                Bold = i == 0,
                Turn = setting.Standing ? -90 : 0,
            });
        }
    }
}
