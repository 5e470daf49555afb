using System.Text;
using PostFrame.Problems;
using Xunit;

namespace PostFrame.ServicesTests.Sizing;

public sealed class StrictReading
{
    [Theory]
    [InlineData("", "", "json")]
    [InlineData("{", "", "json")]
    [InlineData("""{"a":NaN}""", "/a", "json")]
    [InlineData("""{"a":{"b":[1,-Infinity]}}""", "/a/b/0", "json")]
    [InlineData("""{"a":1,}""", "/a", "json")]
    [InlineData("""{"a":"\ud800"}""", "/a", "unicode")]
    [InlineData("""{"\ud800":1}""", "", "unicode")]
    public void A_body_that_is_no_JSON_is_refused_at_the_place_it_stops(
        string json, string pointer, string rule)
    {
        using var request = JsonRequest.Parse(Encoding.UTF8.GetBytes(json));

        var mistake = Assert.Single(request.Malformed!.Body(null).Violations!);
        Assert.Equal((pointer, rule), (mistake.Pointer, mistake.Rule));
    }

    [Fact]
    public void Two_thousand_levels_are_refused_before_they_are_built()
    {
        var json = string.Concat(Enumerable.Repeat("""{"a":""", 2000)) + "1";

        using var request = JsonRequest.Parse(Encoding.UTF8.GetBytes(json));

        Assert.Equal("depth", request.Malformed!.Body(null).Violations![0].Rule);
    }

    [Fact]
    public void Bytes_that_are_not_UTF8_are_refused()
    {
        using var request = JsonRequest.Parse(new byte[] { (byte)'"', 0xFF, (byte)'"' });

        Assert.Equal(400, request.Malformed!.Status);
    }

    [Theory]
    [InlineData("""{"size":"10 ft","size":"11 ft"}""", "/size", "duplicate-member")]
    [InlineData("""{"size":"10 ft","syze":"11 ft"}""", "/syze", "unknown-member")]
    [InlineData("""{"size":"10 ft","a/b~c":1}""", "/a~1b~0c", "unknown-member")]
    [InlineData("""{}""", "/size", "missing")]
    [InlineData("""{"size":null}""", "/size", "null")]
    [InlineData("""{"size":10}""", "/size", "unit-missing")]
    [InlineData("""{"size":1e999}""", "/size", "unit-missing")]
    [InlineData("""{"size":true}""", "/size", "type")]
    [InlineData("""{"size":{}}""", "/size", "type")]
    [InlineData("""[]""", "", "type")]
    public void Every_member_is_held_to_its_kind(string json, string pointer, string rule)
    {
        using var request = JsonRequest.Parse(Encoding.UTF8.GetBytes(json));
        request.Root.Length("size");
        request.Root.Close();

        var mistake = Assert.Single(request.Mistakes.Listed);
        Assert.Equal((pointer, rule), (mistake.Path, mistake.Rule));
    }

    [Fact]
    public void All_mistakes_come_at_once()
    {
        var json = """{"a":1,"b":"x","c":1e999,"d":"2026-13-01","e":["p",7,"q"],"g":"\u0000"}""";
        using var request = JsonRequest.Parse(Encoding.UTF8.GetBytes(json));
        var root = request.Root;
        root.Length("a");
        root.Slope("b");
        root.OptionalNumber("c", 0, 1);
        root.Date("d");
        root.OptionalTexts("e", 2);
        root.Object("f");
        root.Text("g");

        Assert.Equal(
            ["/a unit-missing", "/b slope-format", "/c finite", "/d date-format", "/e too-many",
                "/e/1 type", "/f missing", "/g control-character"],
            request.Mistakes.Listed.Select(mistake => $"{mistake.Path} {mistake.Rule}"));
    }

    [Fact]
    public void A_misspelt_member_is_told_its_likely_name()
    {
        using var request = JsonRequest.Parse("""{"eaveHieght":"10 ft"}"""u8.ToArray());
        request.Root.OptionalLength("eaveHeight");
        request.Root.Close();

        Assert.Equal("eaveHeight", request.Mistakes.Listed[0].Limit);
    }

    [Fact]
    public void Ten_thousand_mistakes_are_counted_and_a_hundred_listed()
    {
        var json = "{" + string.Join(',', Enumerable.Range(0, 10_000).Select(n => $"\"m{n}\":0"))
            + "}";
        using var request = JsonRequest.Parse(Encoding.UTF8.GetBytes(json));
        request.Root.Close();

        var body = ProblemAnswer.Invalid(request.Mistakes).Body(null);
        Assert.Equal((100, 9_900), (body.Violations!.Count, body.ViolationsLeftOut));
    }
}
