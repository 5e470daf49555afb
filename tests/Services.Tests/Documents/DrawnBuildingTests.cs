using System.Text;
using PostFrame.Documents;
using PostFrame.Documents.Drawing;
using PostFrame.Documents.Maps;
using PostFrame.SizingApi.Drawings;
using PostFrame.SizingApi.Sizings;
using UglyToad.PdfPig;
using Xunit;

namespace PostFrame.ServicesTests.Documents;

/// <summary>What of a request reaches its drawing, in places worked by hand.</summary>
public sealed class DrawnBuildingTests
{
    /// <summary>A fall hazard: 12 ft from endwall 1 is 144 in, 3 ft wide, both slopes.</summary>
    [Fact]
    public void A_translucent_panel_is_drawn_where_it_is()
    {
        var roof = Plane(Map("""
            "roof": { "form": "gable", "slope": "4:12", "translucentPanels":
              [{ "fromStart": "12 ft", "width": "3 ft", "treatment": "coverAndCut" }] }
            """), "roof");

        var panel = Assert.Single(roof.Openings);
        Assert.Equal("translucent panel", panel.Word);
        Assert.Equal((144, 180, 0), (panel.FromIn, panel.ToIn, panel.BottomIn));
        Assert.Equal(roof.OutlineIn.Max(point => point.UpIn), panel.TopIn);
    }

    /// <summary>40 ft wide at 4:12: the slope is 240 in × 1.0540926 = 252.98 in.</summary>
    [Fact]
    public void A_panel_of_one_slope_ends_at_the_ridge()
    {
        var roof = Plane(Map("""
            "roof": { "form": "gable", "slope": "4:12", "translucentPanels":
              [{ "plane": "roofB", "fromStart": "12 ft", "width": "3 ft" }] }
            """), "roof");

        Assert.Equal(252.98, Assert.Single(roof.Openings).BottomIn, 0.01);
    }

    /// <summary>12 in of rake overhang: the covered roof starts 12 in before endwall 1.</summary>
    [Fact]
    public void A_covered_rake_is_drawn_beyond_both_endwalls()
    {
        var map = Map("""
            "roof": { "form": "gable", "slope": "4:12", "rakeOverhang": "12 in",
                      "coverOverhangs": true }
            """);

        Assert.Equal(-12, Plane(map, "roof").StartIn);
        Assert.Equal(0, Plane(map, "sidewallA").StartIn);
    }

    [Fact]
    public void What_lies_beyond_the_partition_is_told_on_the_drawing()
    {
        var notes = Map("""
            "roof": { "form": "gable", "slope": "4:12" }, "partition": { "fromEndwall1": "20 ft" },
            "leanTos": [{ "side": "A", "width": "10 ft", "slope": "2:12", "inside": "cold",
                          "fromEndwall1": "30 ft" }]
            """).Notes;

        Assert.Contains(notes, note => note.Contains(
            "Lean-to A roof, Lean-to A sidewall", StringComparison.Ordinal));
    }

    /// <summary>40 of 60 ft are insulated: no line may run on to endwall 2.</summary>
    [Fact]
    public void A_ridge_ends_where_the_insulated_roof_ends()
    {
        var map = Map("""
            "roof": { "form": "gable", "slope": "4:12" }, "partition": { "fromEndwall1": "40 ft" }
            """);
        var placed = MapLayout.Place(map, new Frame(30, 62, 732, 500), 19)
            .Single(plane => plane.Plane.Id == "roof");
        var sketch = new Sketch(792, 612);
        new PlaneDrawing(sketch, placed, new PlaneLettering(placed, MapDetail.Overview)).Draw();

        var around = Frame.Around(placed.Outline);
        Assert.All(
            sketch.Marks.OfType<Shape>().SelectMany(shape => shape.Points),
            point => Assert.InRange(point.X, around.X - 0.01, around.Right + 0.01));
    }

    /// <summary>
    /// Vented from 16 to 44 ft, that is from 192 to 528 in, both on joints of 48 in strips: pairs
    /// there, over the ridge elsewhere.
    /// </summary>
    [Fact]
    public void A_roof_vented_in_part_shows_its_ridge_and_its_vent_each_where_it_is()
    {
        var map = Map("""
            "roof": { "form": "gable", "slope": "4:12", "ridge": "vented",
              "ventFrom": "16 ft", "ventTo": "44 ft" }
            """, "overRidge");

        Assert.Equal(
            [(0, 192, false), (528, 720, false)], Drawn(Plane(map, "roof")));
        Assert.Contains((192, 528, true), Drawn(Plane(map, "roofA")));
        Assert.Contains((192, 528, true), Drawn(Plane(map, "roofB")));
        using var pdf = PdfDocument.Open(FlatMap.Pdf(map));
        Assert.Contains("ridge vent", pdf.GetPage(1).Text);
    }

    [Fact]
    public void A_short_lean_to_is_drawn_beside_the_wall_it_stands_at()
    {
        var map = Map("""
            "roof": { "form": "gable", "slope": "4:12" }, "leanTos": [{ "side": "B",
              "width": "10 ft", "slope": "2:12", "drop": "2 ft", "inside": "open",
              "fromEndwall1": "20 ft", "length": "16 ft" }]
            """, planes: ", \"leanRoofB\", \"leanSidewallB\"");
        var placed = MapLayout.Place(map, new Frame(30, 62, 732, 500), 19)
            .ToDictionary(plane => plane.Plane.Id, plane => Frame.Around(plane.Outline));
        var scale = placed["roof"].Width / 720;

        Assert.Equal(placed["roof"].X + 240 * scale, placed["leanRoofB"].X, 0.01);
    }

    /// <summary>Ten strips meet at nine joints.</summary>
    [Fact]
    public void Every_strip_but_the_first_shows_the_tab_of_the_one_before()
    {
        var map = Map(""" "roof": { "form": "gable", "slope": "4:12" } """);
        var placed = MapLayout.PlaceAlone(
            Plane(map, "sidewallA"), new Frame(30, 62, 732, 500), 19, 1);
        var sketch = new Sketch(792, 612);
        new PlaneDrawing(sketch, placed, new PlaneLettering(placed, MapDetail.OnePlane)).Draw();

        Assert.Equal(
            Plane(map, "sidewallA").Strips.Count - 1,
            sketch.Marks.OfType<Shape>().Count(shape => shape.Stroke == Ink.Grey));
    }

    [Fact]
    public void A_plane_covered_by_area_says_with_what()
    {
        var map = Map(
            """ "roof": { "form": "gable", "slope": "4:12" } """,
            product: """ "batt-5-5-unfaced" """);
        using var pdf = PdfDocument.Open(FlatMap.Pdf(map));
        Assert.Contains(
            "Sidewall A · Unfaced glass-fibre batt, 5½ in", pdf.GetPage(1).Text);
        Assert.DoesNotContain("0 pieces", pdf.GetPage(1).Text);
    }

    [Fact]
    public void A_door_without_a_place_is_told_of_beside_the_drawing()
    {
        var map = Map("""
            "roof": { "form": "gable", "slope": "4:12" }, "openings": [{ "wall": "endwall1",
              "kind": "overheadDoor", "width": "16 ft", "height": "10 ft" }]
            """);
        using var pdf = PdfDocument.Open(FlatMap.Pdf(map));
        Assert.Contains("16 ft wide in Endwall 1 has no fixed place", pdf.GetPage(1).Text);
    }

    /// <summary>The lines of a plane as they are drawn [in], and whether of a vent.</summary>
    private static IEnumerable<(double From, double To, bool IsVent)> Drawn(MapPlane plane) =>
        plane.Lines.SelectMany(line => PlaneShape.OnPlane(plane, line)).Select(line => (
            Math.Round(line.FromIn, 3), Math.Round(line.ToIn, 3), line.IsVent));

    private static MapPlane Plane(BuildingMap map, string id) =>
        map.Planes.Single(plane => plane.Id == id);

    private static BuildingMap Map(
        string members, string layout = "auto", string planes = "", string? product = null)
    {
        product ??= $""" "blanket-3-white", "rollWidth": "48 in", "roofLayout": "{layout}" """;
        var json = $$"""
            { "building": { "name": "B", "width": "40 ft", "length": "60 ft",
                "eaveHeight": "12 ft", {{members}} },
              "insulation": [{ "planes": ["roof", "sidewallA", "sidewallB", "endwall1",
                "endwall2"{{planes}}], "product": {{product}} }] }
            """;
        var asked = Sizings.Ask(Encoding.UTF8.GetBytes(json), null);
        Assert.True(asked.Result is not null, asked.Refusal is null
            ? "" : Encoding.UTF8.GetString(asked.Refusal.ToBytes(null)));
        return DrawMap.Of(asked.Result!);
    }
}
