using System.Net.Http.Headers;
using Polly.CircuitBreaker;
using Polly.Timeout;

namespace PostFrame.OrdersApi.TakeOffs;

/// <summary>Asks a sizing service elsewhere; retries and gives up in good time.</summary>
internal sealed partial class SizingClient(HttpClient http, ILogger<SizingClient> log)
{
    public async Task<TakeOffAnswer> AskAsync(
        ReadOnlyMemory<byte> request, CancellationToken cancel)
    {
        try
        {
            using var body = new ReadOnlyMemoryContent(request);
            body.Headers.ContentType = new MediaTypeHeaderValue("application/json");
            using var answer = await http.PostAsync("/v1/sizings", body, cancel);
            return (int)answer.StatusCode >= 500
                ? TakeOffAnswer.Unavailable
                : new TakeOffAnswer(
                    (int)answer.StatusCode, await answer.Content.ReadAsByteArrayAsync(cancel));
        }
        catch (Exception failure) when (failure
            is HttpRequestException or TimeoutRejectedException or BrokenCircuitException)
        {
            LogAway(failure.Message);
            return TakeOffAnswer.Unavailable;
        }
    }

    [LoggerMessage(LogLevel.Warning, "Sizing cannot be reached: {Cause}")]
    private partial void LogAway(string cause);
}
