using PostFrame.CuttingWorker.Planning;
using Xunit;

namespace PostFrame.PlanningTests;

/// <summary>The check is checked: each way of breaking a good plan is noticed and named.</summary>
public sealed class PlanCheckTests
{
    private static readonly CuttingProblem Problem = new()
    {
        Items =
        [
            new CuttingItem("long", 700, 2, "roofA"),
            new CuttingItem("short", 250, 3, "roofA"),
        ],
        Stock =
        [
            new StockType { Key = "roll", LengthNm = 1010, EndTrimNm = 10, Count = 4, Lot = "L1" },
            new StockType { Key = "rest", LengthNm = 310, EndTrimNm = 10, Count = 1, Lot = "L2" },
        ],
        MinUsefulOffcutNm = 40,
    };

    private static readonly CuttingPlan Good = CuttingStock.Plan(Problem, PlanLimits.Default);

    [Fact]
    public void A_good_plan_is_accepted() => Assert.Empty(PlanCheck.Check(Problem, Good));

    [Fact]
    public void A_missing_piece_is_noticed() =>
        Refuses("demand", Good with { Rolls = [.. Good.Rolls.Skip(1)] });

    [Fact]
    public void A_piece_cut_short_is_noticed() => Refuses("demand", First(
        r => r with { Cuts = [r.Cuts[0] with { LengthNm = 699 }, .. r.Cuts.Skip(1)] }));

    [Fact]
    public void A_roll_cut_beyond_its_end_trim_is_noticed() => Refuses("capacity", First(
        r => r with { Cuts = [.. r.Cuts, new PlannedCut("short", 250, 9)] }));

    [Fact]
    public void A_wrong_left_over_is_noticed() => Refuses(
        "left-over", First(r => r with { LeftOverNm = r.LeftOverNm + 1 }));

    [Fact]
    public void An_offcut_called_scrap_is_noticed() => Refuses(
        "left-over", First(r => r with { LeavesOffcut = !r.LeavesOffcut }));

    [Fact]
    public void More_rolls_than_are_at_hand_are_noticed() => Refuses(
        "stock-count", First(r => r with { Times = 5 }));

    [Fact]
    public void Pieces_of_one_plane_from_two_lots_are_noticed() => Refuses("lot", Good with
    {
        Rolls = [.. Good.Rolls, new PlannedRoll
        {
            StockKey = "rest",
            Times = 1,
            Cuts = [new PlannedCut("short", 250, 1)],
            LeftOverNm = 50,
            LeavesOffcut = true,
        }],
    });

    [Fact]
    public void A_bound_above_the_plan_is_noticed() =>
        Refuses("bound", Good with { LowerBoundCost = Good.Cost + 1 });

    [Fact]
    public void A_proof_with_a_gap_is_noticed() =>
        Refuses("bound", Good with { LowerBoundCost = Good.Cost - 1, Proven = true });

    [Fact]
    public void A_wrong_roll_count_is_noticed() =>
        Refuses("total", Good with { RollCount = Good.RollCount + 1 });

    [Fact]
    public void A_wrong_cost_is_noticed() => Refuses("total", Good with { Cost = Good.Cost + 1 });

    [Fact]
    public void Stock_the_problem_does_not_have_is_noticed() =>
        Refuses("unknown-key", First(r => r with { StockKey = "none" }));

    [Fact]
    public void An_item_the_problem_does_not_have_is_noticed() => Refuses("unknown-key", First(
        r => r with { Cuts = [r.Cuts[0] with { ItemKey = "none" }, .. r.Cuts.Skip(1)] }));

    private static CuttingPlan First(Func<PlannedRoll, PlannedRoll> change) =>
        Good with { Rolls = [change(Good.Rolls[0]), .. Good.Rolls.Skip(1)] };

    private static void Refuses(string rule, CuttingPlan broken) => Assert.Contains(
        PlanCheck.Check(Problem, broken), v => v.Rule == rule && v.Text.Length > 10);
}
