namespace PostFrame.Operations;

/// <summary>
/// Asks Orders for the orders that changed since, in the order they changed: the body of
/// <c>GET /v1/orders?changedAfter=…</c>.
/// </summary>
/// <param name="change">The last change known; 0 for all.</param>
/// <param name="cancel">Ends the asking.</param>
public delegate Task<byte[]> AskForOrders(long change, CancellationToken cancel);
