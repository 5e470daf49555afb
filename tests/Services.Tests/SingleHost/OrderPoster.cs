using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Text.Json.Nodes;
using Xunit;

namespace PostFrame.ServicesTests.SingleHost;

/// <summary>A caller as it should be: it repeats a post, under the same key, until it is
/// answered.</summary>
internal sealed class OrderPoster : IDisposable
{
    private readonly HttpClient _http = new() { Timeout = TimeSpan.FromSeconds(20) };

    /// <summary>Where the service is just now; a restart gives it another port.</summary>
    public required Func<Uri> Address { get; init; }

    /// <summary>Posts until it gets an answer and returns it.</summary>
    public async Task<string> PostAsync(byte[] order, string key)
    {
        using var tick = new PeriodicTimer(TimeSpan.FromMilliseconds(20));
        for (var n = 0; n < 6000; n++)
        {
            if (await TryPostAsync(order, key) is { } body)
            {
                return body;
            }

            await tick.WaitForNextTickAsync(TestContext.Current.CancellationToken);
        }

        throw new TimeoutException($"The order under {key} was never answered.");
    }

    /// <summary>The body of a 202, or null when no answer came.</summary>
    public async Task<string?> TryPostAsync(byte[] order, string key)
    {
        using var request = new HttpRequestMessage(
            HttpMethod.Post, new Uri(Address(), "/v1/orders"));
        request.Content = new ByteArrayContent(order);
        request.Content.Headers.ContentType = new MediaTypeHeaderValue("application/json");
        request.Headers.Add("Idempotency-Key", key);
        try
        {
            using var answer = await _http.SendAsync(
                request, TestContext.Current.CancellationToken);
            var body = await answer.Content.ReadAsStringAsync(
                TestContext.Current.CancellationToken);
            Assert.True((int)answer.StatusCode == 202, $"{answer.StatusCode}: {body}");
            return body;
        }
        catch (Exception failure) when (failure is HttpRequestException or IOException
            || (failure is TaskCanceledException
                && !TestContext.Current.CancellationToken.IsCancellationRequested))
        {
            return null;
        }
    }

    /// <summary>Waits until so many orders are in a state.</summary>
    public async Task UntilAsync(string state, int count, TimeSpan patience)
    {
        using var tick = new PeriodicTimer(TimeSpan.FromMilliseconds(100));
        var end = TimeProvider.System.GetTimestamp();
        JsonNode? last = null;
        while (TimeProvider.System.GetElapsedTime(end) < patience)
        {
            last = await _http.GetFromJsonAsync<JsonNode>(
                new Uri(Address(), "/v1/orders?limit=500"), TestContext.Current.CancellationToken);
            if (last!["orders"]!.AsArray().Count(
                order => order!["state"]!.GetValue<string>() == state) >= count)
            {
                return;
            }

            await tick.WaitForNextTickAsync(TestContext.Current.CancellationToken);
        }

        throw new TimeoutException($"Not {count} orders were {state}: {last}");
    }

    public void Dispose() => _http.Dispose();
}
