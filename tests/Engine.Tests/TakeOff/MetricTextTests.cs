using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization;
using System.Text.RegularExpressions;
using CsCheck;
using PostFrame.Engine;
using PostFrame.Engine.Quantities;
using PostFrame.Engine.TakeOff;
using Xunit;
using static PostFrame.EngineTests.TakeOff.Ask;

namespace PostFrame.EngineTests.TakeOff;

/// <summary>A metric job is metric in every word it tells, a US one in US units.</summary>
public sealed partial class MetricTextTests
{
    private static readonly JsonSerializerOptions AnyNumber = new()
    {
        NumberHandling = JsonNumberHandling.AllowNamedFloatingPointLiterals,
    };

    [Fact]
    public void Nothing_told_of_a_metric_job_names_a_US_unit() => RichJobs.Valid.Sample(job =>
        {
            var result = Sizing.Size(job with { Metric = true }).Result!;
            Assert.DoesNotContain(Texts(result), text => UsUnit().IsMatch(text));
        }, iter: 60);

    [Fact]
    public void Nothing_told_of_goods_bought_by_area_names_a_US_unit_in_a_metric_job() =>
        Assert.DoesNotContain(Texts(ByArea(metric: true)), text => UsUnit().IsMatch(text));

    /// <summary>The blanket at a purlin: 3 mm ÷ 25.4 × 16 is 1.89 sixteenths.</summary>
    [Fact]
    public void The_heat_of_a_plane_is_told_in_the_units_of_the_job()
    {
        Assert.All(HeatWords(WorkedJobs.W1),
            method => Assert.Contains("squeezed to about 1/8 in over", method));
        Assert.All(HeatWords(WorkedJobs.W1 with { Metric = true }),
            method => Assert.Contains("squeezed to 3 mm over", method));
    }

    [Fact]
    public void Nothing_told_of_a_US_job_names_a_metric_length() => RichJobs.Valid.Sample(job =>
        {
            var result = Sizing.Size(job with { Metric = false }).Result!;
            Assert.DoesNotContain(Texts(result), text => MetricLength().IsMatch(text));
        }, iter: 60);

    /// <summary>As on a tape measure: 0.0625 in is 1/16 in, 0.375 in is 3/8 in. What no tape shows,
    /// such as a slope length of 189.737 in, stays a decimal.</summary>
    [Theory]
    [InlineData(0.0625, "a rest within 1/16 in makes")]
    [InlineData(0.375, "a rest within 3/8 in makes")]
    [InlineData(0.015625, "a rest within 1/64 in makes")]
    [InlineData(1, "a rest within 1 in makes")]
    [InlineData(0.1, "a rest within 0.1 in makes")]
    public void Fractions_of_an_inch_are_told_as_a_tape_shows_them(double inches, string told) =>
        Assert.All(
            WorkedJobs.W1.WithPractice(p => p with { Tolerance = In(inches) }).Sized().Planes,
            plane => Assert.Contains(told, plane.How, StringComparison.Ordinal));

    [Fact]
    public void A_US_unit_would_be_found() =>
        Assert.Contains(Texts(ByArea(metric: false)), text => UsUnit().IsMatch(text));

    /// <summary>Derived: 6 ft is 1.829 m and 4 ft 1.219 m, guarded from less; 10 ft is 3.048 m
    /// and 3 in 76.2 mm, kept to more; 4:12 is 18.43°; 40 °F is 4.4 °C; 15 mph 24.1 km/h.</summary>
    [Theory]
    [InlineData("falls", "at 1.8 m and over in construction (1.2 m in")]
    [InlineData("falls", "Slopes over 18° need")]
    [InlineData("electrical", "blanket 80 mm from recessed")]
    [InlineData("electrical", "lines: 3.1 m minimum to 50 kV")]
    [InlineData("wind", "stop at 24 km/h,")]
    [InlineData("cold", "below about 5 °C.")]
    [InlineData("lifting", "Over 22.7 kg:")]
    [InlineData("purlins-are-not-anchors", "within 2.4 m of a frame")]
    [InlineData("ventilation", "some 5.5 to 8 kg of water a day")]
    [InlineData("unvented-heaters", "0.8 kg (0.8 L) per litre; natural gas about 0.14 kg per kWh")]
    [InlineData("unvented-heaters", "310 to 920 mm clearances, 3.1 m from")]
    public void Cautions_of_a_metric_job_err_on_the_safe_side(string id, string told) =>
        Assert.Contains(
            told, Assert.Single(WorkedJobs.W8.Sized().Cautions, c => c.Id == id).Text,
            StringComparison.Ordinal);

    [Fact]
    public void A_metric_job_has_the_cautions_of_a_US_one() =>
        Assert.Equal(
            WorkedJobs.W1.Sized().Cautions.Select(c => c.Id),
            (WorkedJobs.W1 with { Metric = true }).Sized().Cautions.Select(c => c.Id));

    /// <summary>Walls of 2 × 12.192 × 3.048 m, by hand: 74.322 m², at 50.8 mm 3.7756 m³.</summary>
    [Fact]
    public void Foam_of_a_metric_job_is_told_in_hundredths_of_a_cubic_metre()
    {
        var goods = Assert.Single(ByArea(metric: true).AreaGoods,
            g => g.Product == "spray-foam-closed");
        Assert.Equal((3.78, "m³", "74.3 m² × 50.8 mm"), (goods.Quantity, goods.Unit, goods.How));
    }

    /// <summary>800 ft² at 2 in, at 1.10 a board foot.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Foam_is_priced_by_the_board_foot_whatever_the_units(bool metric)
    {
        var line = Assert.Single(ByArea(metric).Price!.Lines);
        Assert.Equal((1600m, "board feet", 1760m), (line.Quantity, line.Unit, line.Amount));
    }

    [Theory]
    [InlineData("blanket-3-white", "76 mm faced glass-fibre blanket, white")]
    [InlineData("blanket-3-white-two-tabs",
        "76 mm faced glass-fibre blanket, white, a tab on each side")]
    [InlineData("bubble-foil-flange", "Foil-faced bubble sheet, 8 mm, self-adhesive flange")]
    [InlineData("batt-3-5-unfaced", "Unfaced glass-fibre batt, 89 mm")]
    [InlineData("board-2-xps", "Extruded polystyrene board, 51 mm")]
    [InlineData("spray-foam-open", "Open-cell spray foam")]
    public void Products_have_metric_titles(string code, string title) =>
        Assert.Equal(title, ProductCatalogue.Find(code)!.TitleIn(metric: true));

    private static IEnumerable<string> HeatWords(SizingInput job) =>
        job.Sized().Planes.SelectMany(
            plane => new[] { plane.Thermal!.Winter.Method, plane.Thermal.Summer.Method });

    private static SizingResult ByArea(bool metric) => (Job(360, 480, 120, Gable(4),
        new()
        {
            Planes = ["sidewallA", "sidewallB"],
            Product = "spray-foam-closed",
            Thickness = In(2)
        },
        new() { Planes = ["endwall1"], Product = "batt-3-5-unfaced" },
        new() { Planes = ["endwall2"], Product = "board-2-eps" }) with
    {
        Metric = metric,
        Prices = new()
        {
            Id = "made-up",
            Version = "1",
            Currency = "USD",
            UnitPrices = new Dictionary<string, decimal> { ["spray-foam-closed"] = 1.10m },
        },
    }).Sized();

    /// <summary>Every text of the answer but the price list's, which has units of its own, and the
    /// summary, which tells slopes as they were written.</summary>
    private static IEnumerable<string> Texts(SizingResult result) =>
        Texts(JsonSerializer.SerializeToNode(
            result with { Price = null, Building = result.Building with { Summary = "" } },
            AnyNumber));

    private static IEnumerable<string> Texts(JsonNode? node) => node switch
    {
        JsonObject members => members.SelectMany(m => Texts(m.Value)),
        JsonArray items => items.SelectMany(Texts),
        JsonValue value when value.TryGetValue(out string? text) => [text],
        _ => [],
    };

    [GeneratedRegex(
        @"[\d½⅜] ?(ft|ft²|ft³|lb|lbs|mph|gal|°F|therm|Btu|perm)\b|inch|board f"
        + @"|[\d½⅜] ?in\b(?! the 2018| quotation)"
        + @"|\b(feet|foot|pounds?|gallons?)\b|\d:12|/12")]
    private static partial Regex UsUnit();

    [GeneratedRegex(@"\d ?(mm|cm|m)\b")]
    private static partial Regex MetricLength();
}
