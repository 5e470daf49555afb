using System.Net.Http.Json;
using System.Text;
using System.Text.Json.Nodes;
using PostFrame.ContractsTests.Tidy;

namespace PostFrame.ContractsTests.Served;

/// <summary>What the product answers is what its documents promise, member by member.</summary>
public sealed class AnswerTests(RunningHost host) : IClassFixture<RunningHost>
{
    private static readonly string Examples =
        Path.Combine(SourceTree.Root, "contracts", "examples");

    public static TheoryData<string> Buildings => new(
        Directory.GetFiles(Examples, "*.sizing.json").Select(path => Path.GetFileName(path))
            .Order());

    [Theory]
    [MemberData(nameof(Buildings))]
    public async Task The_take_off_of_an_example_is_as_the_document_says(string example)
    {
        var request = JsonNode.Parse(File.ReadAllText(Path.Combine(Examples, example)))!;

        var (status, answer) = await PostAsync("/v1/sizings", request);

        var sizing = ServedDocument.Of("sizing");
        Assert.Equal(200, status);
        Assert.Empty(sizing.RequestObjections("/v1/sizings", "post", request));
        Assert.Empty(sizing.AnswerObjections("/v1/sizings", "post", 200, answer));
    }

    [Fact]
    public async Task A_refused_building_is_answered_as_the_document_says()
    {
        var (status, answer) = await PostAsync(
            "/v1/sizings", new JsonObject { ["building"] = "barn", ["colour"] = 3 });

        Assert.Equal(422, status);
        Assert.NotEmpty(answer["violations"]!.AsArray());
        Assert.Empty(ServedDocument.Of("sizing").AnswerObjections(
            "/v1/sizings", "post", 422, answer));
    }

    [Fact]
    public async Task An_order_is_answered_as_the_documents_say_on_its_way_to_its_labels()
    {
        var order = JsonNode.Parse(
            File.ReadAllText(Path.Combine(Examples, "w1-plain-gable.order.json")))!;
        var number = (string)order["orderNumber"]!;

        var (status, accepted) = await PostAsync("/v1/orders", order, key: number);
        var orders = ServedDocument.Of("orders");
        Assert.Equal(202, status);
        Assert.Empty(orders.RequestObjections("/v1/orders", "post", order));
        Assert.Empty(orders.AnswerObjections("/v1/orders", "post", 202, accepted));

        await LabelledAsync(number);
        await AnswersAsync("orders", "/v1/orders", "/v1/orders");
        await AnswersAsync("orders", "/v1/orders/{orderNumber}", "/v1/orders/" + number);
        await AnswersAsync("cutting", "/v1/cutting/queue", "/v1/cutting/queue");
        await AnswersAsync(
            "cutting", "/v1/cutting/plans/{orderNumber}", "/v1/cutting/plans/" + number);
        await AnswersAsync("cutting", "/v1/cutting/stock", "/v1/cutting/stock");
        await AnswersAsync("operations", "/v1/pipeline", "/v1/pipeline");
        await AnswersAsync("sizing", "/v1/products", "/v1/products");
    }

    private async Task AnswersAsync(string document, string path, string address)
    {
        using var client = host.CreateClient();
        var answer = await client.GetFromJsonAsync<JsonNode>(
            address, TestContext.Current.CancellationToken);

        Assert.Empty(ServedDocument.Of(document).AnswerObjections(path, "get", 200, answer));
    }

    /// <summary>Waits by asking; the host says on no channel of its own that it is done.</summary>
    private async Task LabelledAsync(string number)
    {
        using var client = host.CreateClient();
        using var late = new CancellationTokenSource(TimeSpan.FromSeconds(60));
        using var tick = new PeriodicTimer(TimeSpan.FromMilliseconds(100));
        while (await tick.WaitForNextTickAsync(late.Token))
        {
            var order = await client.GetFromJsonAsync<JsonNode>("/v1/orders/" + number, late.Token);
            if ((string)order!["state"]! == "labelled")
            {
                return;
            }
        }
    }

    private async Task<(int Status, JsonNode Body)> PostAsync(
        string address, JsonNode body, string? key = null)
    {
        using var client = host.CreateClient();
        using var request = new HttpRequestMessage(HttpMethod.Post, address)
        {
            Content = new StringContent(body.ToJsonString(), Encoding.UTF8, "application/json"),
        };
        if (key is not null)
        {
            request.Headers.Add("Idempotency-Key", key);
        }

        using var answer = await client.SendAsync(request, TestContext.Current.CancellationToken);
        return ((int)answer.StatusCode, JsonNode.Parse(await answer.Content.ReadAsStringAsync(
            TestContext.Current.CancellationToken))!);
    }
}
