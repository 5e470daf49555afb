using System.Text;
using System.Xml.Linq;
using PostFrame.Documents;
using PostFrame.Documents.Drawing;
using UglyToad.PdfPig;
using Xunit;

namespace PostFrame.ServicesTests.Documents;

/// <summary>
/// Names in letters the typeface lacks are told of, never printed as boxes. Letters counted by
/// hand; scripts by the Unicode Standard's names of blocks.
/// </summary>
public sealed class ForeignNameTests
{
    [Theory]
    [InlineData("北京农场", "[4 Chinese characters]")]
    [InlineData("مزرعة الشمال", "[11 Arabic letters]")]
    [InlineData("Tractor 🚜 Farm", "Tractor [1 picture] Farm")]
    [InlineData("Cedar 農場 Barn", "Cedar [2 Chinese characters] Barn")]
    [InlineData("さくら農場", "[3 Japanese letters, 2 Chinese characters]")]
    [InlineData("ＣＥＤＡＲ １２", "CEDAR 12")]
    [InlineData("Rene\u0301 Z\u030Cupan", "René Župan")]
    [InlineData("Zażółć Gęślą Привет Αγρός", "Zażółć Gęślą Привет Αγρός")]
    [InlineData("\uE000\uFFFF", "[2 signs]")]
    public void A_name_is_printed_as_far_as_it_can_be(string name, string printed) =>
        Assert.Equal(printed, Lettering.Clean(name));

    [Theory]
    [InlineData("北京农场", true)]
    [InlineData("Cedar Bend", false)]
    public void A_sheet_whose_names_are_not_all_there_says_so(string name, bool isTold)
    {
        var list = SampleBuildings.Packing(SampleBuildings.PlainGable) with { ShipTo = name };
        using var checklist = PdfDocument.Open(Checklist.Pdf(list));
        Assert.All(checklist.GetPages(), page => Assert.Equal(
            isTold, page.Text.Contains(Lettering.LackRemark)));
        var map = SampleBuildings.PlainGable with { Title = name };
        using var drawing = PdfDocument.Open(FlatMap.Pdf(map));
        Assert.All(drawing.GetPages(), page => Assert.Equal(
            isTold, page.Text.Contains(Lettering.LackRemark)));
    }

    /// <summary>Source: UAX 9; Hebrew reads from the right, a number in it from the left.</summary>
    [Theory]
    [InlineData("Farm שלום 12", "Farm םולש 12")]
    [InlineData("שלום 12 שלום", "םולש 12 םולש")]
    [InlineData("Barn (חווה) A", "Barn (הווח) A")]
    [InlineData("plain", "plain")]
    public void Hebrew_stands_on_paper_as_it_is_read(string name, string onPaper) =>
        Assert.Equal(onPaper, ReadingOrder.OnPaper(name));

    /// <summary>A browser turns the letters itself: in the SVG they stay as they were typed.
    /// </summary>
    [Fact]
    public void Hebrew_stays_in_typed_order_in_the_svg()
    {
        var map = SampleBuildings.PlainGable with { Title = "שלום" };
        var svg = XDocument.Parse(Encoding.UTF8.GetString(FlatMap.Svg(map)));
        Assert.Contains(svg.Descendants(), node =>
            node.Name.LocalName == "text" && node.Value == "שלום");
    }
}
