using System.Text.Json;
using System.Text.Json.Nodes;
using PostFrame.ServicesTests.Sizing;
using Xunit;
using static PostFrame.ServicesTests.Comparisons.ComparisonRequests;

namespace PostFrame.ServicesTests.Comparisons;

/// <summary>
/// Whatever is sent is answered or refused with its place and rule, in a bounded time.
/// </summary>
public sealed class ComparisonAttack(SizingHost host) : IClassFixture<SizingHost>
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(20);

    /// <summary>A member of the good example, and the JSON put in its place.</summary>
    public static TheoryData<string, string> Members => new()
    {
        { "/rivals/0/claimedR", "NaN" }, { "/rivals/0/claimedR", "-Infinity" },
        { "/rivals/0/claimedR", "1e308" }, { "/rivals/0/claimedR", "1e-320" },
        { "/rivals/0/claimedR", "1e999" }, { "/rivals/0/claimedR", "-0" },
        { "/rivals/0/claimedR", "01" }, { "/rivals/0/claimedR", "[10]" },
        { "/rivals/0/claimedRadiantCut", "101" }, { "/rivals/0/price", "-1e300" },
        { "/rivals/0/thickness", "\"0.000000001 in\"" }, { "/rivals/0/thickness", "\"-1 in\"" },
        { "/rivals/0/name", "\"\\ud800\"" }, { "/rivals/0/name", "\"a\\u0000b\"" },
        { "/rivals/0/airSpaces", "{}" }, { "/rivals/0/airSpaces", "[null]" },
        { "/rivals/0/airSpaces", "[[],[],[]]" }, { "/rivals/0", "\"foil\"" },
        { "/rivals", "{\"0\":{}}" }, { "/options", "null" }, { "/options", "[[{}]]" },
        { "/options/0/product", "\"\"" }, { "/options/0/perm", "1e400" },
        { "/plane/slope", "\"-4:12\"" }, { "/plane/slope", "\"4:0\"" },
        { "/plane/slope", "\"1e9:1\"" }, { "/plane/slope", "\"90 deg\"" },
        { "/plane/area", "\"1e308 ft2\"" }, { "/plane/area", "\"Infinity ft2\"" },
        { "/plane/area", "\"99999999999999999999999999999 ft2\"" },
        { "/plane/area", "\"-5 m2\"" }, { "/plane/framing/spacing", "\"0 in\"" },
        { "/plane/framing", "[]" }, { "/plane/framing/width", "\"25 in\"" },
        { "/climate/sun", "1e308" }, { "/climate/postalCode", "\"55802'; drop\"" },
        { "/climate/winterDesign", "\"-9999999 °F\"" }, { "/climate", "\"Duluth\"" },
        { "/climate/heatingDegreeDays", "\"99999 °F·d\"" },
        { "/room/heatedTo", "\"285 K\"" }, { "/room/heatedTo", "\"٥٥ °F\"" },
        { "/room/moistureExcess", "1e308" }, { "/room/burner", "{\"fuel\":\"coal\"}" },
        { "/fuel/efficiency", "0" }, { "/fuel/pricePerUnit", "1e308" },
        { "/code", "[1,2]" }, { "/building/volume", "\"0 ft3\"" },
        { "/building/otherElements", "[{\"name\":\"a\",\"area\":\"1 ft2\",\"assemblyR\":1e-300}]" },
        { "/units", "\"french\"" }, { "/basis", "[\"ashrae\"]" }, { "/working", "\"yes\"" },
        { "/__proto__", "{\"a\":1}" },
    };

    public static TheoryData<string, string> Bodies => new()
    {
        { "nothing", "" }, { "null", "null" }, { "a number", "1e308" }, { "cut off", "{" },
        { "a mark before it", "\uFEFF{}" }, { "deep", new string('[', 60_000) },
        { "two documents", "{}{}" }, { "a comment", "/* a */{}" }, { "a trailing comma", "{,}" },
        { "members twice", """{"plane":{"kind":"roof","kind":"wall"},"plane":{}}""" },
        { "ten thousand quotes", "{\"rivals\":["
            + string.Join(',', Enumerable.Repeat("{\"kind\":\"batt\"}", 10_000)) + "]}" },
        { "unknown members", "{" + string.Join(
            ',', Enumerable.Range(0, 5_000).Select(i => $"\"x{i}\":{i}")) + "}" },
        { "beyond the size", new string(' ', 3_000_000) + "{}" },
    };

    [Theory]
    [MemberData(nameof(Members))]
    public async Task A_hostile_member_is_refused_at_its_place(string pointer, string json)
    {
        var body = Example(ShopRoof).With(pointer, "@here@").ToJsonString()
            .Replace("\"@here@\"", json);
        var (status, problem) = await Answer(body);
        Assert.InRange(status, 400, 422);
        Assert.All(problem.GetProperty("violations").EnumerateArray(), violation =>
        {
            // A member of a member, or the member that makes it impossible.
            Assert.StartsWith(
                pointer.Split('/')[1], violation.GetProperty("pointer").GetString()![1..]);
            Assert.NotEmpty(violation.GetProperty("message").GetString()!);
        });
        Assert.NotEqual(0, problem.GetProperty("violations").GetArrayLength());
    }

    [Theory]
    [MemberData(nameof(Bodies))]
    public async Task A_hostile_body_is_refused(string what, string body)
    {
        var (status, problem) = await Answer(body);
        Assert.True(status is >= 400 and < 500, what);
        Assert.NotEmpty(problem.GetProperty("title").GetString()!);
    }

    // The heaviest that is allowed: 24 lines of two slightly ventilated spaces, all opened.
    [Fact]
    public async Task The_heaviest_request_is_answered()
    {
        var spaces = JsonNode.Parse("""
            [{"side": "room", "thickness": "1 in", "kind": "slightlyVentilated"},
             {"side": "cladding", "thickness": "3.5 in", "kind": "slightlyVentilated"}]
            """)!;
        var request = Example(ShopRoof).With("/options", new JsonArray([
            .. Enumerable.Range(0, 12).Select(JsonNode (_) => new JsonObject
            {
                ["product"] = "bubble-foil",
                ["airSpaces"] = spaces.DeepClone(),
            }),
        ]));
        var quote = request["rivals"]![0]!;
        request.With("/rivals", new JsonArray(
            [.. Enumerable.Range(0, 12).Select(_ => quote.DeepClone())]));
        var (status, answer) = await Answer(request.ToJsonString());
        Assert.Equal(200, status);
        Assert.Equal(24, answer.GetProperty("lines").GetArrayLength());
    }

    private async Task<(int Status, JsonElement Body)> Answer(string body)
    {
        using var patience = new CancellationTokenSource(Patience);
        var answer = await host.PostAsync(body, "/v1/comparisons").WaitAsync(patience.Token);
        var text = await answer.Content.ReadAsStringAsync(patience.Token);
        return ((int)answer.StatusCode, JsonDocument.Parse(text).RootElement);
    }
}
