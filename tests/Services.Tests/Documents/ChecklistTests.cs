using PostFrame.Documents;
using PostFrame.Documents.Checklists;
using UglyToad.PdfPig;
using Xunit;
using ZXing;

namespace PostFrame.ServicesTests.Documents;

public sealed class ChecklistTests
{
    public static TheoryData<string> Buildings() => LabelTests.Buildings();

    [Theory]
    [MemberData(nameof(Buildings))]
    public void Every_page_says_which_sheet_of_how_many_it_is(string title)
    {
        using var document = PdfDocument.Open(Checklist.Pdf(List(title)));
        Assert.All(document.GetPages(), page => Assert.Contains(
            $"Sheet PF-1001/1 · page {page.Number} of {document.NumberOfPages}", page.Text));
    }

    [Theory]
    [MemberData(nameof(Buildings))]
    public void Every_page_carries_its_sheet_id_for_a_scanner(string title)
    {
        // Three dots to a square: the decoder's own finder misses 1 of 465 such codes at four.
        var pages = RenderedPage.All(Checklist.Pdf(List(title)), 108);
        Assert.Equal(
            Enumerable.Range(1, pages.Count).Select(n => $"PF-1001/1 {n}/{pages.Count}"),
            pages.Select(page => page.Part(page.Width - 180, 20, 170, 130)
                .Decode(BarcodeFormat.QR_CODE)));
    }

    [Theory]
    [MemberData(nameof(Buildings))]
    public void Every_piece_has_its_row_with_length_and_number(string title)
    {
        var list = List(title);
        using var document = PdfDocument.Open(Checklist.Pdf(list));
        var text = string.Concat(document.GetPages().Select(page => page.Text));
        var total = list.Planes.Sum(plane => plane.Pieces.Count);
        Assert.All(list.Planes.SelectMany(plane => plane.Pieces), piece => Assert.Contains(
            $"{piece.Mark}{piece.CutText} × {piece.WidthText}{piece.LabelNumber} of {total}"
                + piece.PieceId,
            text));
    }

    [Theory]
    [InlineData("Shed", "30 ft × 40 ft", "Shed · 30 ft × 40 ft")]
    [InlineData("", "30 ft × 40 ft", "30 ft × 40 ft")]
    [InlineData("Shed", "", "Shed")]
    public void A_building_without_a_name_is_told_by_its_size_alone(
        string name, string size, string line)
    {
        var list = List("Plain gable");
        using var document = PdfDocument.Open(Checklist.Pdf(
            list with { Map = list.Map with { Title = name, Summary = size } }));
        Assert.All(document.GetPages(), page => Assert.Contains(
            $"revision 1{line}Ship to", page.Text));
    }

    /// <summary>A sheet for two last rows is carried up a ladder for nothing.</summary>
    [Theory]
    [InlineData(18, 1)]
    [InlineData(19, 2)]
    public void Rows_stand_closer_before_a_plane_takes_another_sheet(int pieces, int sheets)
    {
        var list = List("Plain gable");
        var plane = list.Planes[0] with
        {
            Pieces = [.. Enumerable.Repeat(list.Planes[0].Pieces[0], pieces)],
        };
        Assert.Equal(
            sheets, new PlanePages(list with { Planes = [plane] }, plane).Bodies().Count());
    }

    [Fact]
    public void Cautions_are_printed_in_full_with_their_basis()
    {
        var list = List("Plain gable");
        using var document = PdfDocument.Open(Checklist.Pdf(list));
        var text = string.Concat(document.GetPages().Select(page => page.Text)).Replace(" ", "");
        Assert.All(list.Cautions, caution => Assert.Contains(
            (caution.Topic + caution.Text + "Basis: " + caution.Basis).Replace(" ", ""), text));
    }

    [Theory]
    [MemberData(nameof(Buildings))]
    public void Nothing_on_a_checklist_runs_into_anything(string title) =>
        InkOnPage.AssertNothingOverlaps(Checklist.Pages(List(title)));

    /// <summary>
    /// By hand: 57.2 lb × 0.45359237 is 25.95 kg and 23.1 lb is 10.48 kg, rounded up.
    /// </summary>
    [Fact]
    public void A_metric_job_is_weighed_in_kilograms()
    {
        var list = List("Plain gable") with { IsMetric = true, Cautions = [] };
        using var document = PdfDocument.Open(Checklist.Pdf(list));
        var text = string.Join('\n', document.GetPages().Select(page => page.Text));
        Assert.Contains("26 kg", text);
        Assert.Contains("11 kg", text);
        Assert.DoesNotContain(" lb", text);
    }

    /// <summary>By hand: 596 pt of page hold a line of 12.5 pt and 12 cautions of 35 pt each, all
    /// with 11 pt below; with 6 pt below they hold 14.</summary>
    [Theory]
    [InlineData(12, 0)]
    [InlineData(14, 0)]
    [InlineData(15, 1)]
    public void Cautions_close_up_where_that_saves_a_page(int cautions, int more)
    {
        var list = List("Walls only");
        int Pages(int count)
        {
            using var document = PdfDocument.Open(Checklist.Pdf(list with
            {
                Cautions = [.. Enumerable.Repeat(new PrintedCaution("Wind", "Stop.", "x"), count)],
            }));
            return document.NumberOfPages;
        }

        Assert.Equal(Pages(1) + more, Pages(cautions));
    }

    /// <summary>An endwall of 432 × 300 in with 8 rows fills the room they leave; a sidewall of
    /// 600 × 108 in is as high as the sheet is wide for it.</summary>
    [Fact]
    public void A_drawing_takes_the_room_a_short_list_leaves()
    {
        using var document = PdfDocument.Open(Checklist.Pdf(List("Gambrel")));
        double ListTop(string plane) => document.GetPages().First(
            page => page.Text.Contains(plane, StringComparison.Ordinal))
            .GetWords().Where(word => word.Text == "received").Max(word => word.BoundingBox.Top);
        Assert.InRange(ListTop("SIDEWALL A") - ListTop("ENDWALL 2"), 100, 140);
    }

    [Fact]
    public void One_piece_is_not_called_pieces()
    {
        var list = List("Plain gable");
        var one = list with
        {
            Planes = [list.Planes[0] with { Pieces = [list.Planes[0].Pieces[0]] }],
        };
        using var document = PdfDocument.Open(Checklist.Pdf(one));
        Assert.Contains(document.GetPages(), page => page.Text.Contains("1 of 1 piece"));
        Assert.DoesNotContain(document.GetPages(), page => page.Text.Contains("1 of 1 pieces"));
    }

    [Fact]
    public void Every_piece_has_four_boxes_to_tick()
    {
        using var document = PdfDocument.Open(Checklist.Pdf(List("Plain gable")));
        Assert.All(
            document.GetPages().Where(page => page.Text.Contains("of 46 pieces")),
            page => Assert.All(
                ["received", "fitted", "short", "damaged"],
                word => Assert.Contains(word, page.Text)));
    }

    [Fact]
    public void A_plane_that_is_not_on_the_map_is_refused()
    {
        var list = List("Plain gable");
        var wrong = list with { Planes = [list.Planes[0] with { PlaneId = "roofC" }] };
        Assert.Throws<ArgumentException>(() => Checklist.Pdf(wrong));
    }

    private static PackingList List(string title) =>
        SampleBuildings.Packing(FlatMapTests.Map(title));
}
