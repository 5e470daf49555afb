using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Xunit;
using static PostFrame.ServicesTests.Comparisons.ComparisonRequests;

namespace PostFrame.ServicesTests.Comparisons;

/// <summary>What an answer says in words: units, doubts, and what it does not know.</summary>
public sealed partial class ComparisonWords
{
    private static JsonNode Json(string text) => JsonNode.Parse(text)!;

    // R-10 is 10 · 0.17611 = 1.76 m²·K/W; everything else is told in metric units.
    [Theory]
    [InlineData("ashrae", "4:12", "[]")]
    [InlineData("iso6946", "0:12", """[{"side":"room","thickness":"88 mm","kind":"enclosed"}]""")]
    [InlineData("ashrae", "12:12", """[{"side":"room","thickness":"88 mm","kind":"enclosed"}]""")]
    public void Metric_answers_tell_a_claim_as_it_was_made_and_the_rest_in_metric_units(
        string basis, string slope, string spaces)
    {
        var answer = Example(ShopRoof).With("/units", "metric").With("/basis", basis)
            .With("/rivals/0/name", "foil sheet")
            .With("/plane/slope", slope).With("/rivals/0/airSpaces", Json(spaces)).Answer();
        Assert.StartsWith(
            "R-10 (RSI 1.76) ",
            answer.Line("rival-1").GetProperty("claim").GetProperty("text").GetString());
        Assert.StartsWith(
            "76 mm faced", answer.Line("option-1").GetProperty("name").GetString());
        // Names of quotes are the caller's own.
        var texts = Texts(answer).Select(text => Names().Replace(text, "")).ToList();
        Assert.NotEmpty(texts);
        Assert.All(texts, text => Assert.DoesNotMatch(UsFigure(), text));
    }

    // Its line on the axis shows what that is in the reader's units.
    [Theory]
    [InlineData("us")]
    [InlineData("metric")]
    public void The_picture_repeats_a_claim_as_it_was_made(string units) =>
        Assert.Contains("claimed R-1.55<", Example(ShopRoof).With("/units", units)
            .With("/rivals/0/claimedR", 1.55).Answer().GetProperty("pictures")
            .GetProperty("sideBySide").GetString());

    [Fact]
    public void Us_answers_name_the_unit_of_a_u_factor()
    {
        var code = Example(ShopRoof).Answer().Line("option-1").GetProperty("code");
        Assert.Matches(
            @"U 0\.\d{3} against at most 0\.027 Btu/\(h·ft²·°F\)",
            code.GetProperty("text").GetString());
    }

    // 0.027 Btu/(h·ft²·°F) · 5.678263 = 0.153 W/(m²·K).
    [Fact]
    public void Metric_answers_tell_a_code_limit_in_metric_units_and_as_it_is_printed()
    {
        var code = Example(ShopRoof).With("/units", "metric").Answer().Line("option-1")
            .GetProperty("code").GetProperty("text").GetString();
        Assert.Matches(
            @"U 0\.\d{3} against at most 0\.153 W/\(m²·K\) \(printed as U-0\.027\)", code);
    }

    // The limits of 90.1 are for a U by its own Appendix A, ASHRAE films (from memory).
    [Theory]
    [InlineData("iso6946", true)]
    [InlineData("ashrae", false)]
    public void A_u_of_the_other_basis_meets_no_row_outright_and_it_is_said(
        string basis, bool doubted)
    {
        var code = Example(ShopRoof).With("/basis", basis).With("/climate/zone", "7").Answer()
            .Line("option-1").GetProperty("code");
        Assert.Equal(
            doubted, code.GetProperty("verdict").GetString()!.EndsWith("IfRowIsRight"));
        Assert.Equal(doubted, code.GetProperty("text").GetString()!.Contains("ISO 6946"));
    }

    [Fact]
    public void Between_steel_members_a_sheet_has_no_value_whatever_is_answered()
    {
        var answer = Example(ShopRoof)
            .With("/plane/framing", Json("""{"material": "steel", "system": "throughFastened"}"""))
            .Answer();
        var remark = answer.Line("rival-1").GetProperty("remarks")[0].GetString();
        Assert.Contains("none tells what a bubble sheet does there", remark);
        Assert.DoesNotContain("R-10,", remark);
        var said = Conclusions(answer, "rival-1");
        Assert.Contains("no tested value is held", said["not-comparable"]);
        Assert.Contains("R-10 needs an enclosed air space", said["claim-needs-air-space"]);
        // A blanket of unknown thickness does have one, once it is known.
        Assert.Contains("its questions", Conclusions(answer, "rival-2")["not-comparable"]);
    }

    [Fact]
    public void Of_an_unheated_building_it_is_said_first_that_nothing_is_saved()
    {
        var answer = Example(ShopRoof)
            .With("/room", Json("""{"heated": false, "use": "livestock"}""")).Answer();
        Assert.Equal("unheated", answer.Ids().First());
        var winter = Texts(answer).Where(text => text.Contains("in winter \"")).ToList();
        Assert.NotEmpty(winter);
        Assert.All(winter, text => Assert.Contains("Nothing heats it, so neither saves", text));
        // Livestock adds 1080 Pa where January saturates at about 200: no insulation helps.
        Assert.Contains(
            "The room air itself is at 100 % then, whatever the insulation",
            Conclusions(answer, "rival-1")["drips"]);
        Assert.All(
            answer.GetProperty("lines").EnumerateArray()
                .Where(line => line.TryGetProperty("energy", out _)),
            line => Assert.Equal(0, line.Number("energy", "heatKWh")));
    }

    [Fact]
    public void Without_a_place_the_winter_is_asked_for_and_nothing_is_told_that_hangs_on_it()
    {
        var answer = Example(ShopRoof).With("/climate", null)
            .With("/building", Json("""{"slabEdge": "140 ft"}""")).Answer();
        Assert.Contains(answer.GetProperty("questions").EnumerateArray(),
            question => question.GetProperty("pointer").GetString() == "/climate/winterDesign");
        Assert.Equal("winter-assumed", answer.Ids().First());
        Assert.Equal("A", answer.GetProperty("assumptions").EnumerateArray()
            .Single(a => a.GetProperty("id").GetString() == "winter-design")
            .GetProperty("mark").GetString());
        var line = answer.Line("rival-1");
        Assert.False(line.GetProperty("drip").TryGetProperty("dripsAtDesign", out _));
        Assert.Contains("20 °F outdoors, which is assumed",
            line.GetProperty("drip").GetProperty("text").GetString());
        Assert.True(line.TryGetProperty("energy", out var energy));
        Assert.False(energy.TryGetProperty("buildingDesignLoadBtuPerH", out _));
    }

    // Anchorage: a place with its zone, but no station of the data set stands near.
    [Fact]
    public void Where_no_station_stands_near_only_the_winter_is_asked_for()
    {
        var said = Example(ShopRoof).With("/climate/postalCode", "99501").Answer()
            .GetProperty("conclusions")[0];
        Assert.Equal("winter-assumed", said.GetProperty("id").GetString());
        var text = said.GetProperty("text").GetString();
        Assert.Contains("No station stands near this place", text);
        Assert.DoesNotContain("postal code", text);
    }

    // 50 °F less 7 °F of sky and no sun is 43 °F, colder than the room: heat flows up and out.
    [Fact]
    public void A_summer_colder_than_the_room_is_told_as_such_in_its_own_direction()
    {
        var answer = Example(ShopRoof)
            .With("/climate/summerDesign", "50 °F").With("/climate/sun", 0).Answer();
        Assert.Equal("up at 18.4°",
            answer.GetProperty("plane").GetProperty("summerDirection").GetString());
        Assert.Equal("up at 18.4°", answer.Line("option-1").GetProperty("summer")
            .GetProperty("direction").GetString());
        Assert.Contains("no-summer-gain", answer.Ids());
        Assert.DoesNotContain("no-summer-gain", Example(ShopRoof).Answer().Ids());
    }

    [Fact]
    public void With_a_place_no_winter_is_assumed()
    {
        var answer = Example(ShopRoof)
            .With("/building", Json("""{"slabEdge": "140 ft"}""")).Answer();
        Assert.DoesNotContain("winter-assumed", answer.Ids());
        var line = answer.Line("rival-1");
        Assert.True(line.GetProperty("drip").GetProperty("dripsAtDesign").GetBoolean());
        Assert.InRange(line.Number("energy", "buildingDesignLoadBtuPerH"), 20_000, 60_000);
    }

    private static Dictionary<string, string> Conclusions(JsonElement answer, string rival) =>
        answer.GetProperty("conclusions").EnumerateArray()
            .Where(said => said.TryGetProperty("rival", out var of) && of.GetString() == rival
                && !said.TryGetProperty("option", out _))
            .ToDictionary(
                said => said.GetProperty("id").GetString()!,
                said => said.GetProperty("text").GetString()!);

    /// <summary>Texts the reader's units are meant for; figures name their own.</summary>
    private static IEnumerable<string> Texts(JsonElement answer)
    {
        string[] told = ["text", "question", "remarks", "notes"];
        return new[] { "lines", "conclusions", "questions" }
            .SelectMany(name => Within(answer.GetProperty(name), name));

        IEnumerable<string> Within(JsonElement at, string name) => at.ValueKind switch
        {
            JsonValueKind.Object => at.EnumerateObject()
                .Where(member => member.Name is not "working")
                .SelectMany(member => Within(member.Value, member.Name)),
            JsonValueKind.Array => at.EnumerateArray().SelectMany(item => Within(item, name)),
            JsonValueKind.String when told.Contains(name) => [at.GetString()!],
            _ => [],
        };
    }

    [GeneratedRegex("\"[^\"]*\"|R-10 \\(RSI 1\\.76\\)|\\(printed as U-[0-9.]+\\)")]
    private static partial Regex Names();

    [GeneratedRegex(@"\bR-\d|\d (in|ft²|ft)\b|°F|Btu")]
    private static partial Regex UsFigure();
}
