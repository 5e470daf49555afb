using PostFrame.Messaging;

namespace PostFrame.CuttingWorker.Plans;

/// <summary>The plans: rolls, the places of pieces on them, and what was cut already.</summary>
internal static class PlanStore
{
    private const string SelectScope =
        """
        WITH RECURSIVE scope (order_number) AS (
          SELECT order_number FROM cutting_order WHERE order_number = @order
          UNION
          SELECT o.order_number FROM cutting_order o
          WHERE o.state = 'waiting' AND o.pool = (
            SELECT pool FROM cutting_order WHERE order_number = @order)
          UNION
          SELECT other.order_number
          FROM scope
          JOIN piece mine ON mine.order_number = scope.order_number
          JOIN roll mineRoll ON mineRoll.roll_id = mine.roll_id
          JOIN roll otherRoll ON otherRoll.plan_id = mineRoll.plan_id
          JOIN piece other ON other.roll_id = otherRoll.roll_id
        )
        SELECT scope.order_number FROM scope
        JOIN cutting_order o ON o.order_number = scope.order_number AND o.state <> 'refused'
        ORDER BY o.needed_by, o.confirmed_at, o.order_number
        """;

    /// <summary>The orders planned together with this one, in the order they are needed.</summary>
    public static IReadOnlyList<string> Scope(StoreTransaction view, string order) =>
        view.All<string>(SelectScope, new { order });

    private const string SelectOpen =
        """
        SELECT piece_id AS PieceId, order_number AS OrderNumber, mark AS Mark, plane AS Plane,
               product AS Product, width_nm AS WidthNm, cut_nm AS CutNm
        FROM piece
        WHERE order_number IN @orders AND cut_at IS NULL AND voided_at IS NULL
        ORDER BY order_number, place
        """;

    /// <summary>The pieces still to be cut.</summary>
    public static IReadOnlyList<OpenPieceRow> Open(
        StoreTransaction view, IReadOnlyList<string> orders) =>
        view.All<OpenPieceRow>(SelectOpen, new { orders });

    private const string SelectPlans =
        """
        SELECT DISTINCT r.plan_id FROM piece p JOIN roll r ON r.roll_id = p.roll_id
        WHERE p.order_number IN @orders
        """;

    /// <summary>The plans these orders have pieces in.</summary>
    public static IReadOnlyList<long> PlansOf(
        StoreTransaction view, IReadOnlyList<string> orders) =>
        view.All<long>(SelectPlans, new { orders });

    private const string SelectRolls =
        """
        SELECT r.roll_id AS RollId, r.number AS Number, pl.product AS Product,
               pl.width_nm AS WidthNm, r.stock_id AS StockId, r.roll_length_nm AS RollLengthNm,
               r.end_trim_nm AS EndTrimNm, r.spoiled_nm AS SpoiledNm, r.is_short AS IsShort,
               max(s.lot) AS Lot,
               r.finished_at AS FinishedAt,
               coalesce(sum(CASE WHEN p.cut_at IS NOT NULL THEN p.cut_nm END), 0) AS CutNm,
               coalesce(max(CASE WHEN p.cut_at IS NOT NULL THEN p.sequence END), 0) AS LastCut
        FROM roll r
        JOIN plan pl ON pl.plan_id = r.plan_id
        LEFT JOIN stock s ON s.stock_id = r.stock_id
        LEFT JOIN piece p ON p.roll_id = r.roll_id
        WHERE r.plan_id IN @plans
        GROUP BY r.roll_id ORDER BY r.plan_id, r.number
        """;

    /// <summary>The rolls of these plans, with what is cut from them already.</summary>
    public static IReadOnlyList<RollRow> Rolls(StoreTransaction view, IReadOnlyList<long> plans) =>
        view.All<RollRow>(SelectRolls, new { plans });

    private const string SelectOffers =
        """
        SELECT DISTINCT product AS Product, width_nm AS WidthNm, roll_length_nm AS RollLengthNm,
               end_trim_nm AS EndTrimNm, min_useful_offcut_nm AS MinUsefulOffcutNm
        FROM offered_roll WHERE order_number IN @orders
        ORDER BY product, width_nm, roll_length_nm
        """;

    /// <summary>The rolls that can always be had for these orders.</summary>
    public static IReadOnlyList<OfferRow> Offers(
        StoreTransaction view, IReadOnlyList<string> orders) =>
        view.All<OfferRow>(SelectOffers, new { orders });

    private const string SelectChanges = "SELECT changes FROM bench";

    public static long Changes(StoreTransaction view) => view.Single<long>(SelectChanges);

    private const string UpdateChanges = "UPDATE bench SET changes = changes + 1";

    /// <summary>Says that pieces, rolls or stock are no longer as they were.</summary>
    public static void CountChange(StoreTransaction transaction) =>
        transaction.Execute(UpdateChanges);

    private const string InsertPlan =
        """
        INSERT INTO plan (product, width_nm, lower_bound_rolls, proven, method, explanation,
                          planned_at)
        VALUES (@Product, @WidthNm, @LowerBoundRolls, @Proven, @Method, @Explanation, @now)
        RETURNING plan_id
        """;

    public static long AddPlan(StoreTransaction transaction, GroupPlan plan, int keptRolls) =>
        transaction.Single<long>(InsertPlan, new
        {
            plan.Product,
            plan.WidthNm,
            LowerBoundRolls = plan.LowerBoundRolls + keptRolls,
            plan.Proven,
            plan.Method,
            plan.Explanation,
            now = transaction.NowUnixMs,
        });

    private const string InsertRoll =
        """
        INSERT INTO roll (plan_id, number, stock_id, roll_length_nm, end_trim_nm, left_over_nm,
                          leaves_offcut)
        VALUES (@planId, @number, @StockId, @RollLengthNm, @EndTrimNm, @LeftOverNm,
                @LeavesOffcut)
        RETURNING roll_id
        """;

    public static long AddRoll(
        StoreTransaction transaction, long planId, int number, RollPlan roll) =>
        transaction.Single<long>(InsertRoll, new
        {
            planId,
            number,
            roll.StockId,
            roll.RollLengthNm,
            roll.EndTrimNm,
            roll.LeftOverNm,
            roll.LeavesOffcut,
        });

    private const string UpdateRoll =
        """
        UPDATE roll SET plan_id = @planId, number = @number,
               left_over_nm = CASE WHEN finished_at IS NULL THEN @leftOverNm ELSE left_over_nm END,
               leaves_offcut = CASE WHEN finished_at IS NULL THEN @leavesOffcut
                                    ELSE leaves_offcut END
        WHERE roll_id = @rollId
        """;

    /// <summary>A begun or finished roll goes on in a new plan.</summary>
    public static void KeepRoll(
        StoreTransaction transaction, long rollId, long planId, int number, long leftOverNm,
        bool leavesOffcut) =>
        transaction.Execute(UpdateRoll, new { rollId, planId, number, leftOverNm, leavesOffcut });

    private const string ClearPlaces =
        """
        UPDATE piece SET roll_id = NULL, sequence = NULL
        WHERE cut_at IS NULL AND roll_id IN (SELECT roll_id FROM roll WHERE plan_id IN @plans)
        """;

    /// <summary>Takes every uncut piece of these plans off its roll.</summary>
    public static void Unplace(StoreTransaction transaction, IReadOnlyList<long> plans) =>
        transaction.Execute(ClearPlaces, new { plans });

    private const string SelectSharing =
        """
        SELECT DISTINCT other.order_number
        FROM piece mine
        JOIN roll mineRoll ON mineRoll.roll_id = mine.roll_id
        JOIN roll otherRoll ON otherRoll.plan_id = mineRoll.plan_id
        JOIN piece other ON other.roll_id = otherRoll.roll_id
        WHERE mine.order_number IN @orders AND other.order_number NOT IN @orders
          AND other.voided_at IS NULL
        ORDER BY other.order_number
        """;

    private const string ClearPlacesOf =
        """
        UPDATE piece SET roll_id = NULL, sequence = NULL
        WHERE cut_at IS NULL AND order_number IN @orders
        """;

    /// <summary>
    /// Takes orders off their rolls; answers the others that shared a plan with them and have to be
    /// planned anew too.
    /// </summary>
    public static IReadOnlyList<string> TakeApart(
        StoreTransaction transaction, IReadOnlyList<string> orders)
    {
        var sharing = transaction.All<string>(SelectSharing, new { orders });
        transaction.Execute(ClearPlacesOf, new { orders });
        ClearEmpty(transaction);
        return sharing;
    }

    private const string SetPlace =
        "UPDATE piece SET roll_id = @rollId, sequence = @sequence WHERE piece_id = @piece";

    public static void Place(
        StoreTransaction transaction, string piece, long rollId, long sequence) =>
        transaction.Execute(SetPlace, new { piece, rollId, sequence });

    private const string DeleteEmptyRolls =
        """
        DELETE FROM roll WHERE spoiled_nm = 0 AND is_short = 0 AND finished_at IS NULL
          AND NOT EXISTS (SELECT 1 FROM piece WHERE piece.roll_id = roll.roll_id)
        """;

    private const string DeleteEmptyPlans =
        """
        DELETE FROM plan
        WHERE NOT EXISTS (SELECT 1 FROM roll WHERE roll.plan_id = plan.plan_id)
        """;

    /// <summary>
    /// Lets go of rolls nothing is cut from any more, and of plans without rolls.
    /// </summary>
    public static void ClearEmpty(StoreTransaction transaction)
    {
        transaction.Execute(DeleteEmptyRolls);
        transaction.Execute(DeleteEmptyPlans);
    }
}

internal sealed record OpenPieceRow
{
    public required string PieceId { get; init; }

    public required string OrderNumber { get; init; }

    public required string Mark { get; init; }

    public required string Plane { get; init; }

    public required string Product { get; init; }

    public required long WidthNm { get; init; }

    public required long CutNm { get; init; }
}

internal sealed record RollRow
{
    public required long RollId { get; init; }

    public required long Number { get; init; }

    public required string Product { get; init; }

    public required long WidthNm { get; init; }

    public required string? StockId { get; init; }

    public required string? Lot { get; init; }

    public required long RollLengthNm { get; init; }

    public required long EndTrimNm { get; init; }

    public required long SpoiledNm { get; init; }

    public required bool IsShort { get; init; }

    public required long? FinishedAt { get; init; }

    public required long CutNm { get; init; }

    public required long LastCut { get; init; }

    /// <summary>
    /// Something was cut from it, or its true length was measured: it must be kept.
    /// </summary>
    public bool IsBegun => CutNm > 0 || SpoiledNm > 0 || IsShort || FinishedAt is not null;

    /// <summary>What can still be cut from it [nm].</summary>
    public long LeftNm => RollLengthNm - EndTrimNm - CutNm - SpoiledNm;
}

internal sealed record OfferRow
{
    public required string Product { get; init; }

    public required long WidthNm { get; init; }

    public required long RollLengthNm { get; init; }

    public required long EndTrimNm { get; init; }

    public required long MinUsefulOffcutNm { get; init; }
}
