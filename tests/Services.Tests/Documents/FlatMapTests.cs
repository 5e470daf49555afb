using System.Text;
using System.Xml.Linq;
using PostFrame.Documents;
using PostFrame.Documents.Drawing;
using PostFrame.Documents.Maps;
using UglyToad.PdfPig;
using Xunit;

namespace PostFrame.ServicesTests.Documents;

/// <summary>
/// The flat map against plain geometry and against what other readers find in it.
/// </summary>
public sealed class FlatMapTests
{
    private static readonly Frame Room = new(30, 62, 732, 500);

    public static TheoryData<string> Buildings() => LabelTests.Buildings();

    [Theory]
    [MemberData(nameof(Buildings))]
    public void All_planes_share_one_scale_and_none_lies_on_another(string title)
    {
        var placed = MapLayout.Place(Map(title), Room, 19);
        Assert.Single(placed.Select(plane => plane.Scale).Distinct());
        var frames = placed.Select(plane => Frame.Around(plane.Outline)).ToList();
        for (var i = 0; i < frames.Count; i++)
        {
            Assert.True(frames[i].X >= Room.X - 0.01 && frames[i].Right <= Room.Right + 0.01);
            Assert.True(frames[i].Y >= Room.Y - 0.01 && frames[i].Bottom <= Room.Bottom + 0.01);
            Assert.All(frames.Skip(i + 1), other => Assert.False(Meet(frames[i], other)));
        }
    }

    /// <summary>Area by the shoelace formula, on the page and in inches.</summary>
    [Theory]
    [MemberData(nameof(Buildings))]
    public void Every_plane_keeps_its_area_at_scale(string title) =>
        Assert.All(MapLayout.Place(Map(title), Room, 19), placed =>
        {
            var inches = Area(
                [.. placed.Plane.OutlineIn.Select(p => new Spot(p.AcrossIn, p.UpIn))]);
            Assert.Equal(inches, Area(placed.Outline) / placed.Scale / placed.Scale, inches * 1e-9);
        });

    /// <summary>
    /// Folded up, sidewall A meets the roof along its eave, strip 1 beside endwall 1.
    /// </summary>
    [Fact]
    public void Unfolded_sides_lie_where_they_fold_down_from()
    {
        var placed = MapLayout.Place(SampleBuildings.VentedWithDoor, Room, 19)
            .ToDictionary(plane => plane.Plane.Id, plane => Frame.Around(plane.Outline));
        Assert.True(placed["sidewallB"].Bottom < placed["roofB"].Y);
        Assert.True(placed["roofB"].Bottom < placed["roofA"].Y);
        Assert.True(placed["roofA"].Bottom < placed["sidewallA"].Y);
        Assert.True(placed["endwall1"].Right < placed["roofA"].X);
        Assert.True(placed["endwall2"].X > placed["roofA"].Right);
    }

    [Fact]
    public void Endwalls_of_a_lean_to_lie_on_its_side_of_the_main_ones()
    {
        var placed = MapLayout.Place(SampleBuildings.DroppedLeanTo, Room, 19)
            .ToDictionary(plane => plane.Plane.Id, plane => Frame.Around(plane.Outline));
        Assert.True(placed["leanEndwallA1"].Y > placed["endwall1"].Bottom);
        Assert.True(placed["leanEndwallA2"].Y > placed["endwall2"].Bottom);
        Assert.True(placed["leanSidewallA"].Y > placed["leanRoofA"].Bottom);
    }

    [Theory]
    [MemberData(nameof(Buildings))]
    public void Nothing_on_a_map_runs_into_anything(string title) =>
        InkOnPage.AssertNothingOverlaps(FlatMap.Pages(Map(title)));

    [Theory]
    [MemberData(nameof(Buildings))]
    public void Every_piece_and_length_stands_on_its_planes_page(string title)
    {
        var map = Map(title);
        using var document = PdfDocument.Open(FlatMap.Pdf(map));
        foreach (var (i, sheets) in OwnSheets(map))
        {
            var text = string.Concat(sheets.Select(sheet => document.GetPage(sheet).Text));
            Assert.All(map.Planes[i].Strips, strip => Assert.Contains(strip.Mark, text));
            Assert.All(map.Planes[i].Strips, strip => Assert.Contains(strip.LengthText, text));
            Assert.All(map.Planes[i].Openings, opening => Assert.Contains(
                opening.Word.Replace(" ", ""), text.Replace(" ", "")));
        }
    }

    [Theory]
    [MemberData(nameof(Buildings))]
    public void A_screen_reader_can_say_every_piece_of_the_svg(string title)
    {
        var map = Map(title);
        var svg = XDocument.Parse(Encoding.UTF8.GetString(FlatMap.Svg(map)));
        XNamespace ns = "http://www.w3.org/2000/svg";
        var said = svg.Descendants(ns + "title").Select(t => t.Value).ToList();
        Assert.All(
            map.Planes.SelectMany(plane => plane.Strips.Select(s => (plane.Title, s))),
            pair => Assert.Contains($"{pair.Title}: {pair.s.Mark}, {pair.s.LengthText}", said));
    }

    /// <summary>A viewer without the typeface sets wider letters; SVG 1.1, 10.5, textLength.
    /// </summary>
    [Fact]
    public void Words_of_the_svg_keep_their_width_in_any_typeface()
    {
        var map = SampleBuildings.VentedWithDoor;
        var svg = XDocument.Parse(Encoding.UTF8.GetString(FlatMap.Svg(map)));
        XNamespace ns = "http://www.w3.org/2000/svg";
        var wide = FlatMap.Pages(map)[0].Marks.OfType<Words>()
            .Select(words => Math.Round(words.WidthPt / words.ScaleX, 2));
        Assert.Equal(wide, svg.Descendants(ns + "text").Select(
            text => (double)text.Attribute("textLength")!));
    }

    [Fact]
    public void The_same_map_gives_the_same_bytes()
    {
        var map = SampleBuildings.Gambrel;
        Assert.Equal(FlatMap.Svg(map), FlatMap.Svg(map));
        Assert.Equal(FlatMap.Pdf(map), FlatMap.Pdf(map));
        Assert.Equal(FlatMap.Png(map, 800), FlatMap.Png(map, 800));
    }

    /// <summary>A roof with a line on its edge, from square to a hundred times as long.</summary>
    [Theory]
    [InlineData(120, 120)]
    [InlineData(1200, 120)]
    [InlineData(7200, 120.4)]
    [InlineData(7200, 72)]
    [InlineData(120, 7200)]
    public void A_plane_of_any_proportion_can_be_drawn(double runIn, double upIn)
    {
        var plane = SampleBuildings.VentedWithDoor.Planes[0] with
        {
            OutlineIn = [new(0, 0), new(runIn, 0), new(runIn, upIn), new(0, upIn)],
            Strips = [],
            Openings = [],
            Lines = [new("ridge vent", 0, runIn, upIn, true)],
        };
        var map = SampleBuildings.VentedWithDoor with { Planes = [plane] };
        Assert.NotEmpty(XDocument.Parse(Encoding.UTF8.GetString(FlatMap.Svg(map))).Descendants());
        using var document = PdfDocument.Open(FlatMap.Pdf(map));
        Assert.Equal(2, document.NumberOfPages);
    }

    /// <summary>600 ft of a slope of 6 ft: no word fits it, in words of 5 pt or more.</summary>
    [Fact]
    public void A_vent_and_panels_too_small_for_their_words_are_told_of_above_their_plane()
    {
        var plane = SampleBuildings.VentedWithDoor.Planes[0] with
        {
            OutlineIn = [new(0, 0), new(7200, 0), new(7200, 72), new(0, 72)],
            Strips = [],
            Openings = [.. new[] { 600, 1200 }.Select(from => new MapOpening(
                "translucent panel", from, from + 36, 0, 72, IsPanel: true))],
            Lines = [new("ridge vent", 0, 7200, 72, true)],
        };
        using var document = PdfDocument.Open(FlatMap.Pdf(
            SampleBuildings.VentedWithDoor with { Planes = [plane] }));
        Assert.Contains(
            "ridge vent · 2 × translucent panel", document.GetPage(1).Text);
    }

    [Fact]
    public void A_vent_that_says_its_word_is_not_told_of_twice()
    {
        var words = FlatMap.Pages(SampleBuildings.VentedWithDoor)[0].Marks.OfType<Words>();
        Assert.DoesNotContain(words, word => word.Text.Contains("· ridge vent"));
        Assert.Contains(words, word => word.Text == "ridge vent");
    }

    /// <summary>Each plane's index with the numbers of its own pages, from 1.</summary>
    internal static IEnumerable<(int Plane, IEnumerable<int> Sheets)> OwnSheets(BuildingMap map)
    {
        var next = 2;
        for (var i = 0; i < map.Planes.Count; i++)
        {
            var count = new PlaneSheets(map.Planes[i], Room).Count;
            yield return (i, Enumerable.Range(next, count));
            next += count;
        }
    }

    internal static BuildingMap Map(string title) =>
        SampleBuildings.All.Single(map => map.Title == title);

    private static bool Meet(Frame a, Frame b) =>
        a.X < b.Right && b.X < a.Right && a.Y < b.Bottom && b.Y < a.Bottom;

    private static double Area(IReadOnlyList<Spot> polygon) =>
        Math.Abs(Enumerable.Range(0, polygon.Count).Sum(i =>
        {
            var (a, b) = (polygon[i], polygon[(i + 1) % polygon.Count]);
            return a.X * b.Y - b.X * a.Y;
        })) / 2;
}
