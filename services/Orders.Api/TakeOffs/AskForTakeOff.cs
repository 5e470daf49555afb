namespace PostFrame.OrdersApi.TakeOffs;

/// <summary>
/// Asks sizing for a take-off: over HTTP when the services run apart, by a call when they share a
/// process. The request is that of <c>POST /v1/sizings</c>.
/// </summary>
public delegate Task<TakeOffAnswer> AskForTakeOff(
    ReadOnlyMemory<byte> request, CancellationToken cancel);

/// <param name="Status">200 with the take-off, 422 with problem+json, or 503.</param>
public sealed record TakeOffAnswer(int Status, ReadOnlyMemory<byte> Body)
{
    /// <summary>Sizing cannot be reached just now.</summary>
    public static readonly TakeOffAnswer Unavailable = new(503, ReadOnlyMemory<byte>.Empty);
}
