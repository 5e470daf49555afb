using System.Text.Json.Nodes;
using static PostFrame.ServicesTests.Comparisons.ComparisonRequests;

namespace PostFrame.ServicesTests.Comparisons;

/// <summary>Requests that between them bring every member an answer can hold.</summary>
internal static class ManyRequests
{
    private static JsonNode Json(string text) => JsonNode.Parse(text)!;

    public static IReadOnlyDictionary<string, Func<JsonNode>> All { get; } =
        new Dictionary<string, Func<JsonNode>>
        {
            ["shop roof"] = () => Example(ShopRoof),
            ["dwelling wall by ISO 6946"] = () => Example(DwellingWall),
            ["building and heater"] = () => Example(ShopRoof)
                .With("/building", Json("""
                    {"otherElements": [{"name": "walls", "area": "1800 ft2", "assemblyR": 11}],
                     "volume": "18000 ft3", "airChangesPerHour": 0.5, "slabEdge": "140 ft"}
                    """))
                .With("/room/burner", Json("""
                    {"fuel": "propane", "input": "40000 Btu/h", "volume": "18000 ft3",
                     "airChangesPerHour": 1}
                    """)),
            ["nothing heats it"] = () => Example(ShopRoof)
                .With("/room", Json("""{"heated": false, "use": "livestock"}"""))
                .With("/building", Json("""{"slabEdge": "140 ft"}""")),
            ["nothing heats it and no fuel is told"] = () => Example(ShopRoof)
                .With("/room", Json("""{"heated": false, "use": "dryStorage"}"""))
                .With("/fuel", null)
                .With("/building", Json("""{"slabEdge": "140 ft"}""")),
            ["steel framing"] = () => Example(ShopRoof)
                .With("/plane/framing", Json(
                    """{"material": "steel", "system": "throughFastened"}"""))
                .With("/code/construction", "metal building"),
            ["spaces vented a little and well"] = () => Example(ShopRoof)
                .With("/rivals/0/airSpaces", Json("""
                    [{"side": "room", "thickness": "3.5 in", "kind": "slightlyVentilated"},
                     {"side": "cladding", "thickness": "1.5 in", "kind": "ventilated"}]
                    """)),
            ["two spaces, no price, metric"] = () => Example(DwellingWall)
                .With("/units", "metric")
                .With("/rivals/1/airSpaces", Json("""
                    [{"side": "room", "thickness": "20 mm", "kind": "enclosed"},
                     {"side": "cladding", "thickness": "40 mm", "kind": "slightlyVentilated"}]
                    """)),
            ["own values, no place"] = () => Example(ShopRoof)
                .With("/climate", Json("""
                    {"winterDesign": "-10 °C", "summerDesign": "30 °C", "sun": 700,
                     "heatingDegreeDays": "3000 K·d", "zone": "6A"}
                    """))
                .With("/room/moistureExcess", 400).With("/room/use", null),
            ["steep roof, squeezed batt, thick blanket, a space beyond the table"] = () =>
                Example(ShopRoof)
                    .With("/plane/slope", "20:12")
                    .With("/rivals", Json("""
                        [{"kind": "batt", "claimedR": 19, "thickness": "6.25 in",
                          "placement": "betweenFraming", "roomFace": "whiteFacing", "perm": 1},
                         {"kind": "blanket", "claimedR": 10, "thickness": "1.5 in",
                          "roomFace": "metallizedFilm", "perm": 0.02,
                          "claddingFace": "brightFoil", "placement": "underFraming",
                          "airSpaces": [{"side": "cladding", "thickness": "1 in",
                              "kind": "enclosed"}]},
                         {"kind": "blanket", "claimedR": 40, "thickness": "4.4 in",
                          "roomFace": "whiteFacing", "perm": 1}]
                        """)),
            ["nothing but the plane"] = () => Json("""
                {"plane": {"kind": "wall", "framing":
                    {"width": "38 mm", "spacing": "600 mm", "depth": "140 mm"}},
                 "rivals": [{"kind": "foilSheet", "claimedR": 8, "roomFace": "brightFoil",
                     "airSpaces": []}],
                 "options": [{"product": "bubble-foil", "airSpaces": []}]}
                """),
        }.ToDictionary(
            entry => entry.Key,
            entry => (Func<JsonNode>)(() => entry.Value().With("/working", true)));
}
