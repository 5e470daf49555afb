using System.Text.Json;
using System.Text.Json.Nodes;
using PostFrame.ServicesTests.Sizing;
using Xunit;
using static PostFrame.ServicesTests.Comparisons.ComparisonRequests;

namespace PostFrame.ServicesTests.Comparisons;

/// <summary>
/// A wrong comparison is refused at the place, by name of the rule, with its bound.
/// </summary>
public sealed class ComparisonRefusals(SizingHost host) : IClassFixture<SizingHost>
{
    [Theory]
    [InlineData("/plane", null, "/plane", "missing")]
    [InlineData("/plane/kind", "\"attic\"", "/plane/kind", "choice")]
    [InlineData("/plane/kind", "\"wall\"", "/plane/slope", "not-here")]
    [InlineData("/plane/slope", null, "/plane/slope", "missing")]
    [InlineData("/plane/slope", "4", "/plane/slope", "unit-missing")]
    [InlineData("/plane/slope", "\"-4:12\"", "/plane/slope", "at-least")]
    [InlineData("/plane/area", "1265", "/plane/area", "type")]
    [InlineData("/plane/area", "\"1265\"", "/plane/area", "unit-missing")]
    [InlineData("/plane/area", "\"0 ft2\"", "/plane/area", "at-least")]
    [InlineData("/plane/area", "\"1265 acres\"", "/plane/area", "area-format")]
    [InlineData("/plane/framing", null, "/plane/framing", "missing")]
    [InlineData("/plane/framing/width", "\"20 in\"", "/plane/framing/width", "at-most")]
    [InlineData("/plane/framing/spacing", "\"1 in\"", "/plane/framing/spacing", "at-least")]
    [InlineData("/plane/framing/material", "\"steel\"", "/plane/framing/system", "missing")]
    [InlineData("/plane/framing/system", "\"throughFastened\"",
        "/plane/framing/system", "not-here")]
    [InlineData("/plane/colour", "\"red\"", "/plane/colour", "choice")]
    [InlineData("/basis", "\"din\"", "/basis", "choice")]
    [InlineData("/climate/postalCode", "\"00000\"", "/climate/postalCode", "unknown-place")]
    [InlineData("/climate/postalCode", "55802", "/climate/postalCode", "type")]
    [InlineData("/climate/countyFips", "\"27137\"", "/climate/countyFips", "either-or")]
    [InlineData("/climate/zone", "\"9Z\"", "/climate/zone", "choice")]
    [InlineData("/climate/winterDesign", "\"-99 °F\"", "/climate/winterDesign", "at-least")]
    [InlineData("/climate/winterDesign", "\"cold\"", "/climate/winterDesign", "temperature-format")]
    [InlineData("/climate/summerDesign", "\"60 °C\"", "/climate/summerDesign", "at-most")]
    [InlineData("/climate/sun", "1e999", "/climate/sun", "json")]
    [InlineData("/climate/sun", "5000", "/climate/sun", "at-most")]
    [InlineData("/room/use", "\"disco\"", "/room/use", "choice")]
    [InlineData("/room/heated", "false", "/room/heatedTo", "not-here")]
    [InlineData("/room/heated", "\"yes\"", "/room/heated", "type")]
    [InlineData("/room/heatedTo", "\"400 °F\"", "/room/heatedTo", "at-most")]
    [InlineData("/room/moistureExcess", "-1", "/room/moistureExcess", "at-least")]
    [InlineData("/room/burner", "{}", "/room/burner/input", "missing")]
    [InlineData("/fuel/kind", "\"wood\"", "/fuel/kind", "choice")]
    [InlineData("/fuel/efficiency", null, "/fuel/efficiency", "missing")]
    [InlineData("/fuel/efficiency", "92", "/fuel/efficiency", "at-most")]
    [InlineData("/fuel/balancePoint", "\"30 °F\"", "/fuel/balancePoint", "at-least")]
    [InlineData("/code/edition", "\"1975\"", "/code/edition", "choice")]
    [InlineData("/code/conditioning", "\"all other\"", "/code/conditioning", "choice")]
    [InlineData("/code/construction", "\"straw\"", "/code/construction", "choice")]
    [InlineData("/options/0/product", "\"blanket-9-gold\"",
        "/options/0/product", "unknown-product")]
    [InlineData("/options/0/claimedR", "10", "/options/0/claimedR", "unknown-member")]
    [InlineData("/options/0/price", "500", "/options/0/pricePerFt2", "either-or")]
    [InlineData("/rivals/0/kind", null, "/rivals/0/kind", "missing")]
    [InlineData("/rivals/0/kind", "\"magic\"", "/rivals/0/kind", "choice")]
    [InlineData("/rivals/0/claimedR", "\"R-10\"", "/rivals/0/claimedR", "type")]
    [InlineData("/rivals/0/claimedR", "-5", "/rivals/0/claimedR", "at-least")]
    [InlineData("/rivals/0/thickness", "\"9 ft\"", "/rivals/0/thickness", "at-most")]
    [InlineData("/rivals/0/roomFace", "\"gold\"", "/rivals/0/roomFace", "choice")]
    [InlineData("/rivals/0/airSpaces", "[{\"thickness\":\"0.2 in\"}]",
        "/rivals/0/airSpaces/0/thickness", "at-least")]
    [InlineData("/rivals/0/airSpaces", "[{\"width\":\"2 in\"}]",
        "/rivals/0/airSpaces/0/width", "unknown-member")]
    [InlineData("/rivals/0/price", "-1", "/rivals/0/price", "at-least")]
    [InlineData("/building", "{\"volume\":\"9000 ft3\"}", "/building/airChangesPerHour", "missing")]
    [InlineData("/building", "{\"otherElements\":[{\"name\":\"walls\"}]}",
        "/building/otherElements/0/area", "missing")]
    [InlineData("/building", "{\"slabEdge\":\"-10 ft\"}", "/building/slabEdge", "at-least")]
    [InlineData("/building", "{\"airChangesPerHour\":1}", "/building/volume", "missing")]
    [InlineData("/rivals/1", "{\"kind\":\"batt\",\"thickness\":\"12 in\"}",
        "/rivals/1/thickness", "at-most")]
    [InlineData("/fuel/efficiency", "1.2", "/fuel/efficiency", "at-most")]
    [InlineData("/fuel", "{\"kind\":\"electricity\",\"efficiency\":2}",
        "/fuel/efficiency", "at-most")]
    [InlineData("/fuel", "{\"kind\":\"heatPump\",\"efficiency\":0.9}",
        "/fuel/efficiency", "at-least")]
    [InlineData("/rivals/0/thickness", "\"2 in\"", "/rivals/0/thickness", "at-most")]
    [InlineData("/rivals/1", "{\"kind\":\"closedCellFoam\",\"placement\":\"overFraming\"}",
        "/rivals/1/placement", "not-buildable")]
    [InlineData("/rivals/0/airSpaces", "[{\"kind\":\"claddingRibs\"},"
        + "{\"side\":\"cladding\",\"thickness\":\"5.9 in\"}]",
        "/rivals/0/airSpaces/1/thickness", "at-most")]
    [InlineData("/rivals/0/airSpaces", "[{\"side\":\"cladding\",\"thickness\":\"1 in\"},"
        + "{\"side\":\"cladding\",\"thickness\":\"1 in\"}]",
        "/rivals/0/airSpaces/1/side", "either-or")]
    [InlineData("/fuel/balancePoint", "\"60 °F\"", "/fuel/balancePoint", "at-most")]
    [InlineData("/climate/winterDesign", "\"55 °F\"", "/room/heatedTo", "above-winter")]
    [InlineData("/working", "1", "/working", "type")]
    [InlineData("/competitor", "\"x\"", "/competitor", "unknown-member")]
    public async Task A_wrong_member_is_refused_where_it_stands(
        string set, string? value, string pointer, string rule)
    {
        var text = value == "1e999"
            ? Example(ShopRoof).With(set, 4242).ToJsonString().Replace("4242", "1e999")
            : Example(ShopRoof).With(set, value is null ? null : JsonNode.Parse(value))
                .ToJsonString();
        var answer = await host.PostAsync(text, "/v1/comparisons");
        Assert.InRange((int)answer.StatusCode, 400, 499);
        var problem = JsonDocument.Parse(
            await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
        var found = problem.RootElement.GetProperty("violations").EnumerateArray()
            .Select(v => (
                v.GetProperty("pointer").GetString(), v.GetProperty("rule").GetString()))
            .ToList();
        if (rule == "json") Assert.Contains(found, v => v.Item1 == pointer);
        else Assert.Contains((pointer, rule), found);
    }

    [Fact]
    public async Task Every_mistake_is_named_at_once()
    {
        var request = Example(ShopRoof)
            .With("/plane/slope", "steep").With("/rivals/0/kind", "magic")
            .With("/options/0/product", "none").With("/fuel/efficiency", 92);
        var answer = await host.PostAsync(request.ToJsonString(), "/v1/comparisons");
        var problem = JsonDocument.Parse(
            await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
        Assert.Equal(4, problem.RootElement.GetProperty("violations").GetArrayLength());
    }

    [Fact]
    public async Task A_batt_of_ours_too_thick_for_the_framing_is_refused_with_the_bound()
    {
        var request = Example(DwellingWall)
            .With("/plane/framing/depth", "1.5 in").With("/rivals", null);
        var answer = await host.PostAsync(request.ToJsonString(), "/v1/comparisons");
        var text = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        var wrong = Assert.Single(JsonDocument.Parse(text).RootElement
            .GetProperty("violations").EnumerateArray());
        Assert.Equal("/options/0/product", wrong.GetProperty("pointer").GetString());
        Assert.Equal("3.75", wrong.GetProperty("bound").GetString());
        Assert.Equal("in", wrong.GetProperty("unit").GetString());
    }

    [Theory]
    [InlineData("/plane/framing/depth", "30 in", "30 in", "19.685", "in")]
    [InlineData("/plane/framing/depth", "800 mm", "800 mm", "500", "mm")]
    [InlineData("/climate/summerDesign", "60 °C", "60 °C", "54.444", "°C")]
    [InlineData("/plane/area", "0.01 m2", "0.01 m2", "0.093", "m2")]
    public async Task A_bound_is_told_in_the_unit_that_was_written(
        string pointer, string written, string value, string bound, string unit)
    {
        var answer = await host.PostAsync(
            Example(ShopRoof).With(pointer, written).ToJsonString(), "/v1/comparisons");
        var text = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        var wrong = Assert.Single(JsonDocument.Parse(text).RootElement
            .GetProperty("violations").EnumerateArray());
        Assert.Equal(value, wrong.GetProperty("value").GetString());
        Assert.Equal(bound, wrong.GetProperty("bound").GetString());
        Assert.Equal(unit, wrong.GetProperty("unit").GetString());
    }

    // 3.5 in is 88.9 mm; a sheet is at most 25 mm or 0.984 in; a batt squeezed to 40 % of 8.75 in
    // fills 3.5 in (222.25 mm fill 88.9).
    [Theory]
    [InlineData("/rivals/0/airSpaces", "room", "4 in", "4 in", "3.5", "in")]
    [InlineData("/rivals/0/airSpaces", "room", "100 mm", "100 mm", "88.9", "mm")]
    [InlineData("/rivals/0/thickness", "", "1.2 in", "1.2 in", "0.984", "in")]
    [InlineData("/rivals/0/thickness", "", "30 mm", "30 mm", "25", "mm")]
    [InlineData("/room/heatedTo", "", "-30 °C", "-30 °C", "0.556", "°C")]
    [InlineData("/room/heatedTo", "", "35 °F", "35 °F", "40", "°F")]
    [InlineData("/room/heatedTo", "", "2 °C", "2 °C", "4.4", "°C")]
    [InlineData("/climate/summerDesign", "", "-30 °C", "-30 °C", "4.444", "°C")]
    [InlineData("/climate/summerDesign", "", "5 °C", "5 °C", "10", "°C")]
    [InlineData("/climate/summerDesign", "", "45 °F", "45 °F", "50", "°F")]
    [InlineData("/building/slabEdge", "", "-3 ft", "-36 in", "0", "in")]
    [InlineData("/climate/countyFips", "", "27137", "27137", null, null)]
    [InlineData("/fuel/balancePoint", "", "15 °C", "15 °C", "12.8", "°C")]
    [InlineData("/fuel/balancePoint", "", "60 °F", "60 °F", "55", "°F")]
    public async Task A_bound_that_follows_from_another_member_is_told_in_the_unit_written_too(
        string pointer, string side, string written, string value, string? bound, string? unit)
    {
        var request = Example(ShopRoof).With(pointer, side.Length == 0
            ? written
            : new JsonArray(new JsonObject
            {
                ["side"] = side,
                ["thickness"] = written,
                ["kind"] = "enclosed",
            }));
        if (pointer == "/climate/summerDesign")
            request = request.With("/climate/winterDesign", "50 °F");
        if (pointer == "/room/heatedTo")
            request = request.With("/fuel", null).With("/climate/winterDesign", "40 °F");
        var answer = await host.PostAsync(request.ToJsonString(), "/v1/comparisons");
        var text = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        var wrong = JsonDocument.Parse(text).RootElement.GetProperty("violations")
            .EnumerateArray().First();
        Assert.Equal(value, wrong.GetProperty("value").GetString());
        Assert.Equal(bound, wrong.TryGetProperty("bound", out var b) ? b.GetString() : null);
        Assert.Equal(unit, wrong.TryGetProperty("unit", out var u) ? u.GetString() : null);
        if (unit == "in") Assert.DoesNotContain("mm", wrong.GetProperty("message").GetString());
        if (unit == "°C") Assert.DoesNotContain("°F", wrong.GetProperty("message").GetString());
    }

    [Fact]
    public async Task Nothing_to_compare_asks_for_a_line()
    {
        var request = Example(ShopRoof).With("/options", null).With("/rivals", null);
        var answer = await host.PostAsync(request.ToJsonString(), "/v1/comparisons");
        var text = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        Assert.Contains("at least one option", text);
    }
}
