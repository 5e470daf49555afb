using PostFrame.Messaging;

namespace PostFrame.OrdersApi.Orders;

/// <summary>
/// Moves orders along. What is said of an older revision changes nothing, and no message, however
/// late or repeated, moves an order back. Each answers whether anything changed.
/// </summary>
internal static class ProgressStore
{
    private const string Changed =
        """
        change_no = (SELECT max(change_no) + 1 FROM orders), changed_at = @now
        """;

    private const string UpdatePlanned =
        $"""
        UPDATE orders SET
          state = CASE WHEN labelled_at IS NULL THEN 'planned' ELSE 'labelled' END,
          planned_at = coalesce(planned_at, @at), roll_count = @rollCount,
          parked_at = NULL, park_reasons = NULL,
          announced_at = @now, announcements = 1, {Changed}
        WHERE order_number = @orderNumber AND revision = @revision
          AND (planned_at IS NULL OR state = 'parked' OR roll_count IS NOT @rollCount)
        """;

    public static bool Planned(
        StoreTransaction transaction, string orderNumber, int revision, DateTimeOffset at,
        int rollCount) =>
        transaction.Execute(UpdatePlanned, new
        {
            orderNumber,
            revision,
            rollCount,
            at = at.ToUnixTimeMilliseconds(),
            now = transaction.NowUnixMs,
        }) == 1;

    private const string UpdateLabelled =
        $"""
        UPDATE orders SET
          state = 'labelled', labelled_at = @at, label_count = @labelCount,
          parked_at = NULL, park_reasons = NULL, {Changed}
        WHERE order_number = @orderNumber AND revision = @revision AND labelled_at IS NULL
        """;

    public static bool Labelled(
        StoreTransaction transaction, string orderNumber, int revision, DateTimeOffset at,
        int labelCount) =>
        transaction.Execute(UpdateLabelled, new
        {
            orderNumber,
            revision,
            labelCount,
            at = at.ToUnixTimeMilliseconds(),
            now = transaction.NowUnixMs,
        }) == 1;

    private const string UpdateParked =
        $"""
        UPDATE orders SET state = 'parked', parked_at = @now, park_reasons = @reasons, {Changed}
        WHERE order_number = @orderNumber AND revision = @revision AND labelled_at IS NULL
          AND (@evenPlanned OR planned_at IS NULL)
          AND (state <> 'parked' OR park_reasons <> @reasons)
        """;

    /// <param name="transaction">Of the message, or of the reconciler.</param>
    /// <param name="orderNumber">Which order.</param>
    /// <param name="revision">Of which revision it is said.</param>
    /// <param name="reasons">JSON list of reasons.</param>
    /// <param name="evenPlanned">Also when it has a plan already.</param>
    public static bool Parked(
        StoreTransaction transaction, string orderNumber, int revision, string reasons,
        bool evenPlanned) =>
        transaction.Execute(UpdateParked, new
        {
            orderNumber,
            revision,
            reasons,
            evenPlanned,
            now = transaction.NowUnixMs,
        }) == 1;

    private const string UpdateRetried =
        $"""
        UPDATE orders SET
          state = CASE WHEN planned_at IS NULL THEN 'confirmed' ELSE 'planned' END,
          parked_at = NULL, park_reasons = NULL,
          announced_run = @run, announced_at = @now, announcements = 1, {Changed}
        WHERE order_number = @orderNumber AND state = 'parked'
        """;

    public static bool Retried(StoreTransaction transaction, string orderNumber, string run) =>
        transaction.Execute(
            UpdateRetried, new { orderNumber, run, now = transaction.NowUnixMs }) == 1;

    private const string SelectDue =
        """
        SELECT order_number FROM orders
        WHERE state IN ('confirmed', 'planned')
          AND (announced_run <> @run
            OR announced_at + min(@graceMs << min(announcements - 1, 10), @longestMs) <= @now)
        ORDER BY announced_at LIMIT @most
        """;

    /// <summary>Orders that wait: not yet announced by this run of the process, or without an
    /// answer for longer each time.</summary>
    public static IReadOnlyList<string> Due(
        StoreTransaction transaction, string run, TimeSpan grace, TimeSpan longest, int most) =>
        transaction.All<string>(SelectDue, new
        {
            run,
            most,
            graceMs = (long)grace.TotalMilliseconds,
            longestMs = (long)longest.TotalMilliseconds,
            now = transaction.NowUnixMs,
        });

    private const string UpdateAnnounced =
        """
        UPDATE orders SET
          announcements = CASE WHEN announced_run = @run THEN announcements + 1 ELSE 1 END,
          announced_run = @run, announced_at = @now
        WHERE order_number = @orderNumber
        """;

    public static void Announced(StoreTransaction transaction, string orderNumber, string run) =>
        transaction.Execute(
            UpdateAnnounced, new { orderNumber, run, now = transaction.NowUnixMs });
}
