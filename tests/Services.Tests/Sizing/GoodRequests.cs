using System.Globalization;
using System.Text.Json.Nodes;
using PostFrame.SizingApi.Sizings;
using UglyToad.PdfPig;
using Xunit;

namespace PostFrame.ServicesTests.Sizing;

public sealed class GoodRequests(SizingHost host) : IClassFixture<SizingHost>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public static TheoryData<string> Examples => [.. TestFiles.Examples()];

    /// <summary>Source: the table in worked-schedules.csv, which names its own.</summary>
    public static TheoryData<string, string, string, string, string> WorkedSchedules
    {
        get
        {
            var rows = new TheoryData<string, string, string, string, string>();
            foreach (var line in TestFiles.Read("worked-schedules.csv").Split('\n'))
            {
                if (line.Length > 0 && line[0] != '#')
                {
                    var cells = line.Split(',');
                    rows.Add(cells[0], cells[1], cells[2], cells[3], cells[4]);
                }
            }

            return rows;
        }
    }

    [Theory]
    [MemberData(nameof(WorkedSchedules))]
    public async Task Get_the_schedule_worked_by_hand(
        string example, string plane, string unit, string width, string cuts)
    {
        var answer = await Posted(example);
        var name = unit == "mm" ? "Mm" : "In";
        var lines = answer["schedule"]!.AsArray()
            .Where(line => line!["plane"]!.GetValue<string>() == plane).ToList();

        Assert.All(lines, line => Assert.Equal(width, line!["width" + name]!.ToJsonString()));
        Assert.Equal(Sorted(cuts.Split(' ')), Sorted(lines.GroupBy(
            line => line!["cut" + name]!.ToJsonString(),
            line => line!["count"]!.GetValue<int>()).Select(g => $"{g.Key}:{g.Sum()}")));
    }

    [Theory]
    [MemberData(nameof(Examples))]
    public async Task Get_no_plane_that_the_worked_table_lacks(string example)
    {
        var answer = await Posted(example);

        Assert.Equal(
            WorkedSchedules.Select(row => row.Data).Where(row => row.Item1 == example)
                .Select(row => row.Item2).Order(StringComparer.Ordinal),
            answer["planes"]!.AsArray().Select(plane => plane!["plane"]!.GetValue<string>())
                .Order(StringComparer.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Examples))]
    public async Task Get_the_same_bytes_every_time(string example)
    {
        var first = await Body(await host.PostAsync(TestFiles.Example(example)));
        var again = await Body(await host.PostAsync(TestFiles.Example(example)));
        var inProcess = Sizings.Answer(System.Text.Encoding.UTF8.GetBytes(
            TestFiles.Example(example)));

        Assert.Equal(first, again);
        Assert.Equal(first, inProcess.Body);
    }

    [Theory]
    [MemberData(nameof(Examples))]
    public async Task Get_a_drawing_that_names_every_piece(string example)
    {
        var answer = await Posted(example);
        var drawing = await host.PostAsync(
            TestFiles.Example(example), "/v1/sizings/drawing");
        var svg = await drawing.Content.ReadAsStringAsync(Stop);

        Assert.Equal("image/svg+xml", drawing.Content.Headers.ContentType?.MediaType);
        Assert.All(Marks(answer), mark => Assert.Contains($": {mark}, ", svg));
    }

    /// <summary>1 ft is exactly 304.8 mm (NIST SP 811, 2008 edition, appendix B.8).</summary>
    [Fact]
    public async Task In_feet_and_in_metres_get_the_same_lengths_before_rounding()
    {
        var feet = Barn("40 ft", "60 ft", "14 ft", "20 ft", "12 ft", "10 ft");
        var metres = Barn("12.192 m", "18288 mm", "4.2672 m", "6.096 m", "3657.6 mm", "304.8 cm");

        Assert.Equal(await Exact(feet), await Exact(metres));

        static string Barn(
            string width, string length, string eave, string door, string head, string from) =>
            $$$"""
            {"building": {"width": "{{{width}}}", "length": "{{{length}}}",
              "eaveHeight": "{{{eave}}}",
              "roof": {"form": "gable", "slope": "4:12"}, "openings": [{"wall": "endwall1",
              "kind": "overheadDoor", "width": "{{{door}}}", "height": "{{{head}}}",
              "fromStart": "{{{from}}}"}]},
             "insulation": [{"planes": ["roof", "sidewallA", "endwall1"], "rollWidth": "60 in",
              "product": "blanket-3-white", "roofLayout": "eaveToRidge"}],
             "practice": {"tolerance": "1/16 in", "eaveTuck": "6 in", "ridgeLap": "6 in",
              "wallTop": "3 in", "wallBase": "3 in", "openingHead": "3 in"}}
            """;

        async Task<string[]> Exact(string body)
        {
            var answer = await host.PostAsync(body);
            var pieces = JsonNode.Parse(await answer.Content.ReadAsStringAsync(Stop))!["pieces"]!;
            return [.. pieces.AsArray().Select(p => $"{p!["mark"]} {p["exactMm"]}")];
        }
    }

    [Fact]
    public async Task Get_the_drawing_as_PDF_with_every_mark_in_its_text()
    {
        var answer = await Posted("w2-overhead-door");
        var drawing = await host.PostAsync(
            TestFiles.Example("w2-overhead-door"), "/v1/sizings", "application/pdf");

        using var pdf = PdfDocument.Open(await Body(drawing));
        var text = string.Concat(pdf.GetPages().Select(page => page.Text));
        Assert.All(Marks(answer), mark => Assert.Contains(mark, text));
    }

    [Theory]
    [MemberData(nameof(Examples))]
    public async Task Get_steps_that_add_up_to_each_exact_length(string example)
    {
        foreach (var piece in (await Posted(example))["pieces"]!.AsArray())
        {
            var sum = 0m;
            foreach (var step in piece!["why"]!.AsArray())
            {
                if (step!["term"]!.GetValue<string>() == "exact")
                {
                    break;
                }

                sum += step["mm"]!.GetValue<decimal>();
            }

            Assert.Equal(piece["exactMm"]!.GetValue<decimal>(), sum, 4);
        }
    }

    [Fact]
    public async Task Find_every_product_with_the_mark_of_each_figure()
    {
        using var client = host.CreateClient();
        var products = JsonNode.Parse(
            await client.GetStringAsync("/v1/products", Stop))!["products"]!.AsArray();

        Assert.Contains(products, product =>
            product!["code"]!.GetValue<string>() == "bubble-foil");
        Assert.All(products, product =>
            Assert.Contains(product!["nominalR"]!["mark"]!.GetValue<string>(), "PCMD"));
    }

    private async Task<JsonNode> Posted(string example)
    {
        var answer = await host.PostAsync(TestFiles.Example(example));
        var text = await answer.Content.ReadAsStringAsync(Stop);
        Assert.True(answer.IsSuccessStatusCode, text);
        return JsonNode.Parse(text)!;
    }

    private static Task<byte[]> Body(HttpResponseMessage answer) =>
        answer.Content.ReadAsByteArrayAsync(Stop);

    private static IEnumerable<string> Marks(JsonNode answer) => answer["pieces"]!.AsArray()
        .Select(piece => piece!["mark"]!.GetValue<string>());

    private static IEnumerable<string> Sorted(IEnumerable<string> entries) => entries
        .OrderBy(entry => decimal.Parse(entry.Split(':')[0], CultureInfo.InvariantCulture));
}
