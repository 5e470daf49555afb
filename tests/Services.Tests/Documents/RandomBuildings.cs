using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using CsCheck;
using PostFrame.Documents;
using PostFrame.SizingApi.Drawings;
using PostFrame.SizingApi.Sizings;

namespace PostFrame.ServicesTests.Documents;

/// <summary>
/// Requests for buildings of every form and of any size a request may have, from a shed to a hall
/// of 2,000 ft; taken off by the real engine and laid out as the service lays them out. Some ask
/// for what no building can be and are refused; those have nothing to draw.
/// </summary>
internal static class RandomBuildings
{
    private static readonly string[] Products =
        ["blanket-2-white", "blanket-3-white", "blanket-3-foil", "blanket-6-white", "bubble-foil"];

    /// <summary>A map, or null where the request was refused.</summary>
    public static readonly Gen<BuildingMap?> Maps =
        Gen.Select(Gen.Int[0, 5], Gen.Double[0, 1].Array[24], Gen.Bool.Array[10])
            .Select((form, parts, yes) => Map(Request(form, parts, yes)));

    private static BuildingMap? Map(JsonObject request)
    {
        var asked = Sizings.Ask(Encoding.UTF8.GetBytes(request.ToJsonString()), null);
        return asked.Result is { } result ? DrawMap.Of(result) : null;
    }

    private static JsonObject Request(int form, double[] part, bool[] yes)
    {
        var isMetric = yes[0];
        var width = Spread(part[0], 4.1, 400);
        var length = Spread(part[1], 4.1, 1999);
        var eave = Spread(part[2], 3, 60);
        string Say(double feet) => isMetric
            ? Number(Math.Round(feet * 304.8)) + " mm"
            : Number(Math.Round(feet * 12 * 4) / 4) + " in";
        var roof = Roof(form, width, eave, part, Say);
        if (form != 2 && yes[1])
        {
            roof["ridge"] = "vented";
            if (yes[2])
            {
                roof["ventFrom"] = Say(length * part[3] * 0.5);
                roof["ventTo"] = Say(length * (0.5 + part[4] * 0.5));
            }
        }

        if (yes[3] && length > 20)
        {
            roof["translucentPanels"] = new JsonArray(
                Panel(Say(length * 0.1), "coverAndCut"), Panel(Say(length * 0.6), "splitRun"));
        }

        var building = new JsonObject
        {
            ["name"] = "Any building",
            ["width"] = Say(width),
            ["length"] = Say(length),
            ["eaveHeight"] = Say(eave),
            ["roof"] = roof,
            ["openings"] = Openings(width, length, eave, part, Say),
        };
        List<string> planes = ["roof", "sidewallA", "sidewallB", "endwall1", "endwall2"];
        if (yes[4])
        {
            building["leanTos"] = LeanTo(eave, length, part, yes, Say);
            planes.AddRange(["leanRoofB", "leanSidewallB"]);
            if (yes[6] || yes[5])
            {
                planes.AddRange(["leanEndwallB1", "leanEndwallB2"]);
            }
        }

        if (yes[8] && length > 16)
        {
            building["partition"] = new JsonObject { ["fromEndwall1"] = Say(length * 0.6) };
            planes.Add("partition");
        }

        return new JsonObject
        {
            ["building"] = building,
            ["insulation"] = new JsonArray(new JsonObject
            {
                ["planes"] = new JsonArray([.. planes.Select(p => JsonValue.Create(p))]),
                ["product"] = Products[(int)(part[5] * 4.99)],
                ["rollWidth"] = "best",
                ["roofLayout"] = yes[9] ? "eaveToRidge" : "auto",
            }),
        };
    }

    private static JsonObject Roof(
        int form, double width, double eave, double[] part, Func<double, string> say)
    {
        var slope = Number(Math.Round(1 + part[6] * 11)) + ":12";
        return form switch
        {
            0 => new() { ["form"] = "gable", ["slope"] = slope },
            1 => new()
            {
                ["form"] = "offsetRidge",
                ["ridgeFromSidewallA"] = say(width * (0.2 + part[7] * 0.6)),
                ["slopeA"] = slope,
                ["slopeB"] = "1:12",
            },
            2 => new() { ["form"] = "monoslope", ["slope"] = "1:12" },
            3 => new()
            {
                ["form"] = "gambrel",
                ["lowerSlope"] = "20:12",
                ["lowerRun"] = say(width * 0.15),
                ["upperSlope"] = "5:12",
            },
            4 => new()
            {
                ["form"] = "doublePitch",
                ["brokenSide"] = "both",
                ["lowerSlope"] = "2:12",
                ["lowerRun"] = say(width * 0.2),
                ["upperSlope"] = slope,
            },
            _ => new()
            {
                ["form"] = "profile",
                ["points"] = new JsonArray(
                    Point(say(0), say(eave)),
                    Point(say(width * 0.4), say(eave + width * 0.2)),
                    Point(say(width * 0.6), say(eave + width * 0.15)),
                    Point(say(width), say(eave))),
            },
        };
    }

    private static JsonArray Openings(
        double width, double length, double eave, double[] part, Func<double, string> say)
    {
        JsonObject Opening(
            string wall, string kind, double run, double at, double wide, double high) => new()
            {
                ["wall"] = wall,
                ["kind"] = kind,
                ["fromStart"] = say(run * (0.05 + at * 0.5)),
                ["width"] = say(Math.Max(0.5, run * wide)),
                ["height"] = say(eave * high),
                ["sill"] = say(kind is "window" or "louvre" ? eave * 0.2 : 0),
            };
        var all = new[]
        {
            Opening("endwall1", "overheadDoor", width, part[8], 0.4, 0.7),
            Opening("sidewallA", "slidingDoor", length, part[9], Math.Min(0.4, 40 / length), 0.8),
            Opening("sidewallB", "window", length, part[10], Math.Min(0.3, 4 / length), 0.3),
            Opening("endwall2", "louvre", width, part[11], Math.Min(0.2, 1 / width), 0.1),
        };
        return new JsonArray([.. all.Take((int)(part[12] * 4.99))]);
    }

    private static JsonArray LeanTo(
        double eave, double length, double[] part, bool[] yes, Func<double, string> say)
    {
        var lean = new JsonObject
        {
            ["side"] = "B",
            ["width"] = say(Math.Min(eave * 2, 4 + part[13] * 16)),
            ["slope"] = "1:12",
            ["drop"] = say(yes[5] ? eave * (0.02 + part[14] * 0.3) : 0),
            ["inside"] = "open",
        };
        if (yes[6])
        {
            lean["fromEndwall1"] = say(length * part[15] * 0.4);
            lean["length"] = say(Math.Max(2, length * part[16] * 0.5));
        }

        return [lean];
    }

    private static JsonObject Point(string across, string up) =>
        new() { ["across"] = across, ["up"] = up };

    private static JsonObject Panel(string from, string treatment) => new()
    {
        ["fromStart"] = from,
        ["width"] = "3 ft",
        ["treatment"] = treatment,
    };

    /// <summary>Small ones as often as large ones: even on a logarithmic scale.</summary>
    private static double Spread(double part, double least, double most) =>
        least * Math.Pow(most / least, part);

    private static string Number(double value) =>
        value.ToString("0.##", CultureInfo.InvariantCulture);
}
