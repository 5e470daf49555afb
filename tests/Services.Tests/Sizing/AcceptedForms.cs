using System.Net;
using System.Text;
using System.Text.Json.Nodes;
using Xunit;

namespace PostFrame.ServicesTests.Sizing;

/// <summary>Which form an Accept header gets. Source: RFC 9110, 12.5.1 and 12.4.2.</summary>
public sealed class AcceptedForms(SizingHost host) : IClassFixture<SizingHost>
{
    private const string Json = "application/json";
    private const string Svg = "image/svg+xml";
    private const string Pdf = "application/pdf";

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData(null, Json, Svg)]
    [InlineData("", Json, Svg)]
    [InlineData(" , ", Json, Svg)]
    [InlineData("*/*", Json, Svg)]
    [InlineData("image/svg+xml", Svg, Svg)]
    [InlineData("APPLICATION/PDF", Pdf, Pdf)]
    [InlineData("image/*", Svg, Svg)]
    [InlineData("application/*", Json, Pdf)]
    [InlineData("text/html, application/json;q=0.5, */*;q=0.1", Json, Svg)]
    [InlineData("application/json;q=0.2, application/pdf", Pdf, Pdf)]
    [InlineData("application/pdf;q=0.5, image/svg+xml;q=0.501", Svg, Svg)]
    [InlineData("image/*;q=0.5, application/pdf;q=0.6", Pdf, Pdf)]
    [InlineData("image/svg+xml;q=0, */*;q=0.1", Json, Pdf)]
    [InlineData("*/*, application/json;q=0, image/svg+xml;q=0.0", Pdf, Pdf)]
    [InlineData("application/pdf;q=0.001, text/html", Pdf, Pdf)]
    [InlineData("text/html, image/gif, *; q=.2, */*; q=.2", Json, Svg)]
    [InlineData("application/pdf;page=2;q=0.1, application/pdf, image/*;q=0.5", Pdf, Pdf)]
    public async Task Come_as_they_are_liked_best(string? accept, string takeOff, string drawing)
    {
        var sizing = await Asked("/v1/sizings", accept);
        var drawn = await Asked("/v1/sizings/drawing", accept);

        Assert.Equal(takeOff, sizing.Content.Headers.ContentType!.ToString());
        Assert.Equal(drawing, drawn.Content.Headers.ContentType!.ToString());
        Assert.Equal(drawing == Pdf ? "%PDF" : "<svg", await Start(drawn));
    }

    [Theory]
    [InlineData("text/html")]
    [InlineData("image/png, text/*")]
    [InlineData("application/json;q=0, image/*;q=0, application/pdf;q=0.000")]
    [InlineData("*/*;q=0")]
    [InlineData("not a media type")]
    [InlineData("application/problem+json")]
    public async Task Are_named_where_none_is_liked(string accept)
    {
        await Refused("/v1/sizings", accept, $"{Json}, {Svg}, {Pdf}");
        await Refused("/v1/sizings/drawing", accept, $"{Svg}, {Pdf}");
    }

    [Fact]
    public async Task Include_no_take_off_where_a_drawing_is_asked() =>
        await Refused("/v1/sizings/drawing", Json, $"{Svg}, {Pdf}");

    [Fact]
    public async Task Do_not_turn_a_refusal_into_a_drawing()
    {
        var answer = await host.PostAsync("{}", "/v1/sizings/drawing", Pdf);

        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Equal(
            "application/problem+json", answer.Content.Headers.ContentType!.MediaType);
    }

    private async Task Refused(string address, string accept, string forms)
    {
        var answer = await Asked(address, accept);

        Assert.Equal(HttpStatusCode.NotAcceptable, answer.StatusCode);
        Assert.Equal(
            "application/problem+json", answer.Content.Headers.ContentType!.MediaType);
        var problem = JsonNode.Parse(await answer.Content.ReadAsStringAsync(Stop))!;
        Assert.Equal("/problems/not-acceptable", problem["type"]!.GetValue<string>());
        Assert.Contains(forms, problem["detail"]!.GetValue<string>());
    }

    private Task<HttpResponseMessage> Asked(string address, string? accept) =>
        host.PostAsync(TestFiles.Example("w1-plain-gable"), address, accept);

    private static async Task<string> Start(HttpResponseMessage answer) => Encoding.UTF8.GetString(
        (await answer.Content.ReadAsByteArrayAsync(Stop)).AsSpan(0, 4));
}
