using PostFrame.Messaging;

namespace PostFrame.OrdersApi.Orders;

/// <summary>
/// Moves orders along. What is said of an older revision or plan changes nothing, and no message,
/// however late or repeated, moves an order back. Each answers whether anything changed.
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
          state = CASE WHEN labelled_plan >= @plan THEN 'labelled'
                       WHEN failed_plan = @plan THEN 'parked' ELSE 'planned' END,
          decided = @plan, planned_plan = @plan, planned_at = @at, roll_count = @rollCount,
          parked_at = CASE WHEN failed_plan = @plan THEN parked_at END,
          park_reasons = CASE WHEN failed_plan = @plan THEN park_reasons END,
          announced_at = @now, announcements = 1, {Changed}
        WHERE order_number = @orderNumber AND revision = @revision AND decided <= @plan
          AND (planned_plan < @plan OR (state = 'parked' AND failed_plan <> @plan))
        """;

    /// <summary>Cutting has a plan, the first or one in the place of an older.</summary>
    public static bool Planned(
        StoreTransaction transaction, string orderNumber, int revision, int plan,
        DateTimeOffset at, int rollCount) =>
        transaction.Execute(UpdatePlanned, new
        {
            orderNumber,
            revision,
            plan,
            rollCount,
            at = at.ToUnixTimeMilliseconds(),
            now = transaction.NowUnixMs,
        }) == 1;

    private const string UpdateRejected =
        $"""
        UPDATE orders SET
          state = 'parked', parked_at = @now, park_reasons = @reasons,
          decided = @plan, planned_plan = 0, planned_at = NULL, roll_count = NULL,
          failed_plan = 0, {Changed}
        WHERE order_number = @orderNumber AND revision = @revision AND decided <= @plan
          AND (@plan = 0 OR (planned_plan < @plan AND labelled_plan < @plan))
          AND (state <> 'parked' OR park_reasons <> @reasons)
        """;

    /// <summary>Cutting cannot plan it, at first or when it had to plan anew.</summary>
    public static bool Rejected(
        StoreTransaction transaction, string orderNumber, int revision, int plan,
        string reasons) =>
        transaction.Execute(UpdateRejected, new
        {
            orderNumber,
            revision,
            plan,
            reasons,
            now = transaction.NowUnixMs,
        }) == 1;

    private const string UpdateLabelled =
        $"""
        UPDATE orders SET
          state = CASE WHEN decided <= @plan THEN 'labelled' ELSE state END,
          decided = max(decided, @plan), labelled_plan = @plan,
          labelled_at = @at, label_count = @labelCount,
          parked_at = CASE WHEN decided > @plan THEN parked_at END,
          park_reasons = CASE WHEN decided > @plan THEN park_reasons END, {Changed}
        WHERE order_number = @orderNumber AND revision = @revision AND labelled_plan < @plan
        """;

    /// <summary>The labels of a plan can be fetched.</summary>
    public static bool Labelled(
        StoreTransaction transaction, string orderNumber, int revision, int plan,
        DateTimeOffset at, int labelCount) =>
        transaction.Execute(UpdateLabelled, new
        {
            orderNumber,
            revision,
            plan,
            labelCount,
            at = at.ToUnixTimeMilliseconds(),
            now = transaction.NowUnixMs,
        }) == 1;

    private const string UpdateNotLabelled =
        $"""
        UPDATE orders SET
          state = 'parked', parked_at = @now, park_reasons = @reasons,
          decided = @plan, failed_plan = @plan, {Changed}
        WHERE order_number = @orderNumber AND revision = @revision
          AND decided <= @plan AND labelled_plan < @plan
          AND (state <> 'parked' OR park_reasons <> @reasons)
        """;

    /// <summary>The labels of a plan cannot be drawn.</summary>
    public static bool NotLabelled(
        StoreTransaction transaction, string orderNumber, int revision, int plan,
        string reasons) =>
        transaction.Execute(UpdateNotLabelled, new
        {
            orderNumber,
            revision,
            plan,
            reasons,
            now = transaction.NowUnixMs,
        }) == 1;

    private const string UpdateGivenUp =
        $"""
        UPDATE orders SET state = 'parked', parked_at = @now, park_reasons = @reasons, {Changed}
        WHERE order_number = @orderNumber AND state IN ('confirmed', 'planned')
        """;

    /// <summary>Nothing answers for it.</summary>
    public static void GivenUp(
        StoreTransaction transaction, string orderNumber, string reasons) =>
        transaction.Execute(
            UpdateGivenUp, new { orderNumber, reasons, now = transaction.NowUnixMs });

    private const string UpdateRetried =
        $"""
        UPDATE orders SET
          state = CASE WHEN planned_at IS NULL THEN 'confirmed' ELSE 'planned' END,
          parked_at = NULL, park_reasons = NULL, failed_plan = 0,
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
