using System.Text.Json.Nodes;

namespace PostFrame.ServicesTests.Operations;

/// <summary>An independent reader of server-sent events (HTML Living Standard, 9.2.6).</summary>
internal sealed class EventReader : IAsyncDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);

    private readonly HttpResponseMessage _answer;
    private readonly StreamReader _lines;

    private EventReader(HttpResponseMessage answer, Stream body)
    {
        _answer = answer;
        _lines = new StreamReader(body);
    }

    public string LastEventId { get; private set; } = "";

    public string? MediaType => _answer.Content.Headers.ContentType?.MediaType;

    public static async Task<EventReader> OpenAsync(
        OperationsHost host, string query = "", string? lastEventId = null)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, "/v1/pipeline/events" + query);
        if (lastEventId is not null)
        {
            request.Headers.Add("Last-Event-ID", lastEventId);
        }

        var answer = await host.Http.SendAsync(request, HttpCompletionOption.ResponseHeadersRead);
        answer.EnsureSuccessStatusCode();
        return new EventReader(answer, await answer.Content.ReadAsStreamAsync());
    }

    /// <summary>The data of the next event of this kind; others are passed over.</summary>
    public async Task<JsonNode> NextAsync(string kind)
    {
        while (true)
        {
            var (name, data) = await EventAsync();
            if (name == kind)
            {
                return JsonNode.Parse(data)!;
            }
        }
    }

    /// <summary>Reads on until an order is as wished.</summary>
    public async Task UntilAsync(Func<JsonNode, bool> isWished)
    {
        while (!(await NextAsync("orders"))["orders"]!.AsArray().Any(order => isWished(order!)))
        {
        }
    }

    public async ValueTask DisposeAsync()
    {
        _lines.Dispose();
        _answer.Dispose();
        await Task.CompletedTask;
    }

    private async Task<(string Name, string Data)> EventAsync()
    {
        using var late = new CancellationTokenSource(Patience);
        var (name, data) = ("message", "");
        while (await _lines.ReadLineAsync(late.Token) is { } line)
        {
            if (line.Length == 0 && data.Length > 0)
            {
                return (name, data);
            }

            var colon = line.IndexOf(':', StringComparison.Ordinal);
            var value = colon < 0 ? "" : line[(colon + 1)..].TrimStart(' ');
            switch (colon < 0 ? line : line[..colon])
            {
                case "event":
                    name = value;
                    break;
                case "data":
                    data += value;
                    break;
                case "id":
                    LastEventId = value;
                    break;
            }
        }

        throw new EndOfStreamException("The stream ended.");
    }
}
