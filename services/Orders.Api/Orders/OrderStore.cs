using PostFrame.Messaging;

namespace PostFrame.OrdersApi.Orders;

/// <summary>The orders' tables. Every change of an order goes with its history row.</summary>
internal static class OrderStore
{
    private const string Columns =
        """
        seq AS Seq, order_number AS OrderNumber, revision AS Revision, state AS State,
        needed_by AS NeededBy, ship_to AS ShipTo, building AS Building, summary AS Summary,
        piece_count AS PieceCount, roll_count AS RollCount, label_count AS LabelCount,
        accepted_at AS AcceptedAt, planned_at AS PlannedAt, labelled_at AS LabelledAt,
        planned_plan AS PlannedPlan, labelled_plan AS LabelledPlan,
        parked_at AS ParkedAt, park_reasons AS ParkReasons, change_no AS ChangeNo,
        changed_at AS ChangedAt, announcements AS Announcements
        """;

    private const string SelectAnswer =
        """
        SELECT body_hash AS BodyHash, location AS Location, answer AS Answer
        FROM intake WHERE key = @key
        """;

    public static AnswerRow? AnswerTo(StoreTransaction transaction, string key) =>
        transaction.Single<AnswerRow>(SelectAnswer, new { key });

    private const string InsertAnswer =
        """
        INSERT INTO intake (key, body_hash, location, answer, answered_at)
        VALUES (@key, @bodyHash, @location, @answer, @now)
        """;

    public static void KeepAnswer(
        StoreTransaction transaction, string key, string bodyHash, string location,
        string answer) =>
        transaction.Execute(
            InsertAnswer, new { key, bodyHash, location, answer, now = transaction.NowUnixMs });

    private const string SelectNextSeq = "SELECT coalesce(max(seq), 0) + 1 FROM orders";

    public static long NextSeq(StoreTransaction transaction) =>
        transaction.Single<long>(SelectNextSeq);

    private const string InsertOrder =
        """
        INSERT INTO orders (
          seq, order_number, revision, state, needed_by, ship_to, building, summary, piece_count,
          accepted_at, change_no, changed_at, announced_run, announced_at, announcements)
        VALUES (
          @seq, @orderNumber, 1, 'confirmed', @neededBy, @shipTo, @building, @summary, @pieceCount,
          @now, (SELECT coalesce(max(change_no), 0) + 1 FROM orders), @now, @run, @now, 1)
        """;

    public static void Insert(
        StoreTransaction transaction, long seq, string run,
        Messages.OrderConfirmed.Confirmed data) =>
        transaction.Execute(InsertOrder, new
        {
            seq,
            orderNumber = data.OrderNumber,
            neededBy = data.NeededBy.ToString("O"),
            shipTo = data.ShipTo.Name,
            building = data.Building.Name,
            summary = data.Building.Summary,
            pieceCount = data.Pieces.Count,
            run,
            now = transaction.NowUnixMs,
        });

    private const string InsertRevision =
        """
        INSERT INTO revision (order_seq, revision, request, take_off, confirmed, accepted_at)
        VALUES (@seq, @revision, @request, @takeOff, @confirmed, @now)
        """;

    public static void InsertRevisionOf(
        StoreTransaction transaction, long seq, int revision, string request, string takeOff,
        string confirmed) =>
        transaction.Execute(InsertRevision, new
        {
            seq,
            revision,
            request,
            takeOff,
            confirmed,
            now = transaction.NowUnixMs,
        });

    private const string InsertPiece =
        """
        INSERT INTO piece (piece_id, order_seq, revision, mark)
        VALUES (@id, @seq, @revision, @mark)
        """;

    public static void InsertPieces(
        StoreTransaction transaction, long seq, int revision,
        IEnumerable<Messages.OrderConfirmed.Piece> pieces) =>
        transaction.Execute(
            InsertPiece,
            pieces.Select(piece => new { id = piece.PieceId, seq, revision, mark = piece.Mark }));

    private const string InsertHistory =
        """
        INSERT INTO history (order_seq, revision, at, event, text)
        SELECT seq, revision, @now, @name, @text FROM orders WHERE order_number = @orderNumber
        """;

    public static void Note(
        StoreTransaction transaction, string orderNumber, string name, string text) =>
        transaction.Execute(
            InsertHistory, new { orderNumber, name, text, now = transaction.NowUnixMs });

    private const string SelectOrder =
        $"SELECT {Columns} FROM orders WHERE order_number = @orderNumber";

    public static OrderRow? Find(StoreTransaction transaction, string orderNumber) =>
        transaction.Single<OrderRow>(SelectOrder, new { orderNumber });

    private const string SelectTaken =
        "SELECT order_number FROM orders WHERE order_number = @orderNumber COLLATE NOCASE";

    /// <summary>The accepted order with this number, however its letters were written.</summary>
    public static string? Taken(StoreTransaction transaction, string orderNumber) =>
        transaction.Single<string>(SelectTaken, new { orderNumber });

    private const string SelectHistory =
        """
        SELECT revision AS Revision, at AS At, event AS Event, text AS Text
        FROM history WHERE order_seq = @seq ORDER BY seq
        """;

    public static IReadOnlyList<HistoryRow> HistoryOf(StoreTransaction transaction, long seq) =>
        transaction.All<HistoryRow>(SelectHistory, new { seq });

    private const string SelectNewest =
        $"""
        SELECT {Columns} FROM orders
        WHERE seq < @before AND (@state IS NULL OR state = @state) ORDER BY seq DESC LIMIT @limit
        """;

    public static IReadOnlyList<OrderRow> Newest(
        StoreTransaction transaction, long before, string? state, int limit) =>
        transaction.All<OrderRow>(SelectNewest, new { before, state, limit });

    private const string SelectChanged =
        $"SELECT {Columns} FROM orders WHERE change_no > @after ORDER BY change_no LIMIT @limit";

    public static IReadOnlyList<OrderRow> ChangedAfter(
        StoreTransaction transaction, long after, int limit) =>
        transaction.All<OrderRow>(SelectChanged, new { after, limit });

    private const string SelectConfirmed =
        """
        SELECT confirmed FROM revision JOIN orders ON order_seq = seq
        WHERE order_number = @orderNumber AND revision.revision = orders.revision
        """;

    /// <summary>What the workers were told of the current revision, as JSON.</summary>
    public static string ConfirmedOf(StoreTransaction transaction, string orderNumber) =>
        transaction.Single<string>(SelectConfirmed, new { orderNumber })!;
}
