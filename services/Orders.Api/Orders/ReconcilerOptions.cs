using System.ComponentModel.DataAnnotations;

namespace PostFrame.OrdersApi.Orders;

/// <summary>Section <c>Reconciler</c>: how patient orders is with the workers.</summary>
internal sealed class ReconcilerOptions
{
    /// <summary>How long an order may wait before it is announced again; doubles each
    /// time.</summary>
    [Range(typeof(TimeSpan), "00:00:00.100", "1.00:00:00")]
    public TimeSpan Grace { get; set; } = TimeSpan.FromSeconds(30);

    /// <summary>The longest time between two announcements.</summary>
    [Range(typeof(TimeSpan), "00:00:00.100", "1.00:00:00")]
    public TimeSpan LongestGrace { get; set; } = TimeSpan.FromMinutes(10);

    /// <summary>Unanswered so often, an order is parked.</summary>
    [Range(1, 1000)]
    public int MostAnnouncements { get; set; } = 8;
}
