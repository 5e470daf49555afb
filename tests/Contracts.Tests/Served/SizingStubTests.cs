using System.Net;
using System.Text;
using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.Logging;
using PostFrame.ContractsTests.Tidy;
using PostFrame.OrdersApi;
using PostFrame.Problems;
using PostFrame.SizingApi.Sizings;
using WireMock.Server;
using Answer = WireMock.ResponseBuilders.Response;
using Asked = WireMock.RequestBuilders.Request;

namespace PostFrame.ContractsTests.Served;

/// <summary>
/// Orders alone against a stand-in for sizing, over HTTP. What the stand-in says is held against
/// the same document as what the real service says, so it cannot drift from it.
/// </summary>
public sealed class SizingStubTests : IAsyncLifetime
{
    private static readonly JsonNode Order = JsonNode.Parse(File.ReadAllText(Path.Combine(
        SourceTree.Root, "contracts", "examples", "w1-plain-gable.order.json")))!;

    private static readonly string TakeOff = Encoding.UTF8.GetString(Sizings.Answer(
        File.ReadAllBytes(Path.Combine(
            SourceTree.Root, "contracts", "examples", "w1-plain-gable.sizing.json"))).Body);

    private const string Refusal =
        """
        {
          "type": "/problems/invalid-request", "title": "Some of the request cannot be used",
          "status": 422, "detail": "1 thing is wrong; it is in violations.",
          "violations": [
            { "pointer": "/building/width", "value": "3 in", "rule": "width-range",
              "bound": "60", "unit": "in", "message": "A building is at least 60 in wide." }
          ],
          "traceId": "0"
        }
        """;

    private readonly WireMockServer _sizing = WireMockServer.Start();
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("orders");
    private WebApplication _orders = null!;

    public async ValueTask InitializeAsync()
    {
        var builder = WebApplication.CreateBuilder();
        builder.WebHost.UseTestServer();
        builder.Logging.ClearProviders();
        builder.Configuration.AddInMemoryCollection(new Dictionary<string, string?>
        {
            ["Data:Folder"] = _folder.FullName,
            ["Sizing:Address"] = _sizing.Url,
        });
        builder.AddOrders();
        _orders = builder.Build();
        _orders.UseProblems();
        _orders.MapOrders();
        await _orders.StartAsync(TestContext.Current.CancellationToken);
    }

    public async ValueTask DisposeAsync()
    {
        await _orders.StopAsync();
        await _orders.DisposeAsync();
        _sizing.Dispose();
        _folder.Delete(recursive: true);
    }

    [Fact]
    public async Task A_take_off_from_elsewhere_is_frozen_with_the_order()
    {
        Says(200, TakeOff);

        var (status, accepted) = await SubmitAsync();

        Assert.Equal((HttpStatusCode.Accepted, 46), (status, (int)accepted["pieces"]!));
    }

    [Fact]
    public async Task What_orders_asks_is_a_request_as_the_document_has_it()
    {
        Says(200, TakeOff);

        await SubmitAsync();
        var asked = JsonNode.Parse(_sizing.LogEntries[0].RequestMessage!.Body!)!;

        Assert.Empty(ServedDocument.Of("sizing").RequestObjections("/v1/sizings", "post", asked));
        Assert.True(JsonNode.DeepEquals(Order["building"], asked["building"]));
        Assert.True(JsonNode.DeepEquals(Order["insulation"], asked["insulation"]));
    }

    [Fact]
    public async Task A_refusal_from_elsewhere_comes_back_with_the_same_pointers()
    {
        Says(422, Refusal, ProblemAnswer.MediaType);

        var (status, problem) = await SubmitAsync();

        Assert.Equal(HttpStatusCode.UnprocessableEntity, status);
        Assert.Equal("/building/width", (string)problem["violations"]![0]!["pointer"]!);
    }

    [Fact]
    public async Task A_failure_that_passes_is_asked_again_without_the_caller_noticing()
    {
        _sizing.Given(Asked.Create().WithPath("/v1/sizings")).InScenario("passing")
            .WillSetStateTo("well").RespondWith(Answer.Create().WithStatusCode(503));
        _sizing.Given(Asked.Create().WithPath("/v1/sizings")).InScenario("passing")
            .WhenStateIs("well").RespondWith(Answer.Create().WithStatusCode(200)
                .WithHeader("Content-Type", "application/json").WithBody(TakeOff));

        var (status, _) = await SubmitAsync();

        Assert.Equal(HttpStatusCode.Accepted, status);
        Assert.True(_sizing.LogEntries.Count >= 2, "it was asked once and answered 503");
    }

    [Fact]
    public void What_the_stand_in_says_is_what_the_document_promises()
    {
        var document = ServedDocument.Of("sizing");

        Assert.Empty(document.AnswerObjections(
            "/v1/sizings", "post", 200, JsonNode.Parse(TakeOff)));
        Assert.Empty(document.AnswerObjections(
            "/v1/sizings", "post", 422, JsonNode.Parse(Refusal)));
    }

    private void Says(int status, string body, string mediaType = "application/json") => _sizing
        .Given(Asked.Create().WithPath("/v1/sizings").UsingPost())
        .RespondWith(Answer.Create().WithStatusCode(status)
            .WithHeader("Content-Type", mediaType).WithBody(body));

    private async Task<(HttpStatusCode, JsonNode)> SubmitAsync()
    {
        using var client = _orders.GetTestClient();
        using var request = new HttpRequestMessage(HttpMethod.Post, "/v1/orders")
        {
            Content = new StringContent(
                Order.ToJsonString(), Encoding.UTF8, "application/json"),
        };
        request.Headers.Add("Idempotency-Key", "stub-1");
        using var answer = await client.SendAsync(request, TestContext.Current.CancellationToken);
        return (answer.StatusCode, JsonNode.Parse(await answer.Content.ReadAsStringAsync(
            TestContext.Current.CancellationToken))!);
    }
}
