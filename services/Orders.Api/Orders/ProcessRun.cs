namespace PostFrame.OrdersApi.Orders;

/// <summary>
/// Tells this run of the process from the ones before it, whatever the clock says: what an earlier
/// run announced may have died with it.
/// </summary>
internal sealed class ProcessRun
{
    public string Id { get; } = Guid.NewGuid().ToString("N");
}
