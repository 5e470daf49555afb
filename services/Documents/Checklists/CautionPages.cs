using PostFrame.Documents.Drawing;

namespace PostFrame.Documents.Checklists;

/// <summary>The cautions, in full, each with what it rests on.</summary>
internal sealed class CautionPages(PackingList list)
{
    private const double TextPt = 10;
    private const double LinePt = 12.5;

    private sealed record Block(IReadOnlyList<string> Topic, IReadOnlyList<string> Text,
        IReadOnlyList<string> Basis)
    {
        public double HeightPt => Topic.Count * 15 + Text.Count * LinePt + Basis.Count * 9.5 + 9;
    }

    public IEnumerable<Action<Sketch>> Bodies()
    {
        var page = new List<Block>();
        var room = Sheet.Bottom - Sheet.Top - 70;
        var used = 0.0;
        foreach (var block in list.Cautions.Select(Set))
        {
            if (page.Count > 0 && used + block.HeightPt > room)
            {
                var full = page;
                yield return sketch => Page(sketch, full);
                (page, used) = ([], 0);
            }

            page.Add(block);
            used += block.HeightPt;
        }

        var last = page;
        yield return sketch => Page(sketch, last);
    }

    private static Block Set(PrintedCaution caution) => new(
        Lettering.Wrap(Lettering.Clean(caution.Topic), Sheet.Inner, 12, bold: true),
        Lettering.Wrap(Lettering.Clean(caution.Text), Sheet.Inner, TextPt),
        caution.Basis.Length == 0
            ? []
            : Lettering.Wrap(Lettering.Clean($"Basis: {caution.Basis}"), Sheet.Inner, 7.5));

    private void Page(Sketch sketch, IReadOnlyList<Block> blocks)
    {
        Sheet.Text(sketch, "BEFORE YOU START", new(Sheet.Left, Sheet.Top + 20), 400, 24, bold: true);
        var y = Sheet.Top + 38;
        foreach (var line in Lettering.Wrap(
            Lettering.Clean(list.StandingLine), Sheet.Inner, TextPt, bold: true))
        {
            sketch.Text(new Words(line, new(Sheet.Left, y), TextPt) { Bold = true });
            y += LinePt;
        }

        y += 8;
        foreach (var block in blocks)
        {
            y = Lines(sketch, block.Topic, y + 3, 12, 12, bold: true);
            y = Lines(sketch, block.Text, y, TextPt, LinePt, bold: false);
            y = Lines(sketch, block.Basis, y - 1, 7.5, 9.5, bold: false) + 9;
        }
    }

    private static double Lines(
        Sketch sketch, IReadOnlyList<string> lines, double y, double size, double step, bool bold)
    {
        foreach (var line in lines)
        {
            sketch.Text(new Words(line, new(Sheet.Left, y), size) { Bold = bold });
            y += step;
        }

        return y;
    }
}
