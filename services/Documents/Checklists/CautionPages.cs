using PostFrame.Documents.Drawing;

namespace PostFrame.Documents.Checklists;

/// <summary>What holds for this building, then the cautions, each with what it rests on.</summary>
internal sealed class CautionPages(PackingList list)
{
    private const double RoomPt = Sheet.Bottom - Sheet.Top - 38;
    private const double WideGapPt = 11;
    private const double CloseGapPt = 6;

    private sealed record Line(string Text, double SizePt, double StepPt, bool Bold);

    /// <summary>Closer together where that saves a page with little on it.</summary>
    public IEnumerable<Action<Sketch>> Bodies()
    {
        var (wide, close) = (Pages(WideGapPt), Pages(CloseGapPt));
        return (close.Count < wide.Count ? close : wide).Select(Page);
    }

    private List<IReadOnlyList<Line>> Pages(double gapPt)
    {
        var (pages, page) = (new List<IReadOnlyList<Line>>(), new List<Line>());
        foreach (var block in Blocks(gapPt))
        {
            var asOne = Height(block) <= RoomPt;
            if (asOne && Height(page) + Height(block) > RoomPt) TurnOver();
            foreach (var line in block)
            {
                if (Height(page) + line.StepPt > RoomPt) TurnOver();
                page.Add(line);
            }
        }

        TurnOver();
        return pages;

        void TurnOver()
        {
            pages.Add(page);
            page = [];
        }
    }

    private static double Height(IEnumerable<Line> lines) => lines.Sum(line => line.StepPt);

    private IEnumerable<IReadOnlyList<Line>> Blocks(double gapPt)
    {
        var gap = new Line("", 10, gapPt, false);
        yield return [.. Set(list.StandingLine, 10, 12.5, bold: true), gap];
        if (list.Map.Notes.Count > 0)
        {
            yield return
            [
                .. Set("This building", 12, 13, bold: true),
                .. list.Map.Notes.SelectMany(note => Set($"• {note}", 10, 12.5, bold: false)),
                gap,
            ];
        }

        foreach (var caution in list.Cautions)
        {
            var basis = caution.Basis.Length == 0 ? "" : $"Basis: {caution.Basis}";
            yield return
            [
                .. Set(caution.Topic, 12, 13, bold: true),
                .. Set(caution.Text, 10, 12.5, bold: false),
                .. Set(basis, 7.5, 9.5, bold: false),
                gap,
            ];
        }
    }

    private static IEnumerable<Line> Set(string text, double sizePt, double stepPt, bool bold) =>
        Lettering
            .Wrap(Lettering.Clean(text, Lettering.LongestText), Sheet.Inner, sizePt, bold)
            .Select(row => new Line(row, sizePt, stepPt, bold));

    private static Action<Sketch> Page(IReadOnlyList<Line> lines) => sketch =>
    {
        var head = new Spot(Sheet.Left, Sheet.Top + 20);
        Sheet.Text(sketch, "BEFORE YOU START", head, 400, 24, bold: true);
        var y = Sheet.Top + 38;
        foreach (var line in lines)
        {
            sketch.Text(new Words(line.Text, new(Sheet.Left, y), line.SizePt) { Bold = line.Bold });
            y += line.StepPt;
        }
    };
}
