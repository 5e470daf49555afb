using System.Text;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using CsCheck;
using PostFrame.Documents;
using PostFrame.Documents.Drawing;
using PostFrame.Documents.Maps;
using UglyToad.PdfPig;
using Xunit;

namespace PostFrame.ServicesTests.Documents;

/// <summary>What must hold on paper for any building the engine accepts.</summary>
public sealed partial class AnyBuildingTests
{
    private const int Many = 60;
    private const int Few = 15;

    /// <summary>Common practice, no source: smaller is not read on a site.</summary>
    private const double LeastOverviewPt = 5;
    private const double LeastSheetPt = 6;

    private static readonly Frame Room = new(30, 62, 732, 500);

    [Fact]
    public void Most_of_these_requests_are_accepted()
    {
        var maps = RandomBuildings.Maps.Array[100].Single();
        Assert.InRange(maps.Count(map => map is not null), 40, 100);
    }

    [Fact]
    public void Nothing_on_its_map_runs_into_anything_or_off_the_page() =>
        Sample(map => InkOnPage.AssertNothingOverlaps(FlatMap.Pages(map)), Many);

    [Fact]
    public void No_word_on_its_map_is_too_small_to_read() => Sample(map =>
    {
        var pages = FlatMap.Pages(map);
        Assert.All(Words(pages[0]), w => Assert.True(w.Size >= LeastOverviewPt, w.Text));
        Assert.All(
            pages.Skip(1).SelectMany(Words),
            w => Assert.True(w.Size >= LeastSheetPt, $"{w.Text} at {w.Size}"));
    }, Many);

    [Fact]
    public void Its_planes_share_one_scale_and_none_lies_on_another() => Sample(map =>
    {
        var placed = MapLayout.Place(map, Room, 19, PlaneTitle.LeastWidthPt);
        Assert.Single(placed.Select(plane => plane.Scale).Distinct());
        var frames = placed.Select(plane => Frame.Around(plane.Outline)).ToList();
        for (var i = 0; i < frames.Count; i++)
        {
            Assert.True(frames[i].X >= Room.X - 0.01 && frames[i].Right <= Room.Right + 0.01);
            Assert.True(frames[i].Y >= Room.Y - 0.01 && frames[i].Bottom <= Room.Bottom + 0.01);
            Assert.All(frames.Skip(i + 1), other => Assert.False(
                frames[i].X < other.Right && other.X < frames[i].Right
                && frames[i].Y < other.Bottom && other.Y < frames[i].Bottom));
        }
    }, Many);

    /// <summary>By itself, in a title, or in the table; ranges are counted out.</summary>
    [Fact]
    public void Every_piece_is_said_once_with_its_length_on_the_whole_drawing() => Sample(map =>
    {
        var said = Said(map, FlatMap.Pages(map)[0]);
        Assert.Equal(Expected(map.Planes), said.Order(StringComparer.Ordinal));
    }, Many);

    [Fact]
    public void Every_piece_is_said_once_with_its_length_on_its_planes_own_sheets() => Sample(map =>
    {
        var pages = FlatMap.Pages(map);
        foreach (var (plane, sheets) in FlatMapTests.OwnSheets(map))
        {
            var said = sheets.SelectMany(sheet => Said(map, pages[sheet - 1]));
            Assert.Equal(
                Expected([map.Planes[plane]]), said.Order(StringComparer.Ordinal));
        }
    }, Many);

    [Fact]
    public void Other_readers_find_the_same_words_in_svg_and_pdf() => Sample(map =>
    {
        var drawn = Words(FlatMap.Pages(map)[0]).Select(words => words.Text).ToList();
        var svg = XDocument.Parse(Encoding.UTF8.GetString(FlatMap.Svg(map)));
        XNamespace ns = "http://www.w3.org/2000/svg";
        Assert.Equal(drawn, svg.Descendants(ns + "text").Select(text => text.Value));
        using var pdf = PdfDocument.Open(FlatMap.Pdf(map));
        var read = pdf.GetPage(1).Text;
        Assert.All(drawn, text => Assert.Contains(
            text.Replace("  ", " "), read.Replace("  ", " ")));
    }, Few);

    [Fact]
    public void Nothing_on_its_labels_and_checklist_runs_into_anything() => Sample(map =>
    {
        var labels = SampleBuildings.Labels(map);
        InkOnPage.AssertNothingOverlaps(LabelSheet.Pages(
            labels with { Labels = [.. labels.Labels.Take(3), .. labels.Labels.TakeLast(3)] }));
        InkOnPage.AssertNothingOverlaps(Checklist.Pages(SampleBuildings.Packing(map)));
    }, Few);

    private static void Sample(Action<BuildingMap> holds, int count) =>
        RandomBuildings.Maps.Where(map => map is not null)
            .Sample(map => holds(map!), iter: count, threads: 1);

    private static IEnumerable<Words> Words(Sketch page) => page.Marks.OfType<Words>();

    private static IEnumerable<string> Expected(IEnumerable<MapPlane> planes) =>
        [.. planes.SelectMany(plane => plane.Strips)
            .Select(strip => $"{strip.Mark} {strip.LengthText}").Order(StringComparer.Ordinal)];

    /// <summary>"Mark length" of every piece a page's words tell of.</summary>
    private static IEnumerable<string> Said(BuildingMap map, Sketch page)
    {
        var order = map.Planes.SelectMany(plane => plane.Strips)
            .Select(strip => strip.Mark).ToList();
        var texts = Words(page).Select(words => words.Text).ToList();
        for (var i = 0; i < texts.Count; i++)
        {
            if (order.Contains(texts[i]))
            {
                yield return $"{texts[i]} {texts[++i]}";
                continue;
            }

            foreach (Match told in Told().Matches(texts[i]))
            {
                foreach (var mark in Counted(told.Groups[1].Value, order))
                {
                    yield return $"{mark} {told.Groups[2].Value}";
                }
            }
        }
    }

    private static IEnumerable<string> Counted(string marks, List<string> order)
    {
        foreach (var part in marks.Split(", "))
        {
            var ends = part.Split(" to ");
            var (first, last) = (order.IndexOf(ends[0]), order.IndexOf(ends[^1]));
            foreach (var mark in order.Skip(first).Take(last - first + 1))
            {
                yield return mark;
            }
        }
    }

    /// <summary>"SA-01 to SA-04, SA-06 12 ft 6 in" or the same with a metric length.</summary>
    [GeneratedRegex(
        @"((?:[A-Z]+[0-9]*-\d+[A-Z]*(?: to |, )?)+) +(\d+ ft [0-9 /]+ in|[\d.]+ mm)")]
    private static partial Regex Told();
}
