using PostFrame.CuttingWorker.Messages;
using PostFrame.Messaging;

namespace PostFrame.CuttingWorker.Queue;

/// <summary>The orders to be cut, each in its newest revision, with their pieces.</summary>
internal static class OrderStore
{
    private const string SelectRevision =
        "SELECT revision FROM cutting_order WHERE order_number = @order";

    /// <summary>The newest revision taken, or null when the order is unknown.</summary>
    public static long? Revision(StoreTransaction view, string order) =>
        view.Single<long?>(SelectRevision, new { order });

    private const string SelectOrder =
        """
        SELECT order_number AS OrderNumber, revision AS Revision, needed_by AS NeededBy,
               confirmed_at AS ConfirmedAt, state AS State, decided_at AS DecidedAt,
               plan_number AS PlanNumber, refusals AS Refusals,
               one_plane_at_a_time AS OnePlaneAtATime
        FROM cutting_order WHERE order_number = @order
        """;

    public static OrderRow? Find(StoreTransaction view, string order) =>
        view.Single<OrderRow>(SelectOrder, new { order });

    private const string UpsertOrder =
        """
        INSERT INTO cutting_order (order_number, revision, needed_by, confirmed_at, state)
        VALUES (@order, @revision, @neededBy, @confirmedAt, 'waiting')
        ON CONFLICT (order_number) DO UPDATE SET
          revision = excluded.revision, needed_by = excluded.needed_by,
          confirmed_at = excluded.confirmed_at, state = 'waiting', tries = 0,
          decided_at = NULL, refusals = NULL
        """;

    private const string DeleteOffers = "DELETE FROM offered_roll WHERE order_number = @order";

    private const string InsertOffer =
        """
        INSERT INTO offered_roll (order_number, product, width_nm, roll_length_nm, end_trim_nm,
                                  min_useful_offcut_nm)
        VALUES (@order, @Product, @WidthNm, @RollLengthNm, @EndTrimNm, @MinUsefulOffcutNm)
        """;

    private const string UpsertPiece =
        """
        INSERT INTO piece (piece_id, order_number, place, mark, plane, product, width_nm,
                           width_text, cut_nm, cut_text)
        VALUES (@PieceId, @order, @place, @Mark, @Plane, @Product, @WidthNm, @WidthText, @CutNm,
                @CutText)
        ON CONFLICT (piece_id) DO UPDATE SET
          place = excluded.place, mark = excluded.mark, plane = excluded.plane,
          width_text = excluded.width_text, cut_text = excluded.cut_text, voided_at = NULL
        WHERE order_number = excluded.order_number AND product = excluded.product
          AND width_nm = excluded.width_nm AND cut_nm = excluded.cut_nm
        """;

    private const string SelectGone =
        "SELECT piece_id FROM piece WHERE order_number = @order";

    private const string DeleteGone =
        "DELETE FROM piece WHERE piece_id = @piece AND cut_at IS NULL";

    private const string VoidGone =
        "UPDATE piece SET voided_at = coalesce(voided_at, @now) WHERE piece_id = @piece";

    /// <summary>
    /// Takes a revision: pieces that stay keep their place and their cut; those that are gone are
    /// dropped, or voided where they were cut already. The order waits to be planned.
    /// </summary>
    public static void Take(StoreTransaction transaction, OrderConfirmed.Confirmed confirmed)
    {
        var order = confirmed.OrderNumber;
        transaction.Execute(UpsertOrder, new
        {
            order,
            revision = confirmed.Revision,
            neededBy = confirmed.NeededBy.ToString("O"),
            confirmedAt = confirmed.ConfirmedAt.ToUnixTimeMilliseconds(),
        });
        transaction.Execute(DeleteOffers, new { order });
        foreach (var roll in confirmed.Stock)
        {
            transaction.Execute(InsertOffer, new
            {
                order,
                roll.Product,
                roll.WidthNm,
                roll.RollLengthNm,
                roll.EndTrimNm,
                roll.MinUsefulOffcutNm,
            });
        }

        var kept = confirmed.Pieces.Select(piece => piece.PieceId).ToHashSet();
        foreach (var piece in transaction.All<string>(SelectGone, new { order })
                     .Where(piece => !kept.Contains(piece)))
        {
            transaction.Execute(DeleteGone, new { piece });
            transaction.Execute(VoidGone, new { piece, now = transaction.NowUnixMs });
        }

        for (var place = 0; place < confirmed.Pieces.Count; place++)
        {
            Take(transaction, order, place, confirmed.Pieces[place]);
        }
    }

    private static void Take(
        StoreTransaction transaction, string order, int place, OrderConfirmed.Piece piece)
    {
        var taken = transaction.Execute(UpsertPiece, new
        {
            order,
            place,
            piece.PieceId,
            piece.Mark,
            piece.Plane,
            piece.Product,
            piece.WidthNm,
            piece.WidthText,
            piece.CutNm,
            piece.CutText,
        });
        if (taken == 0)
        {
            throw new BrokenContractException(
                $"piece id {piece.PieceId} was used before for another piece");
        }
    }

    private const string SelectNext =
        """
        SELECT order_number FROM cutting_order WHERE state = 'waiting'
        ORDER BY tries, confirmed_at, order_number LIMIT 1
        """;

    /// <summary>The order that has waited longest for its plan.</summary>
    public static string? NextWaiting(StoreTransaction view) => view.Single<string>(SelectNext);

    private const string UpdateWaiting =
        """
        UPDATE cutting_order SET state = 'waiting', tries = 0 WHERE order_number = @order
          AND state <> 'refused'
        """;

    /// <summary>Asks for a new plan.</summary>
    public static void Wait(StoreTransaction transaction, string order) =>
        transaction.Execute(UpdateWaiting, new { order });

    private const string SelectNotBegun =
        """
        SELECT o.order_number FROM cutting_order o
        WHERE o.state = 'planned' AND NOT EXISTS (
          SELECT 1 FROM piece p WHERE p.order_number = o.order_number AND p.cut_at IS NOT NULL)
        ORDER BY o.needed_by, o.confirmed_at, o.order_number LIMIT @most
        """;

    /// <summary>Planned orders nothing was cut of yet, in the order they are needed.</summary>
    public static IReadOnlyList<string> NotBegun(StoreTransaction view, int most) =>
        view.All<string>(SelectNotBegun, new { most });

    private const string UpdatePool =
        """
        UPDATE cutting_order SET state = 'waiting', tries = 0, pool = @pool,
               one_plane_at_a_time = @onePlaneAtATime
        WHERE order_number = @order
        """;

    /// <summary>Asks for a plan together with the others of the pool.</summary>
    public static void Pool(
        StoreTransaction transaction, string order, string pool, bool onePlaneAtATime = false) =>
        transaction.Execute(UpdatePool, new { order, pool, onePlaneAtATime });

    private const string UpdateRetry =
        """
        UPDATE cutting_order SET state = 'waiting', tries = 0, refusals = NULL
        WHERE order_number = @order AND state = 'refused'
        """;

    /// <summary>A refused order is planned again; one that waits goes on waiting as it did.
    /// </summary>
    public static void Retry(StoreTransaction transaction, string order) =>
        transaction.Execute(UpdateRetry, new { order });

    private const string UpdatePlanned =
        """
        UPDATE cutting_order SET state = 'planned', tries = 0, decided_at = @now, refusals = NULL,
               plan_number = plan_number + 1
        WHERE order_number = @order
        """;

    public static void Planned(StoreTransaction transaction, string order) =>
        transaction.Execute(UpdatePlanned, new { order, now = transaction.NowUnixMs });

    private const string UpdateRefused =
        """
        UPDATE cutting_order SET state = 'refused', decided_at = @now, refusals = @refusals,
               plan_number = plan_number + 1
        WHERE order_number = @order
        """;

    private const string Unplace =
        """
        UPDATE piece SET roll_id = NULL, sequence = NULL
        WHERE order_number = @order AND cut_at IS NULL
        """;

    /// <summary>The order cannot be planned; what it held of rolls not yet cut is let go.</summary>
    public static void Refused(StoreTransaction transaction, string order, string refusals)
    {
        transaction.Execute(UpdateRefused, new { order, refusals, now = transaction.NowUnixMs });
        transaction.Execute(Unplace, new { order });
    }

    private const string SelectPlannedAgain =
        """
        SELECT o.order_number FROM cutting_order o
        WHERE o.state <> 'waiting' AND o.plan_number > 1 AND EXISTS (
          SELECT 1 FROM piece p WHERE p.order_number = o.order_number AND p.cut_at IS NULL
            AND p.voided_at IS NULL)
        ORDER BY o.order_number
        """;

    /// <summary>Orders whose first plan was replaced and that are not all cut.</summary>
    public static IReadOnlyList<string> PlannedAgain(StoreTransaction view) =>
        view.All<string>(SelectPlannedAgain);

    private const string CountTry =
        """
        UPDATE cutting_order SET tries = tries + 1 WHERE order_number IN @orders RETURNING tries
        """;

    /// <summary>
    /// Notes that orders begin to be planned together; answers how often one of them has. Whoever
    /// dies of it leaves the note.
    /// </summary>
    public static long Begin(StoreTransaction transaction, IReadOnlyList<string> orders) =>
        transaction.All<long>(CountTry, new { orders }).Max();

    private const string ForgetTries =
        "UPDATE cutting_order SET tries = 0 WHERE order_number IN @orders";

    /// <summary>Planning ended alive and for no fault of these orders.</summary>
    public static void NotBegun(StoreTransaction transaction, IReadOnlyList<string> orders) =>
        transaction.Execute(ForgetTries, new { orders });

    private const string SelectQueue =
        """
        SELECT o.order_number AS OrderNumber, o.revision AS Revision, o.needed_by AS NeededBy,
               o.confirmed_at AS ConfirmedAt, o.state AS State, o.refusals AS Refusals,
               count(p.piece_id) AS Pieces,
               count(p.cut_at) AS PiecesCut, count(DISTINCT p.roll_id) AS Rolls,
               group_concat(DISTINCT CASE WHEN p.cut_at IS NULL THEN p.roll_id END) AS RollIds
        FROM cutting_order o
        LEFT JOIN piece p ON p.order_number = o.order_number AND p.voided_at IS NULL
        WHERE (o.confirmed_at, o.order_number) > (@confirmedAt, @number)
        GROUP BY o.order_number
        HAVING o.state <> 'planned' OR count(p.cut_at) < count(p.piece_id)
        ORDER BY o.confirmed_at, o.order_number LIMIT @most
        """;

    /// <summary>What is not yet cut behind an order, oldest first.</summary>
    public static IReadOnlyList<QueueRow> Queue(
        StoreTransaction view, long confirmedAt, string number, int most) =>
        view.All<QueueRow>(SelectQueue, new { confirmedAt, number, most });
}

internal sealed record OrderRow
{
    public required string OrderNumber { get; init; }

    public required long Revision { get; init; }

    public required string NeededBy { get; init; }

    public required long ConfirmedAt { get; init; }

    public required string State { get; init; }

    public required long? DecidedAt { get; init; }

    /// <summary>How often it was decided on; 0 before its first plan.</summary>
    public required long PlanNumber { get; init; }

    public required string? Refusals { get; init; }

    /// <summary>Wished so; it stays until the order is pooled otherwise.</summary>
    public required bool OnePlaneAtATime { get; init; }
}

internal sealed record QueueRow
{
    public required string OrderNumber { get; init; }

    public required long Revision { get; init; }

    public required string NeededBy { get; init; }

    public required long ConfirmedAt { get; init; }

    public required string State { get; init; }

    public required string? Refusals { get; init; }

    public required long Pieces { get; init; }

    public required long PiecesCut { get; init; }

    public required long Rolls { get; init; }

    public required string? RollIds { get; init; }
}
