using PostFrame.Messaging;

namespace PostFrame.LabellingWorker.Labels;

/// <summary>The halves of what is to be printed, and the printed sets.</summary>
internal static class LabelStore
{
    public const string OrderHalf = "order";
    public const string PlanHalf = "plan";

    private const string UpsertHalf =
        """
        INSERT INTO half (order_number, revision, kind, plan, body, came_at)
        VALUES (@order, @revision, @kind, @plan, @body, @now)
        ON CONFLICT (order_number, revision, kind) DO UPDATE SET
          plan = excluded.plan, body = excluded.body, came_at = excluded.came_at
        WHERE excluded.plan >= half.plan
        """;

    /// <summary>Keeps a half, unless it is of an older plan than the one kept.</summary>
    public static void KeepHalf(
        StoreTransaction transaction, string order, int revision, string kind, int plan,
        string body) => transaction.Execute(
            UpsertHalf, new { order, revision, kind, plan, body, now = transaction.NowUnixMs });

    private const string SelectKnown =
        """
        SELECT ordered.body AS OrderBody, planned.body AS PlanBody,
          coalesce(planned.plan, 0) AS Plan, coalesce(done.plan, 0) AS PrintedPlan
        FROM (SELECT @order AS order_number, @revision AS revision) it
        LEFT JOIN half ordered ON ordered.kind = 'order'
          AND (ordered.order_number, ordered.revision) = (it.order_number, it.revision)
        LEFT JOIN half planned ON planned.kind = 'plan'
          AND (planned.order_number, planned.revision) = (it.order_number, it.revision)
        LEFT JOIN label_set done
          ON (done.order_number, done.revision) = (it.order_number, it.revision)
        """;

    public static KnownHalves Known(StoreTransaction view, string order, int revision) =>
        view.Single<KnownHalves>(SelectKnown, new { order, revision })!;

    private const string SelectSet =
        """
        SELECT order_number AS OrderNumber, revision AS Revision, plan AS Plan,
          label_count AS LabelCount, printed_at AS PrintedAtUnixMs, summary AS Summary,
          labels_pdf AS LabelsPdf, checklist_pdf AS ChecklistPdf
        FROM label_set
        """;

    private const string SelectOne =
        SelectSet + " WHERE order_number = @order AND revision = @revision";

    private const string UpsertSet =
        """
        INSERT INTO label_set
          (order_number, revision, plan, label_count, printed_at, summary, labels_pdf,
           checklist_pdf)
        VALUES (@order, @revision, @plan, @count, @now, @summary, @labels, @checklist)
        ON CONFLICT (order_number, revision) DO UPDATE SET
          plan = excluded.plan, label_count = excluded.label_count,
          printed_at = excluded.printed_at, summary = excluded.summary,
          labels_pdf = excluded.labels_pdf, checklist_pdf = excluded.checklist_pdf
        WHERE excluded.plan > label_set.plan
        """;

    private const string UpdatePlan =
        """
        UPDATE label_set SET plan = @plan, summary = @summary
        WHERE order_number = @order AND revision = @revision AND plan < @plan
        """;

    private const string DeleteFailure =
        "DELETE FROM failure WHERE order_number = @order AND revision = @revision";

    /// <summary>
    /// Puts the set in the place of an older plan's. Where the paper is the same to the byte it
    /// stays the one that was printed then.
    /// </summary>
    public static void KeepSet(StoreTransaction transaction, PrintedSet set)
    {
        var (order, revision) = (set.OrderNumber, set.Revision);
        var before = transaction.Single<PrintedSet>(SelectOne, new { order, revision });
        var isSame = before is not null && before.LabelsPdf.AsSpan().SequenceEqual(set.LabelsPdf)
            && before.ChecklistPdf.AsSpan().SequenceEqual(set.ChecklistPdf);
        transaction.Execute(isSame ? UpdatePlan : UpsertSet, new
        {
            order,
            revision,
            plan = set.Plan,
            count = set.LabelCount,
            now = transaction.NowUnixMs,
            summary = set.Summary,
            labels = set.LabelsPdf,
            checklist = set.ChecklistPdf,
        });
        transaction.Execute(DeleteFailure, new { order, revision });
    }

    private const string UpsertFailure =
        """
        INSERT INTO failure (order_number, revision, plan, code, text, failed_at)
        VALUES (@order, @revision, @plan, @Code, @Text, @now)
        ON CONFLICT (order_number, revision) DO UPDATE SET
          plan = excluded.plan, code = excluded.code, text = excluded.text,
          failed_at = excluded.failed_at
        """;

    public static void KeepFailure(
        StoreTransaction transaction, string order, int revision, long plan, WhyNot why) =>
        transaction.Execute(UpsertFailure, new
        {
            order,
            revision,
            plan,
            why.Code,
            why.Text,
            now = transaction.NowUnixMs,
        });

    private const string SelectPrinted =
        """
        SELECT label_count AS LabelCount, printed_at AS PrintedAtUnixMs, plan AS Plan
        FROM label_set WHERE order_number = @order AND revision = @revision
        """;

    public static PrintedNote Printed(StoreTransaction transaction, string order, int revision) =>
        transaction.Single<PrintedNote>(SelectPrinted, new { order, revision })!;

    private const string SelectNewest =
        SelectSet + " WHERE order_number = @order ORDER BY revision DESC LIMIT 1";

    /// <summary>The newest revision's whole set; null when none is printed.</summary>
    public static PrintedSet? Newest(StoreTransaction transaction, string order) =>
        transaction.Single<PrintedSet>(SelectNewest, new { order });

    private const string SelectFailure =
        """
        SELECT text FROM failure WHERE order_number = @order ORDER BY revision DESC LIMIT 1
        """;

    /// <summary>Why the newest labels could not be drawn; null when nothing is wrong.</summary>
    public static string? Failure(StoreTransaction view, string order) =>
        view.Single<string>(SelectFailure, new { order });
}

/// <summary>What came of a revision so far.</summary>
internal sealed record KnownHalves
{
    public string? OrderBody { get; init; }

    public string? PlanBody { get; init; }

    /// <summary>The newest plan's number; 0 before there is one.</summary>
    public required long Plan { get; init; }

    /// <summary>The plan whose labels are printed; 0 when none are.</summary>
    public required long PrintedPlan { get; init; }

    /// <summary>Both halves are here and the newest plan's labels are not printed.</summary>
    public bool IsDue => OrderBody is not null && PlanBody is not null && Plan > PrintedPlan;
}

/// <summary>Why labels cannot be drawn.</summary>
/// <param name="Code">As in <c>labels-failed.v1</c>.</param>
/// <param name="Text">For people; nothing internal.</param>
internal sealed record WhyNot(string Code, string Text);

/// <summary>Everything printed for one revision of an order.</summary>
internal sealed class PrintedSet
{
    public required string OrderNumber { get; init; }

    public required long Revision { get; init; }

    /// <summary>The plan whose cutting order it follows.</summary>
    public required long Plan { get; init; }

    public required long LabelCount { get; init; }

    public long PrintedAtUnixMs { get; init; }

    /// <summary>The labels as <see cref="PrintedLabel"/> in JSON.</summary>
    public required string Summary { get; init; }

    public required byte[] LabelsPdf { get; init; }

    public required byte[] ChecklistPdf { get; init; }
}

internal sealed class PrintedNote
{
    public required long LabelCount { get; init; }

    public required long PrintedAtUnixMs { get; init; }

    public required long Plan { get; init; }
}
