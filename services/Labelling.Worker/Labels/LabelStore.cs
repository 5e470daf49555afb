using PostFrame.Messaging;

namespace PostFrame.LabellingWorker.Labels;

/// <summary>The halves of what is to be printed, and the printed sets.</summary>
internal static class LabelStore
{
    private const string InsertHalf =
        """
        INSERT INTO half (order_number, revision, kind, body, came_at)
        VALUES (@order, @revision, @kind, @body, @now)
        ON CONFLICT DO NOTHING
        """;

    /// <summary>Keeps a half; the first one that came for a revision stays.</summary>
    public static void KeepHalf(
        StoreTransaction transaction, string order, int revision, string kind, string body) =>
        transaction.Execute(
            InsertHalf, new { order, revision, kind, body, now = transaction.NowUnixMs });

    private const string SelectHalf =
        """
        SELECT body FROM half
        WHERE order_number = @order AND revision = @revision AND kind = @kind
        """;

    public static string? Half(
        StoreTransaction transaction, string order, int revision, string kind) =>
        transaction.Single<string>(SelectHalf, new { order, revision, kind });

    private const string InsertSet =
        """
        INSERT INTO label_set
          (order_number, revision, label_count, printed_at, summary, labels_pdf, checklist_pdf)
        VALUES (@order, @revision, @count, @now, @summary, @labels, @checklist)
        """;

    public static void KeepSet(StoreTransaction transaction, PrintedSet set) =>
        transaction.Execute(InsertSet, new
        {
            order = set.OrderNumber,
            revision = set.Revision,
            count = set.LabelCount,
            now = transaction.NowUnixMs,
            summary = set.Summary,
            labels = set.LabelsPdf,
            checklist = set.ChecklistPdf,
        });

    private const string SelectPrinted =
        """
        SELECT label_count AS LabelCount, printed_at AS PrintedAtUnixMs FROM label_set
        WHERE order_number = @order AND revision = @revision
        """;

    public static PrintedNote? Printed(StoreTransaction transaction, string order, int revision) =>
        transaction.Single<PrintedNote>(SelectPrinted, new { order, revision });

    private const string SelectNewest =
        """
        SELECT order_number AS OrderNumber, revision AS Revision, label_count AS LabelCount,
          printed_at AS PrintedAtUnixMs, summary AS Summary, labels_pdf AS LabelsPdf,
          checklist_pdf AS ChecklistPdf
        FROM label_set WHERE order_number = @order ORDER BY revision DESC LIMIT 1
        """;

    /// <summary>The newest revision's whole set; null when none is printed.</summary>
    public static PrintedSet? Newest(StoreTransaction transaction, string order) =>
        transaction.Single<PrintedSet>(SelectNewest, new { order });
}

/// <summary>Everything printed for one revision of an order.</summary>
internal sealed class PrintedSet
{
    public required string OrderNumber { get; init; }

    public required long Revision { get; init; }

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
}
