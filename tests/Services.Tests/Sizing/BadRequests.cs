using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using PostFrame.Problems;
using Xunit;

namespace PostFrame.ServicesTests.Sizing;

/// <summary>
/// Every request of the lists is refused with problem+json (RFC 9457) that names the place by JSON
/// Pointer (RFC 6901) and the rule; none gets a 5xx or an empty body.
/// </summary>
public sealed class BadRequests(SizingHost host) : IClassFixture<SizingHost>
{
    public static TheoryData<string, string, string, string, int> Form =>
        BadRequestList.From("bad-form.json");

    public static TheoryData<string, string, string, string, int> Buildings =>
        BadRequestList.From("bad-buildings.json");

    [Theory]
    [MemberData(nameof(Form))]
    public async Task Of_wrong_form_are_refused_at_the_place(
        string name, string body, string pointer, string rule, int status) =>
        await IsRefused(name, body, pointer, rule, status);

    [Theory]
    [MemberData(nameof(Buildings))]
    public async Task For_impossible_buildings_are_refused_at_the_place(
        string name, string body, string pointer, string rule, int status) =>
        await IsRefused(name, body, pointer, rule, status);

    [Fact]
    public async Task Of_two_thousand_levels_are_refused_by_depth() => await IsRefused(
        "deep", string.Concat(Enumerable.Repeat("""{"building":""", 2000)) + "1",
        string.Concat(Enumerable.Repeat("/building", 32)), "depth", 422);

    [Fact]
    public async Task Of_ten_thousand_members_name_a_hundred_and_count_the_rest()
    {
        var members = Enumerable.Range(0, 10_000).Select(n => $"\"m{n}\":0");
        var problem = await Problem(await host.PostAsync($"{{{string.Join(',', members)}}}"));

        Assert.Equal(100, problem.Violations!.Count);
        Assert.True(problem.ViolationsLeftOut >= 9_900);
    }

    [Fact]
    public async Task Of_ten_megabytes_are_refused_by_size()
    {
        var answer = await host.PostAsync(new string(' ', 10_000_000));

        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, answer.StatusCode);
        Assert.Equal("/problems/body-too-large", (await Problem(answer)).Type);
    }

    [Fact]
    public async Task That_are_not_UTF8_are_refused_as_no_JSON()
    {
        using var client = host.CreateClient();
        using var content = new ByteArrayContent([(byte)'"', 0xC3, 0x28, (byte)'"']);
        content.Headers.ContentType = new("application/json");

        var answer = await client.PostAsync(
            "/v1/sizings", content, TestContext.Current.CancellationToken);

        Assert.Equal("/problems/malformed-json", (await Problem(answer)).Type);
    }

    [Theory]
    [InlineData("text/plain")]
    [InlineData("application/xml")]
    [InlineData("application/json; charset=utf-16")]
    [InlineData("application/x-www-form-urlencoded")]
    public async Task In_another_media_type_are_refused_as_that(string mediaType)
    {
        var answer = await host.PostAsync("{}", mediaType: mediaType);

        Assert.Equal(HttpStatusCode.UnsupportedMediaType, answer.StatusCode);
        Assert.Equal("/problems/unsupported-media-type", (await Problem(answer)).Type);
    }

    [Theory]
    [InlineData("/v1/sizings", "text/csv")]
    [InlineData("/v1/sizings", "application/json;q=0")]
    [InlineData("/v1/sizings/drawing", "application/json")]
    [InlineData("/v1/sizings/drawing", "image/png, image/webp")]
    [InlineData("/v1/sizings", "not a media type")]
    public async Task For_a_form_there_is_not_are_refused_as_that(string address, string accept)
    {
        var answer = await host.PostAsync("{}", address, accept);

        Assert.Equal(HttpStatusCode.NotAcceptable, answer.StatusCode);
        Assert.Equal("/problems/not-acceptable", (await Problem(answer)).Type);
    }

    [Theory]
    [InlineData("GET", "/v1/sizings", 405, "/problems/method-not-allowed")]
    [InlineData("DELETE", "/v1/products", 405, "/problems/method-not-allowed")]
    [InlineData("PUT", "/v1/sizings/drawing", 405, "/problems/method-not-allowed")]
    [InlineData("GET", "/v1/nothing", 404, "/problems/not-found")]
    [InlineData("GET", "/desk/..%2f..%2fetc%2fpasswd", 404, "/problems/not-found")]
    [InlineData("GET", "/desk/nothing.js", 404, "/problems/not-found")]
    [InlineData("GET", "/problems/nothing", 404, "/problems/not-found")]
    public async Task To_a_wrong_address_or_by_a_wrong_method_are_refused_as_that(
        string method, string address, int status, string type)
    {
        using var client = host.CreateClient();
        using var request = new HttpRequestMessage(new HttpMethod(method), address);

        var answer = await client.SendAsync(request, TestContext.Current.CancellationToken);

        Assert.Equal(status, (int)answer.StatusCode);
        Assert.Equal(type, (await Problem(answer)).Type);
    }

    [Fact]
    public async Task By_a_wrong_method_are_told_the_right_one()
    {
        using var client = host.CreateClient();

        var answer = await client.GetAsync(
            "/v1/sizings", TestContext.Current.CancellationToken);

        Assert.Equal(["POST"], answer.Content.Headers.Allow);
    }

    [Fact]
    public async Task Lead_by_their_type_to_a_page_that_explains_them()
    {
        using var client = host.CreateClient();
        foreach (var kind in ProblemKind.All)
        {
            var page = await client.GetStringAsync(
                kind.Type, TestContext.Current.CancellationToken);
            Assert.Contains(kind.Type, page);
        }
    }

    private async Task IsRefused(
        string name, string body, string pointer, string rule, int status)
    {
        var answer = await host.PostAsync(body);
        var problem = await Problem(answer);

        Assert.True(status == (int)answer.StatusCode, $"{name}: {(int)answer.StatusCode}");
        Assert.Contains(problem.Violations!, v => v.Pointer == pointer && v.Rule == rule);
        Assert.All(problem.Violations!, v => Assert.NotEmpty(v.Message));
        Assert.All(
            problem.Violations!.Where(v => v.Pointer.Length > 0
                && v.Rule is not ("missing" or "unicode" or "depth") && name != "empty length"),
            v => Assert.True(!string.IsNullOrEmpty(v.Value), $"{name}: {v.Pointer} {v.Rule}"));
    }

    private static async Task<ProblemBody> Problem(HttpResponseMessage answer)
    {
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType?.MediaType);
        var text = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        Assert.DoesNotContain("Exception", text);
        Assert.DoesNotContain("   at ", text);
        var problem = JsonSerializer.Deserialize<ProblemBody>(text, JsonSerializerOptions.Web)!;
        Assert.Equal((int)answer.StatusCode, problem.Status);
        Assert.Contains(problem.Type, ProblemKind.All.Select(kind => kind.Type));
        Assert.NotEmpty(problem.TraceId!);
        return problem;
    }
}
