using PostFrame.CuttingWorker.Planning;

namespace PostFrame.CuttingWorker.Plans;

/// <summary>
/// Pieces and the rolls at hand in, a checked plan per product and width out. Pure: the same input
/// gives the same plan unless cancelled, which only ends the search early.
/// </summary>
public static class PlanPieces
{
    /// <summary>
    /// A bought roll costs its length [mm]; what lies on the rack costs a thousandth of that, so
    /// that it is used before anything is bought, and the shorter one where either would do.
    /// </summary>
    private const long NmPerCost = 1_000_000;

    private const long NmPerRackCost = 1_000_000_000;

    /// <param name="pieces">What has to be cut.</param>
    /// <param name="wish">
    /// Their orders, in the order they are needed, and whether each plane is finished before the
    /// next.
    /// </param>
    /// <param name="rolls">What they can be cut from.</param>
    /// <param name="minUsefulOffcutNm">Least left-over to keep, by product and width [nm].</param>
    /// <param name="limits">Work allowed for each product and width.</param>
    /// <param name="cancel">Ends the search early.</param>
    public static PlanSet Plan(
        IReadOnlyList<OpenPiece> pieces, CuttingWish wish, IReadOnlyList<RollAtHand> rolls,
        IReadOnlyDictionary<(string Product, long WidthNm), long> minUsefulOffcutNm,
        PlanLimits limits, CancellationToken cancel)
    {
        var plans = new List<GroupPlan>();
        var refusals = new List<Refusal>();
        var groups = pieces.GroupBy(piece => (piece.Product, piece.WidthNm))
            .OrderBy(group => group.Key.Product, StringComparer.Ordinal)
            .ThenBy(group => group.Key.WidthNm);
        foreach (var group in groups)
        {
            var rack = rolls.Where(roll => (roll.Product, roll.WidthNm) == group.Key).ToList();
            var problem = ProblemOf(
                group, rack, minUsefulOffcutNm.GetValueOrDefault(group.Key, long.MaxValue));
            var planeOf = group.ToDictionary(piece => piece.PieceId, piece => piece.Plane);
            var apart = wish.OnePlaneAtATime
                ? PlaneByPlane.Plan(problem, piece => planeOf[piece], limits, cancel) : null;
            var plan = apart ?? Mixed(problem, wish, limits, cancel);
            var found = RefusalsOf(group.Key, [.. group], rack, problem, plan);
            refusals.AddRange(found);
            if (found.Count == 0)
            {
                var written = Written(group.Key, rack, plan);
                plans.Add(written with
                {
                    Rolls = apart is not null
                        ? BenchOrdering.StripAfterStrip(written.Rolls, [.. group])
                        : BenchOrdering.Of(
                            written.Rolls, [.. group], wish.Orders, limits, cancel),
                });
            }
        }

        return new PlanSet { Plans = refusals.Count == 0 ? plans : [], Refusals = refusals };
    }

    private static CuttingPlan Mixed(
        CuttingProblem problem, CuttingWish wish, PlanLimits limits, CancellationToken cancel)
    {
        var plan = CuttingStock.Plan(problem, limits, cancel);
        return wish.OnePlaneAtATime && plan.Refusals.Count == 0
            ? plan with
            {
                Explanation = "Planned one after another, planes found no roll for every piece, so "
                    + $"they are planned together. {plan.Explanation}",
            }
            : plan;
    }

    private static CuttingProblem ProblemOf(
        IEnumerable<OpenPiece> pieces, List<RollAtHand> rack, long minUsefulOffcutNm) => new()
        {
            Items = [.. pieces.Select(
                piece => new CuttingItem(
                    piece.PieceId, piece.CutNm, Demand: 1, Shades.GroupOf(piece)))],
            Stock = StockOf(rack),
            CostText = CostText(rack),
            MinUsefulOffcutNm = minUsefulOffcutNm,
        };

    /// <summary>
    /// Where every roll costs the same, each costs one: the cost is the roll count.
    /// </summary>
    internal static List<StockType> StockOf(List<RollAtHand> rack)
    {
        var costs = rack.Select(CostOf).ToList();
        var alike = costs.Distinct().Count() == 1;
        return [.. rack.Select((roll, index) => new StockType
        {
            Key = KeyOf(index),
            LengthNm = roll.LengthNm,
            EndTrimNm = Math.Min(roll.EndTrimNm, roll.LengthNm),
            Count = IsOne(roll) ? 1 : null,
            Cost = alike ? 1 : costs[index],
            IsRemnant = roll.IsOffcut || roll.Begun is not null,
            Lot = roll.Lot,
            AgeDays = roll.AgeDays,
        })];
    }

    /// <summary>A total of these costs as the foreman reads it.</summary>
    internal static Func<long, string> CostText(IReadOnlyList<RollAtHand> rack)
    {
        if (rack.Select(CostOf).Distinct().Count() == 1)
        {
            return cost => cost == 1 ? "1 roll" : $"{cost} rolls";
        }

        var counted = (rack.Any(roll => roll.IsOffcut)
                ? ", an offcut counted as a thousandth of its length" : "")
            + (rack.Any(roll => roll.Begun is not null) ? ", begun rolls not counted" : "");
        return cost => $"{Words.Length(cost * NmPerCost)} of roll{counted}";
    }

    private static long CostOf(RollAtHand roll) => roll switch
    {
        { Begun: not null } => 0,
        { IsOffcut: true } => Math.Max(1, roll.LengthNm / NmPerRackCost),
        _ => Math.Max(1, roll.LengthNm / NmPerCost),
    };

    private static bool IsOne(RollAtHand roll) =>
        roll.StockId is not null || roll.Begun is not null;

    private static string KeyOf(int index) => $"roll {index}";

    private static List<Refusal> RefusalsOf(
        (string Product, long WidthNm) group, List<OpenPiece> pieces, List<RollAtHand> rack,
        CuttingProblem problem, CuttingPlan plan)
    {
        var title = Words.Title(group.Product, group.WidthNm);
        if (rack.Count == 0)
        {
            return [new Refusal(Refusal.NoRoll, null, null,
                $"No roll of {title}, {Words.Width(group.WidthNm)} wide, is offered with this "
                + "order or in stock.") { Group = group }];
        }

        var byId = pieces.ToDictionary(piece => piece.PieceId);
        var longest = rack.Max(roll => roll.LengthNm - roll.EndTrimNm);
        var refused = plan.Refusals.Select(refusal =>
            refusal.Code == "too-long-for-any-roll" && byId.TryGetValue(refusal.Key!, out var piece)
                ? new Refusal(Refusal.TooLong, piece.PieceId, piece.Mark,
                    $"Piece {piece.Mark} is {Words.Length(piece.CutNm, group.WidthNm)} long; the "
                    + $"longest roll of {title}, {Words.Width(group.WidthNm)} wide, gives "
                    + $"{Words.Length(longest, group.WidthNm)}.")
                : new Refusal(Refusal.PlanRefused, null, null, refusal.Text) { Group = group });
        var unmet = plan.Unmet.Select(left => new Refusal(
            Refusal.PlanRefused, left.Key, byId[left.Key].Mark,
            $"No roll is left for piece {byId[left.Key].Mark}."));
        var check = PlanCheck.Check(problem, plan).Select(violation => new Refusal(
            Refusal.PlanRefused, null, null, $"The plan failed its check: {violation.Text}")
        {
            Group = group,
        });
        return [.. refused, .. unmet, .. check];
    }

    private static GroupPlan Written(
        (string Product, long WidthNm) group, List<RollAtHand> rack, CuttingPlan plan)
    {
        var byKey = rack.Select((roll, index) => (roll, key: KeyOf(index)))
            .ToDictionary(pair => pair.key, pair => pair.roll);
        return new GroupPlan
        {
            Product = group.Product,
            WidthNm = group.WidthNm,
            LowerBoundRolls = plan.LowerBoundRolls,
            Proven = plan.Proven,
            Method = plan.Method,
            Explanation = plan.Explanation,
            Rolls = [.. plan.Rolls.SelectMany(roll => Enumerable.Repeat(roll, roll.Times))
                .Select(roll => Written(byKey[roll.StockKey], roll))],
        };
    }

    private static RollPlan Written(RollAtHand from, PlannedRoll roll) => new()
    {
        StockId = from.StockId,
        GoesOnWith = from.Begun,
        Lot = from.Lot,
        RollLengthNm = from.LengthNm,
        EndTrimNm = from.EndTrimNm,
        PieceIds = [.. roll.Cuts.SelectMany(cut => Enumerable.Repeat(cut.ItemKey, cut.Count))],
        LeftOverNm = roll.LeftOverNm,
        LeavesOffcut = roll.LeavesOffcut,
    };
}
