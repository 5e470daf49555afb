using System.Text.RegularExpressions;
using CsCheck;
using PostFrame.Engine;
using PostFrame.Engine.Buildings;
using PostFrame.Engine.Quantities;
using PostFrame.Engine.TakeOff;
using Xunit;
using static PostFrame.EngineTests.TakeOff.Ask;

namespace PostFrame.EngineTests.TakeOff;

/// <summary>Warnings, cautions and assumptions. Source: takeoff.md 1.3, 2.4, 2.6, 4, 6.</summary>
public sealed class NoteTests
{
    private static SizingInput Over(double width, double roll, string product) =>
        Job(width, 480, 120, Gable(4), Roof(roll, RoofLayout.OverRidge) with { Product = product });

    private static string[] Warnings(SizingInput job) =>
        [.. job.Sized().Warnings.Select(w => w.Id)];

    [Theory]
    [InlineData(360, "blanket-3-white", false, false)]
    [InlineData(480, "blanket-4-white", true, false)]
    [InlineData(600, "blanket-6-white", false, true)]
    public void Pieces_over_50_lb_need_two_people_and_over_75_lb_a_hoist(
        double width, string product, bool two, bool hoist)
    {
        var warnings = Warnings(Over(width, 72, product));
        Assert.Equal((two, hoist), (warnings.Contains("two-people"), warnings.Contains("hoist")));
    }

    [Theory]
    [InlineData(48, false)]
    [InlineData(60, false)]
    [InlineData(72, true)]
    [InlineData(36, true)]
    public void Strips_that_line_up_with_36_in_panel_laps_are_told(double roll, bool told) =>
        Assert.Equal(told, Warnings(Over(360, roll, "blanket-3-white"))
            .Contains("joints-meet-panel-laps"));

    [Theory]
    [InlineData(4, false)]
    [InlineData(6, true)]
    public void The_crew_is_told_to_lay_with_the_wind_and_to_stop_sooner_on_a_steep_roof(
        double x, bool steep)
    {
        // takeoff.md 1.3 (from the leeward end), 4.6 (two people on purlins), 6 (15 mph, lower on
        // steep roofs); steep is over 4:12 as in 29 CFR 1926.501(b)(11).
        var text = Assert.Single(Job(360, 480, 120, Gable(x), Cover(48, "roof")).Sized().Warnings,
            w => w.Id == "lay-with-the-wind").Text;
        Assert.Contains("leeward end", text, StringComparison.Ordinal);
        Assert.Contains("two people", text, StringComparison.Ordinal);
        Assert.Equal(steep, text.Contains("sooner", StringComparison.Ordinal));
        Assert.DoesNotContain(
            WorkedJobs.W6.Sized().Warnings, w => w.Id == "lay-with-the-wind");
    }

    [Theory]
    [InlineData(1100, false)]
    [InlineData(1140, true)]
    public void A_piece_longer_than_a_roll_yields_is_told(double width, bool told)
    {
        // S = width/2 × 1.054093 twice, + 12: 1171 and 1214 in against 1200 − 6.
        Assert.Equal(told, Warnings(Over(width, 48, "blanket-3-white"))
            .Contains("piece-longer-than-roll"));
    }

    [Fact]
    public void Thick_blanket_and_bubble_sheet_say_what_they_need()
    {
        Assert.Contains("thick-blanket", Warnings(Over(360, 48, "blanket-4-foil")));
        Assert.Contains("bubble-alone", Warnings(Over(360, 48, "bubble-foil")));
        Assert.DoesNotContain("thick-blanket", Warnings(Over(360, 48, "blanket-3-foil")));
    }

    [Fact]
    public void A_surplus_under_3_in_flags_the_job_with_its_planes()
    {
        var text = Assert.Single(
            WorkedJobs.W1.Sized().Warnings, w => w.Id == "scant-surplus").Text;
        Assert.Contains("Sidewall A (0 in)", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Endwall", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Much_drape_is_told_when_it_exceeds_half_the_end_allowances()
    {
        var job = Over(360, 48, "blanket-3-white");
        Assert.DoesNotContain(
            "much-drape", Warnings(job.WithPractice(p => p with { DrapePercent = 1 })));
        Assert.Contains(
            "much-drape", Warnings(job.WithPractice(p => p with { DrapePercent = 2 })));
    }

    [Fact]
    public void The_standing_caution_comes_first_and_in_full()
    {
        var first = WorkedJobs.W1.Sized().Cautions[0];
        Assert.Equal("standing", first.Id);
        Assert.EndsWith(
            "If this sheet and they disagree, they are right.", first.Text,
            StringComparison.Ordinal);
    }

    [Fact]
    public void Every_caution_has_topic_text_basis_and_source_and_an_id_of_its_own()
    {
        var cautions = WorkedJobs.W1.Sized().Cautions;
        Assert.All(cautions, c => Assert.All(
            new[] { c.Id, c.Topic, c.Text, c.Basis, c.Source }, Assert.NotEmpty));
        Assert.Equal(cautions.Count, cautions.Select(c => c.Id).Distinct().Count());
    }

    [Theory]
    [InlineData("blanket-3-white", "fibre-handling", true)]
    [InlineData("blanket-3-white", "bubble-sheet", false)]
    [InlineData("blanket-3-white", "foam-plastic", false)]
    [InlineData("bubble-foil", "bubble-sheet", true)]
    [InlineData("bubble-foil", "fibre-handling", false)]
    [InlineData("blanket-3-white", "unvented-heaters", true)]
    [InlineData("bubble-foil", "blanket-hides-hole", true)]
    public void A_caution_is_there_when_it_touches_the_job(string product, string id, bool there) =>
        Assert.Equal(there, Over(360, 48, product).Sized().Cautions.Any(c => c.Id == id));

    [Fact]
    public void Walls_alone_bring_no_roof_cautions() =>
        Assert.DoesNotContain(WorkedJobs.W6.Sized().Cautions, c => c.Id == "blanket-hides-hole");

    [Fact]
    public void Every_allowance_is_echoed_with_who_set_it()
    {
        var assumptions = WorkedJobs.W1.WithPractice(p => p with { EaveTuck = In(8) })
            .Sized().Assumptions.ToLookup(a => a.Id);
        Assert.Equal(("8", "in", "asked"), Of("eaveTuck"));
        Assert.Equal(("6", "in", "C"), Of("ridgeLap"));
        Assert.Equal(("0.0625", "in", "C"), Of("tolerance"));

        (string, string?, string) Of(string id)
        {
            var a = Assert.Single(assumptions[id]);
            return (a.Value, a.Unit, a.Mark);
        }
    }

    [Fact]
    public void A_metric_job_has_metric_rates_and_limits()
    {
        // 200 and 300 mm for 8 and 12 in, as takeoff.md W8 takes 150 for 6 in.
        var result = WorkedJobs.W8.Sized();
        Assert.Contains(result.Accessories, a => a.Id == "staples"
            && a.How == "one per 200 mm of joint");
        Assert.Contains(result.Accessories, a => a.Id == "capNails"
            && a.How == "one per 300 mm at top and base, 600 mm at girts");
        Assert.Contains(result.Accessories, a => a.Id == "patchTape"
            && a.How == "one roll per 460 m²");
        Assert.Contains(result.Warnings, w => w.Id == "scant-surplus"
            && w.Text.StartsWith("Less than 75 mm", StringComparison.Ordinal));
        Assert.Contains(result.Assumptions, a => a.Id == "framing"
            && a.Value == "600 mm and 600 mm centres");
    }

    [Theory]
    [InlineData(72, "1 piece over 50 lb needs two people, R-01 at ")]
    [InlineData(144, "2 pieces over 50 lb need two people, such as R-01 at ")]
    public void One_heavy_piece_is_told_in_the_singular(double length, string told) =>
        Assert.StartsWith(
            told, Assert.Single(
                Job(480, length, 120, Gable(4), Roof(72, RoofLayout.OverRidge) with
                {
                    Product = "blanket-4-white",
                }).Sized().Warnings, w => w.Id == "two-people").Text, StringComparison.Ordinal);

    [Fact]
    public void Nothing_is_counted_in_the_wrong_number() => RichJobs.Valid.Sample(job =>
            Assert.DoesNotContain(
                Sizing.Size(job).Result!.Warnings.Select(w => w.Text),
                text => text.Contains("(s)", StringComparison.Ordinal)
                    || Regex.IsMatch(text, @"(?<![\d.,])1 (header )?(pieces|rolls|strips)\b")),
        iter: 60);

    [Fact]
    public void A_metric_job_is_told_in_metric_units()
    {
        var result = WorkedJobs.W8.Sized();
        Assert.DoesNotContain(result.Accessories, a => a.Unit is "ft" or "ft²"
            || a.How.Contains("ft", StringComparison.Ordinal));
        Assert.DoesNotContain(result.Assumptions, a => a.Unit is "in" or "ft" or "lb"
            || a.Value.Contains(" in ", StringComparison.Ordinal));
        Assert.DoesNotContain(result.Pieces.SelectMany(p => p.Why),
            w => w.Text.Contains(" in ", StringComparison.Ordinal)
                || w.Text.Contains("/12", StringComparison.Ordinal));
    }

    [Fact]
    public void The_building_is_summed_up_in_one_line()
    {
        Assert.Equal("36 ft × 50 ft × 9 ft, gambrel 20:12 and 6:12",
            WorkedJobs.W4.Sized().Building.Summary);
        Assert.Equal("12 m × 18 m × 4.2 m, gable 15°", WorkedJobs.W8.Sized().Building.Summary);
    }

    [Fact]
    public void A_slope_is_told_as_it_was_written()
    {
        Assert.EndsWith("gable 15°", Told(Slope.FromDegrees(15)), StringComparison.Ordinal);
        Assert.EndsWith("gable 18.5°", Told(Slope.FromDegrees(18.5)), StringComparison.Ordinal);
        Assert.EndsWith("gable 33 %", Told(Slope.FromPercent(33)), StringComparison.Ordinal);
        Assert.EndsWith("gable 4.5:12", Told(Pitch(4.5)), StringComparison.Ordinal);
        Assert.EndsWith("gable 3.125:12", Told(Pitch(3.125)), StringComparison.Ordinal);
        Assert.EndsWith(
            "gambrel 67.5° and 22.5°",
            Job(360, 480, 120, new() { Form = RoofForm.Gambrel, HalfOctagon = true },
                Cover(48, Walls)).Sized().Building.Summary, StringComparison.Ordinal);

        static string Told(Slope slope) => Job(
            360, 480, 120, new() { Form = RoofForm.Gable, Slope = slope }, Cover(48, Walls))
            .Sized().Building.Summary;
    }

    [Fact]
    public void A_slope_that_follows_from_heights_and_an_eave_from_a_bearing_are_told_in_round()
    {
        var byPeak = new RoofInput { Form = RoofForm.Gable, RidgeHeight = In(167) };
        Assert.EndsWith(
            "gable 3.13:12",
            Job(360, 480, 120, byPeak, Cover(48, Walls)).Sized().Building.Summary,
            StringComparison.Ordinal);
        // takeoff.md 2.2: 131.2975 in, 10 ft 11.2975 in.
        var bearing = Job(360, 480, 120, Gable(4), Cover(48, Walls)).With(b => b with
        {
            EaveHeightDatum = EaveHeightDatum.Bearing,
            HeelHeight = In(6),
            PurlinDepth = In(5.5),
            GirtThickness = In(1.5),
        }).Sized().Building.Summary;
        Assert.Equal("30 ft × 40 ft × 10 ft 11 5/16 in, gable 4:12", bearing);
    }
}
