using PostFrame.Messaging;

namespace PostFrame.CuttingWorker.Plans;

/// <summary>The cuts of a plan, one by one, as the bench makes them.</summary>
internal static class CutStore
{
    private const string SelectCuts =
        """
        SELECT pl.plan_id AS PlanId, pl.product AS Product, pl.width_nm AS WidthNm,
               pl.lower_bound_rolls AS LowerBoundRolls, pl.proven AS Proven, pl.method AS Method,
               pl.explanation AS Explanation, pl.planned_at AS PlannedAt,
               r.roll_id AS RollId, r.number AS Number, r.stock_id AS StockId,
               r.roll_length_nm AS RollLengthNm, r.end_trim_nm AS EndTrimNm,
               r.left_over_nm AS LeftOverNm, r.leaves_offcut AS LeavesOffcut,
               r.spoiled_nm AS SpoiledNm, r.finished_at AS FinishedAt, s.lot AS Lot,
               p.piece_id AS PieceId, p.order_number AS OrderNumber, p.mark AS Mark,
               p.plane AS Plane, p.sequence AS Sequence, p.cut_nm AS CutNm,
               p.cut_text AS CutText, p.cut_at AS CutAt, p.voided_at AS VoidedAt
        FROM piece p
        JOIN roll r ON r.roll_id = p.roll_id
        JOIN plan pl ON pl.plan_id = r.plan_id
        LEFT JOIN stock s ON s.stock_id = r.stock_id
        WHERE p.roll_id IN (SELECT roll_id FROM piece WHERE order_number = @order
                              AND voided_at IS NULL AND roll_id IS NOT NULL)
        ORDER BY pl.product, pl.width_nm, pl.plan_id, r.number, p.sequence
        """;

    /// <summary>
    /// Every cut on every roll that holds a piece of the order, in cutting order.
    /// </summary>
    public static IReadOnlyList<CutRow> OfOrder(StoreTransaction view, string order) =>
        view.All<CutRow>(SelectCuts, new { order });

    private const string CountRolls = "SELECT count(*) FROM roll WHERE plan_id = @planId";

    /// <summary>The rolls of a whole plan, also those of other orders alone.</summary>
    public static int RollsOf(StoreTransaction view, long planId) =>
        (int)view.Single<long>(CountRolls, new { planId });

    private const string SelectPiece =
        """
        SELECT p.piece_id AS PieceId, p.order_number AS OrderNumber, p.mark AS Mark,
               p.cut_nm AS CutNm, p.roll_id AS RollId, p.cut_at AS CutAt,
               p.voided_at AS VoidedAt, o.state AS OrderState
        FROM piece p JOIN cutting_order o ON o.order_number = p.order_number
        WHERE p.piece_id = @piece
        """;

    public static PieceRow? Piece(StoreTransaction view, string piece) =>
        view.Single<PieceRow>(SelectPiece, new { piece });

    private const string SetCut =
        "UPDATE piece SET cut_at = @now WHERE piece_id = @piece AND cut_at IS NULL";

    public static void Cut(StoreTransaction transaction, string piece) =>
        transaction.Execute(SetCut, new { piece, now = transaction.NowUnixMs });

    private const string TakeOff =
        """
        UPDATE piece SET cut_at = NULL, roll_id = NULL, sequence = NULL WHERE piece_id = @piece
        """;

    private const string AddSpoiled =
        "UPDATE roll SET spoiled_nm = spoiled_nm + @lengthNm WHERE roll_id = @rollId";

    /// <summary>The piece must be cut again; its roll has lost the length.</summary>
    public static void Spoil(
        StoreTransaction transaction, string piece, long rollId, long lengthNm)
    {
        transaction.Execute(TakeOff, new { piece });
        transaction.Execute(AddSpoiled, new { rollId, lengthNm });
    }

    private const string SelectRoll =
        """
        SELECT r.roll_id AS RollId, pl.product AS Product, pl.width_nm AS WidthNm,
               r.stock_id AS StockId, r.roll_length_nm AS RollLengthNm,
               r.end_trim_nm AS EndTrimNm, r.left_over_nm AS LeftOverNm,
               r.leaves_offcut AS LeavesOffcut, r.spoiled_nm AS SpoiledNm,
               r.finished_at AS FinishedAt,
               count(p.piece_id) AS Pieces, count(p.cut_at) AS PiecesCut,
               coalesce(sum(CASE WHEN p.cut_at IS NOT NULL THEN p.cut_nm END), 0) AS CutNm
        FROM roll r
        JOIN plan pl ON pl.plan_id = r.plan_id
        LEFT JOIN piece p ON p.roll_id = r.roll_id
        WHERE r.roll_id = @rollId
        GROUP BY r.roll_id
        """;

    public static BenchRollRow? Roll(StoreTransaction view, long rollId) =>
        view.Single<BenchRollRow>(SelectRoll, new { rollId });

    private const string SelectOrders =
        """
        SELECT DISTINCT order_number FROM piece
        WHERE roll_id = @rollId AND cut_at IS NULL ORDER BY order_number
        """;

    /// <summary>The orders that still have a cut to come from this roll.</summary>
    public static IReadOnlyList<string> OrdersOn(StoreTransaction view, long rollId) =>
        view.All<string>(SelectOrders, new { rollId });

    private const string SetShort =
        "UPDATE roll SET roll_length_nm = @lengthNm, is_short = 1 WHERE roll_id = @rollId";

    public static void Shorten(StoreTransaction transaction, long rollId, long lengthNm) =>
        transaction.Execute(SetShort, new { rollId, lengthNm });

    private const string SetFinished =
        "UPDATE roll SET finished_at = @now WHERE roll_id = @rollId";

    public static void Finish(StoreTransaction transaction, long rollId) =>
        transaction.Execute(SetFinished, new { rollId, now = transaction.NowUnixMs });
}

internal sealed record CutRow
{
    public required long PlanId { get; init; }

    public required string Product { get; init; }

    public required long WidthNm { get; init; }

    public required long LowerBoundRolls { get; init; }

    public required bool Proven { get; init; }

    public required string Method { get; init; }

    public required string Explanation { get; init; }

    public required long PlannedAt { get; init; }

    public required long RollId { get; init; }

    public required long Number { get; init; }

    public required string? StockId { get; init; }

    public required string? Lot { get; init; }

    public required long RollLengthNm { get; init; }

    public required long EndTrimNm { get; init; }

    public required long LeftOverNm { get; init; }

    public required bool LeavesOffcut { get; init; }

    public required long SpoiledNm { get; init; }

    public required long? FinishedAt { get; init; }

    public required string PieceId { get; init; }

    public required string OrderNumber { get; init; }

    public required string Mark { get; init; }

    public required string Plane { get; init; }

    public required long Sequence { get; init; }

    public required long CutNm { get; init; }

    public required string CutText { get; init; }

    public required long? CutAt { get; init; }

    public required long? VoidedAt { get; init; }
}

internal sealed record PieceRow
{
    public required string PieceId { get; init; }

    public required string OrderNumber { get; init; }

    public required string Mark { get; init; }

    public required long CutNm { get; init; }

    public required long? RollId { get; init; }

    public required long? CutAt { get; init; }

    public required long? VoidedAt { get; init; }

    public required string OrderState { get; init; }
}

internal sealed record BenchRollRow
{
    public required long RollId { get; init; }

    public required string Product { get; init; }

    public required long WidthNm { get; init; }

    public required string? StockId { get; init; }

    public required long RollLengthNm { get; init; }

    public required long EndTrimNm { get; init; }

    public required long LeftOverNm { get; init; }

    public required bool LeavesOffcut { get; init; }

    public required long SpoiledNm { get; init; }

    public required long? FinishedAt { get; init; }

    public required long Pieces { get; init; }

    public required long PiecesCut { get; init; }

    public required long CutNm { get; init; }
}
