using PostFrame.Documents;
using PostFrame.Documents.Checklists;
using PostFrame.Documents.Drawing;
using UglyToad.PdfPig;
using Xunit;

namespace PostFrame.ServicesTests.Documents;

/// <summary>What is read standing, at arm's length, on a site.</summary>
public sealed class LegibleSheetTests
{
    private const string Metric = "152 mm faced glass-fibre blanket, bright foil"
        + " · nominal R 3.35 m²·K/W before installation";

    /// <summary>Three products in a row of five planes, the last two of one.</summary>
    [Fact]
    public void A_product_stands_once_above_the_planes_it_covers()
    {
        var list = List("Plain gable");
        string[] products = ["Six inch", "Three inch", "Three inch", "Four inch", "Four inch"];
        var sheet = new Sheetful(list with
        {
            Planes = [.. list.Planes.Zip(products, (plane, product) => plane with
            {
                ProductText = product,
            })],
        });
        Assert.Equal(
            ["Six inch", "Three inch", "Four inch"],
            sheet.First.Select(words => words.Text).Where(products.Contains));
    }

    [Theory]
    [InlineData("Plain gable")]
    [InlineData("Lean-tos on both sides")]
    public void A_long_product_is_not_squeezed_on_the_packing_list(string title)
    {
        var list = List(title);
        var sheet = new Sheetful(list with
        {
            Planes = [.. list.Planes.Select(plane => plane with { ProductText = Metric })],
        });
        Assert.All(
            sheet.First.Where(words => words.Text.StartsWith("152 mm", StringComparison.Ordinal)),
            words => Assert.InRange(words.Size, 10.5, 11));
    }

    /// <summary>By hand: 8 planes of 24 pt, their product 19 pt, the sum and five accessories
    /// 144 pt are 355 pt of the 561 pt below the head: 206 pt are left, 186 pt of them beside
    /// 6 pt of air and the letters of the sides.</summary>
    [Fact]
    public void A_building_with_lean_tos_has_its_picture_beside_its_packing_list()
    {
        var list = List("Lean-tos on both sides") with
        {
            Accessories = [.. Enumerable.Repeat(new PackedAccessory("Tape", "2 rolls"), 5)],
        };
        var page = Checklist.Pages(list)[0];
        var sides = page.Marks.OfType<Words>().Where(words => words is { Text: "A" or "B" });
        Assert.Equal(["B", "A"], sides.Select(words => words.Text));
        var drawn = Frame.Around(page.Marks.OfType<Shape>()
            .Where(shape => shape is { Width: 0.9 }).SelectMany(shape => shape.Points));
        Assert.InRange(drawn.Height, 140, 186);
    }

    [Fact]
    public void A_long_product_is_not_squeezed_on_a_label()
    {
        var set = LabelTests.Set("Plain gable");
        using var document = PdfDocument.Open(LabelSheet.Pdf(set with
        {
            Labels = [set.Labels[0] with { ProductText = Metric }],
        }));
        var letters = document.GetPage(1).Letters;
        Assert.Contains(letters, letter => letter.Value == "²");
        Assert.All(
            letters.Where(letter => letter.Value == "²"),
            letter => Assert.InRange(letter.PointSize, 8.9, 9.1));
    }

    /// <summary>A QR code needs four empty modules all round; 0.5 mm is the least module we
    /// print.</summary>
    [Theory]
    [InlineData("PF-1001")]
    [InlineData("pf-2026-riding-arena")]
    [InlineData("pf-2026-riding-arena-of-the-cold-creek-1")]
    public void The_rule_below_the_heading_stays_clear_of_the_sheet_code(string order)
    {
        foreach (var page in Checklist.Pages(List("Plain gable") with { OrderNumber = order }))
        {
            var squares = page.Marks.OfType<Bars>().Single().Frames;
            var module = squares.Min(square => square.Width);
            Assert.InRange(module, 0.5 / 25.4 * 72, 2);
            Assert.InRange(squares.Max(square => square.Bottom) + 4 * module, 20, 86.01);
        }
    }

    /// <summary>Headers above a door are called out across it.</summary>
    [Fact]
    public void No_line_runs_through_the_word_of_an_opening()
    {
        var page = DoorPage();
        var leaders = Places(page, mark => mark is Shape { Width: 0.35 });
        var word = Places(page, mark => mark is Words { Text: "overhead door" });
        Assert.NotEmpty(leaders);
        Assert.True(leaders.Max() < Assert.Single(word));
    }

    [Fact]
    public void A_drawing_beside_its_list_calls_strips_out_by_their_marks()
    {
        var called = DoorPage().Marks.OfType<Words>()
            .Where(words => words is { Turn: -90, Anchor: Anchor.End }).ToList();
        Assert.NotEmpty(called);
        Assert.All(called, words => Assert.Matches("^E1-[0-9]{2}H?$", words.Text));
        Assert.All(called, words => Assert.InRange(words.Size, 7, 9));
    }

    /// <summary>A door that leaves its headers 4 in of wall.</summary>
    private static Sketch DoorPage()
    {
        var list = List("Overhead door, ridge vent, panels");
        var map = list.Map with
        {
            Planes = [.. list.Map.Planes.Select(plane => plane with
            {
                Strips = [.. plane.Strips.Select(strip => strip with
                {
                    BottomIn = strip.Mark.EndsWith('H') ? strip.TopIn - 4 : strip.BottomIn,
                })],
            })],
        };
        return Checklist.Pages(list with { Map = map }).First(page => page.Marks
            .OfType<Words>().Any(words => words.Text == "ENDWALL 1"));
    }

    private static List<int> Places(Sketch page, Func<Mark, bool> isOne) =>
        [.. page.Marks.Select((mark, place) => (mark, place))
            .Where(entry => isOne(entry.mark)).Select(entry => entry.place)];

    private static PackingList List(string title) =>
        SampleBuildings.Packing(FlatMapTests.Map(title));

    private sealed class Sheetful(PackingList list)
    {
        public IReadOnlyList<Words> First { get; } =
            [.. Checklist.Pages(list)[0].Marks.OfType<Words>()];
    }
}
