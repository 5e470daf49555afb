using System.Globalization;
using System.Text;
using System.Xml.Linq;
using PostFrame.Documents;
using UglyToad.PdfPig;
using Xunit;

namespace PostFrame.ServicesTests.Documents;

/// <summary>Names come from strangers. They may look odd on paper, and do nothing else.</summary>
public sealed class HostileTextTests
{
    public static TheoryData<string> Names() =>
    [
        "", " ", new string('W', 5000), string.Concat(Enumerable.Repeat("long words ", 500)),
        "Barn \u202Eevil\u202C \u2066x\u2069 \u200Fend",
        "tab\tnew\r\nline\0nul\u0007bell\u001b[31m",
        "\U0001F69C tractor \U0001F469\u200D\U0001F33E",
        "e\u0301\u0301\u0301\u0301 zalgo\u0335\u0336",
        "broken \ud83d half \udc00", "שלום مرحبا 你好", "</title><script>alert(1)</script>",
        "]]> <!-- & \" ' -->", ") Tj ET endstream endobj (", "%PDF-1.7 \\( \\) \\\\",
        "\uFEFF\uFFFE\uFFFF\uE000", "½ × ″ ’ “quoted” — €", "{{7*7}} ${x} %s %n",
    ];

    [Theory]
    [MemberData(nameof(Names))]
    public void Names_change_nothing_but_themselves_on_a_label(string name)
    {
        var set = LabelTests.Set("Overhead door, ridge vent, panels");
        var hostile = set with
        {
            OrderNumber = name,
            ShipTo = name,
            Labels = [set.Labels[30] with
            {
                Mark = name, PlaneTitle = name, StripText = name, CutText = name,
                CutAlsoText = name, WidthText = name, WidthAlsoText = name,
                ProductText = name, FacingText = name,
            }],
        };
        InkOnPage.AssertNothingOverlaps(LabelSheet.Pages(hostile));
        AssertReadable(LabelSheet.Pdf(hostile), pages: 1);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Names_change_nothing_but_themselves_on_a_checklist(string name)
    {
        var list = SampleBuildings.Packing(Named(name)) with
        {
            ShipTo = name,
            NeededBy = name,
            StandingLine = name,
            Accessories = [new(name, name)],
            Cautions = [new(name, name, name)],
        };
        InkOnPage.AssertNothingOverlaps(Checklist.Pages(list));
        AssertReadable(Checklist.Pdf(list), Checklist.Pages(list).Count);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Names_change_nothing_but_themselves_on_a_map(string name)
    {
        var map = Named(name);
        var svg = XDocument.Parse(Encoding.UTF8.GetString(FlatMap.Svg(map)));
        string[] known = ["svg", "title", "desc", "rect", "g", "path", "text", "circle"];
        Assert.All(svg.Descendants(), node => Assert.Contains(node.Name.LocalName, known));
        Assert.DoesNotContain(
            svg.Descendants().Attributes(), a => a.Name.LocalName.StartsWith("on"));
        InkOnPage.AssertNothingOverlaps(FlatMap.Pages(map));
        AssertReadable(FlatMap.Pdf(map), map.Planes.Count + 1);
    }

    private static BuildingMap Named(string name)
    {
        var map = SampleBuildings.VentedWithDoor;
        return map with
        {
            Title = name,
            Summary = name,
            Planes = [.. map.Planes.Select(plane => plane with
            {
                Title = name,
                SizeText = name,
                Strips = [.. plane.Strips.Select(strip => strip with { LengthText = name })],
                Openings = [.. plane.Openings.Select(opening => opening with { Word = name })],
                Lines = [.. plane.Lines.Select(line => line with { Word = name })],
            })],
        };
    }

    private static void AssertReadable(byte[] pdf, int pages)
    {
        using var document = PdfDocument.Open(pdf);
        Assert.Equal(pages, document.NumberOfPages);
        Assert.All(document.GetPages(), page => Assert.DoesNotContain(
            page.Text.EnumerateRunes(), rune => Rune.GetUnicodeCategory(rune)
                is UnicodeCategory.Control or UnicodeCategory.Format
                or UnicodeCategory.PrivateUse or UnicodeCategory.Surrogate));
    }
}
