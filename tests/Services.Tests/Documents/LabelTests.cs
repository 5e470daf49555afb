using PostFrame.Documents;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;
using Xunit;
using ZXing;

namespace PostFrame.ServicesTests.Documents;

/// <summary>
/// Labels as printed: rendered by poppler, read by PdfPig and ZXing.Net, none of which wrote them.
/// </summary>
public sealed class LabelTests
{
    private const double DotsPerMm = 8;

    public static TheoryData<string> Buildings() =>
        [.. SampleBuildings.All.Select(map => map.Title)];

    [Theory]
    [InlineData("Plain gable")]
    [InlineData("Overhead door, ridge vent, panels")]
    public void Both_codes_of_every_label_read_back_as_its_piece_id(string title)
    {
        var set = Set(title);
        var pages = RenderedPage.All(LabelSheet.Pdf(set)).ToList();
        var ids = set.Labels.Select(label => label.PieceId);
        Assert.Equal(ids, pages.Select(page => page.Decode(BarcodeFormat.QR_CODE)));
        Assert.Equal(ids, pages.Select(page => page.Decode(BarcodeFormat.CODE_128)));
    }

    [Fact]
    public void Codes_read_back_from_a_300_dpi_printer_too()
    {
        var set = Set("Plain gable") with { PrinterDotsPerMm = 300 / 25.4 };
        var pages = RenderedPage.All(LabelSheet.Pdf(set), 300).ToList();
        Assert.Equal(
            set.Labels.Select(label => label.PieceId),
            pages.Select(page => page.Decode(BarcodeFormat.CODE_128)));
    }

    /// <summary>A bar that ends between two dots prints as a ragged edge.</summary>
    [Fact]
    public void Bars_end_on_whole_printer_dots()
    {
        var page = RenderedPage.All(LabelSheet.Pdf(Set("Plain gable")))[0];
        var row = (int)((370 + 15) / 72.0 * 25.4 * DotsPerMm);
        var dots = Enumerable.Range(0, page.Width).Select(x => page[x, row]).ToList();
        Assert.Contains((byte)0, dots);
        Assert.All(dots, dot => Assert.True(dot is 0 or 255, $"a grey dot: {dot}"));
    }

    [Theory]
    [InlineData("Overhead door, ridge vent, panels")]
    [InlineData("Lean-tos on both sides")]
    public void Plane_and_strip_stand_at_least_20_mm_high(string title)
    {
        var pdf = LabelSheet.Pdf(Set(title));
        var pages = RenderedPage.All(pdf);
        using var document = PdfDocument.Open(pdf);
        foreach (var page in document.GetPages())
        {
            Assert.InRange(MarkHeightMm(page, pages[page.Number - 1]), 20, 22);
        }
    }

    [Theory]
    [MemberData(nameof(Buildings))]
    public void A_label_says_what_its_piece_is(string title)
    {
        var set = Set(title);
        using var document = PdfDocument.Open(LabelSheet.Pdf(set));
        Assert.Equal(set.Labels.Count, document.NumberOfPages);
        Assert.All(document.GetPages(), page =>
        {
            var label = set.Labels[page.Number - 1];
            Assert.Equal((288, 432), ((int)page.Width, (int)page.Height));
            string[] texts =
            [
                label.PlaneTitle.ToUpperInvariant(), label.Mark, label.CutText, label.CutAlsoText,
                label.WidthText, label.WidthAlsoText, label.PieceId, label.ProductText,
                label.FacingText, $"Piece {page.Number} of {set.Labels.Count}", "Order PF-1001",
                "never step on it",
            ];
            Assert.All(texts, text => Assert.Contains(text, page.Text));
        });
    }

    /// <summary>
    /// Source: NIOSH lifting equation, load constant 51 lb; 50 lb by common practice.
    /// </summary>
    [Theory]
    [InlineData(50.0, false)]
    [InlineData(50.1, true)]
    public void Two_people_are_asked_for_above_50_lb(double weightLb, bool isAsked)
    {
        var set = Set("Plain gable");
        var one = set with { Labels = [set.Labels[0] with { WeightLb = weightLb }] };
        using var document = PdfDocument.Open(LabelSheet.Pdf(one));
        Assert.Equal(isAsked, document.GetPage(1).Text.Contains("TWO PEOPLE"));
    }

    /// <summary>By hand: 23.1 lb × 0.45359237 = 10.48 kg; 57.2 lb = 25.95 kg; rounded up.
    /// </summary>
    [Theory]
    [InlineData(23.1, "11 kg")]
    [InlineData(57.2, "26 kg")]
    public void A_metric_label_is_weighed_in_kilograms_first(double weightLb, string weight)
    {
        var set = Set("Plain gable");
        var one = set with
        {
            IsMetric = true,
            Labels = [set.Labels[0] with { WeightLb = weightLb }],
        };
        using var document = PdfDocument.Open(LabelSheet.Pdf(one));
        var largest = document.GetPage(1).Letters.Where(letter => letter.Value == "k")
            .MaxBy(letter => letter.PointSize)!;
        Assert.Contains(weight, document.GetPage(1).Text);
        Assert.InRange(largest.PointSize, 10.5, 20);
    }

    [Theory]
    [MemberData(nameof(Buildings))]
    public void Nothing_on_a_label_runs_into_anything(string title) =>
        InkOnPage.AssertNothingOverlaps(LabelSheet.Pages(Set(title)));

    /// <summary>
    /// The piece's strip is filled on its small map: each label of one plane differs there.
    /// </summary>
    [Fact]
    public void Each_label_fills_another_strip_of_the_small_map()
    {
        var pages = RenderedPage.All(LabelSheet.Pdf(Set("Lean-tos on both sides")));
        var maps = pages.Select(page => Part(page, 3, 76, 75, 110)).ToList();
        Assert.Equal(maps.Count, maps.Select(map => string.Join(',', map)).Distinct().Count());
    }

    /// <summary>The last strip of a gambrel's endwall covers 1 ft of 36: some 1.1 pt there. Lines
    /// are at most 1 pt; 6 dots at 8 to the mm are 2.1 pt.</summary>
    [Fact]
    public void A_strip_too_thin_to_be_seen_on_the_small_map_is_drawn_wider()
    {
        var labels = Set("Gambrel").Labels.Select(label => label.Mark).ToList();
        var page = RenderedPage.All(LabelSheet.Pdf(Set("Gambrel")))[labels.IndexOf("E2-08")];
        var ink = Part(page, 3, 76, 75, 110).ToHashSet();
        Assert.Contains(ink, dot => Enumerable.Range(0, 36)
            .All(i => ink.Contains(dot + i / 6 * page.Width + i % 6)));
    }

    [Fact]
    public void The_same_set_gives_the_same_bytes() => Assert.Equal(
        LabelSheet.Pdf(Set("Gambrel")), LabelSheet.Pdf(Set("Gambrel")));

    internal static LabelSet Set(string title) =>
        SampleBuildings.Labels(SampleBuildings.All.Single(map => map.Title == title));

    /// <summary>Ink rows of the largest text's first letter, a capital with a flat top.</summary>
    private static double MarkHeightMm(Page page, RenderedPage rendered)
    {
        var letter = page.Letters.MaxBy(l => l.PointSize)!;
        double Dots(double pt) => pt / 72 * 25.4 * DotsPerMm;
        var left = (int)Dots(letter.StartBaseLine.X);
        var right = (int)Dots(letter.EndBaseLine.X);
        var row = (int)Dots(page.Height - letter.StartBaseLine.Y) - 1;
        var rows = 0;
        while (row > 0 && Enumerable.Range(left, right - left).Any(x => rendered[x, row] < 128))
        {
            rows++;
            row--;
        }

        return rows / DotsPerMm;
    }

    private static IEnumerable<int> Part(
        RenderedPage page, int leftMm, int rightMm, int topMm, int bottomMm)
    {
        for (var y = topMm * 8; y < bottomMm * 8; y++)
        {
            for (var x = leftMm * 8; x < rightMm * 8; x++)
            {
                if (page[x, y] < 128)
                {
                    yield return y * page.Width + x;
                }
            }
        }
    }
}
