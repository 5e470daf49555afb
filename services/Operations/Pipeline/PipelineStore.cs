using PostFrame.Messaging;

namespace PostFrame.Operations.Pipeline;

/// <summary>What was told of each order, and the board's row that follows from it.</summary>
internal static class PipelineStore
{
    private const string UpsertTold =
        """
        INSERT INTO told (order_number, revision, kind, number, said_at, message_id, body)
        VALUES (@OrderNumber, @Revision, @Kind, @Number, @SaidAt, @MessageId, @Body)
        ON CONFLICT (order_number, revision, kind) DO UPDATE SET
          number = excluded.number, said_at = excluded.said_at,
          message_id = excluded.message_id, body = excluded.body
        WHERE (excluded.number, excluded.said_at, excluded.message_id)
          > (told.number, told.said_at, told.message_id)
        """;

    /// <summary>
    /// Keeps a statement unless its speaker said something later of the same revision: of a newer
    /// plan, or later by its own clock.
    /// </summary>
    public static void Keep(StoreTransaction transaction, Told told) =>
        transaction.Execute(UpsertTold, told);

    private const string SelectNewestConfirmed =
        "SELECT max(revision) FROM told WHERE order_number = @order AND kind = 'order'";

    /// <summary>The revision the board shows; null before an order is confirmed.</summary>
    public static long? NewestConfirmed(StoreTransaction view, string order) =>
        view.Single<long?>(SelectNewestConfirmed, new { order });

    private const string SelectTold =
        """
        SELECT order_number AS OrderNumber, revision AS Revision, kind AS Kind,
               number AS Number, said_at AS SaidAt, message_id AS MessageId, body AS Body
        FROM told WHERE order_number = @order AND revision = @revision
        """;

    public static IReadOnlyList<Told> Known(StoreTransaction view, string order, long revision) =>
        view.All<Told>(SelectTold, new { order, revision });

    private const string DeleteOlder =
        "DELETE FROM told WHERE order_number = @order AND revision < @revision";

    /// <summary>Drops what was said of older revisions: they are never shown again.</summary>
    public static void Forget(StoreTransaction transaction, string order, long revision) =>
        transaction.Execute(DeleteOlder, new { order, revision });

    private const string Columns =
        """
        order_number AS OrderNumber, revision AS Revision, ship_to AS ShipTo,
        building AS Building, summary AS Summary, needed_by AS NeededBy, pieces AS Pieces,
        rolls AS Rolls, labels AS Labels, state AS State, reasons AS Reasons,
        confirmed_at AS ConfirmedAt, decided_at AS DecidedAt, finished_at AS FinishedAt,
        place AS Place, change AS Change
        """;

    private const string SelectOne =
        $"SELECT {Columns} FROM tracked_order WHERE order_number = @order";

    public static OrderRow? Find(StoreTransaction view, string order) =>
        view.Single<OrderRow>(SelectOne, new { order });

    private const string SelectLatestChange =
        "SELECT coalesce(max(change), 0) FROM tracked_order";

    public static long LatestChange(StoreTransaction view) =>
        view.Single<long>(SelectLatestChange);

    private const string UpsertOrder =
        """
        INSERT INTO tracked_order (order_number, revision, ship_to, building, summary, needed_by,
          pieces, rolls, labels, state, reasons, confirmed_at, decided_at, finished_at, place,
          change)
        VALUES (@OrderNumber, @Revision, @ShipTo, @Building, @Summary, @NeededBy, @Pieces, @Rolls,
          @Labels, @State, @Reasons, @ConfirmedAt, @DecidedAt, @FinishedAt, @Place, @Change)
        ON CONFLICT (order_number) DO UPDATE SET
          revision = excluded.revision, ship_to = excluded.ship_to, building = excluded.building,
          summary = excluded.summary, needed_by = excluded.needed_by, pieces = excluded.pieces,
          rolls = excluded.rolls, labels = excluded.labels, state = excluded.state,
          reasons = excluded.reasons, confirmed_at = excluded.confirmed_at,
          decided_at = excluded.decided_at, finished_at = excluded.finished_at,
          place = excluded.place, change = excluded.change
        """;

    /// <summary>Brings an order's row up to date; false when it says nothing new.</summary>
    public static bool Track(StoreTransaction transaction, OrderRow row)
    {
        if (Find(transaction, row.OrderNumber) is { } known && row == known with { Change = 0 })
        {
            return false;
        }

        transaction.Execute(UpsertOrder, row with { Change = LatestChange(transaction) + 1 });
        return true;
    }

    private const string SelectPage =
        $"""
        SELECT {Columns} FROM tracked_order
        WHERE (place, order_number) > (@place, @number)
          AND (@state IS NULL OR state = @state)
          AND (@text IS NULL OR instr(lower(order_number), @text) > 0
            OR instr(lower(ship_to), @text) > 0 OR instr(lower(building), @text) > 0)
        ORDER BY place, order_number LIMIT @most
        """;

    /// <summary>Orders behind a place, the longest waiting first.</summary>
    public static IReadOnlyList<OrderRow> Page(
        StoreTransaction view, PageStart start, string? state, string? text, int most) =>
        view.All<OrderRow>(SelectPage, new
        {
            place = start.Place,
            number = start.OrderNumber,
            state,
            text = text?.ToLowerInvariant(),
            most,
        });

    private const string SelectChanges =
        $"SELECT {Columns} FROM tracked_order WHERE change > @after ORDER BY change LIMIT @most";

    /// <summary>Orders changed since, each once and as it is now.</summary>
    public static IReadOnlyList<OrderRow> Changes(StoreTransaction view, long after, int most) =>
        view.All<OrderRow>(SelectChanges, new { after, most });

    private const string SelectCounts =
        """
        SELECT state AS State, count(*) AS Orders, min(confirmed_at) AS OldestConfirmedAt,
               coalesce(sum(rolls), 0) AS Rolls
        FROM tracked_order GROUP BY state
        """;

    public static IReadOnlyList<StateCount> Counts(StoreTransaction view) =>
        view.All<StateCount>(SelectCounts);

    private const string SelectFeedName = "SELECT name FROM feed";

    public static string FeedName(StoreTransaction view) => view.Single<string>(SelectFeedName)!;
}

/// <summary>The order behind which a page begins.</summary>
internal sealed record PageStart(long Place, string OrderNumber)
{
    public static PageStart OfAll { get; } = new(long.MinValue, "");
}

internal sealed record StateCount
{
    public required string State { get; init; }

    public required long Orders { get; init; }

    public required long OldestConfirmedAt { get; init; }

    public required long Rolls { get; init; }
}
