using PostFrame.CuttingWorker.Planning;
using Xunit;

namespace PostFrame.PlanningTests;

/// <summary>Each plane finished before the next is begun; by hand where not random.</summary>
public sealed class PlaneByPlaneTests
{
    private static readonly PlanLimits Limits = new() { WorkSeconds = 0.05 };

    private static readonly StockType Roll = new() { Key = "roll", LengthNm = 100 };

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    /// <summary>
    /// A wall piece beside a roof piece would take 2 rolls; the roof alone takes 1 and leaves 20,
    /// where no wall piece fits, and each of the wall takes its own.
    /// </summary>
    [Fact]
    public void Planes_that_fill_rolls_only_together_cost_more_apart()
    {
        var plan = Plan([("roof", 40, 2), ("wall", 60, 2)], Roll);

        Assert.Equal(["roof 40+40", "wall 60", "wall 60"], Cuts(plan));
        Assert.Equal((3, 2, false), (plan.RollCount, plan.LowerBoundRolls, plan.Proven));
        Assert.StartsWith("One plane at a time; with planes free to mix: ", plan.Explanation);
    }

    /// <summary>The roof's second roll has 55 left and goes on with the wall: 5 pieces, 3 rolls.
    /// </summary>
    [Fact]
    public void The_roll_on_the_stand_goes_on_with_the_next_plane()
    {
        var plan = Plan([("roof", 45, 3), ("wall", 55, 2)], Roll);

        Assert.Equal(["roof 45+45", "roof 45, wall 55", "wall 55"], Cuts(plan));
        Assert.Equal((3, 3, true), (plan.RollCount, plan.LowerBoundRolls, plan.Proven));
    }

    /// <summary>
    /// 60 and 60 leave 40 on each roll; one roll stays on the stand, the other is put away, so of
    /// four wall pieces of 40 only one comes from what the roof left. Mixed, 3 rolls would do.
    /// </summary>
    [Fact]
    public void What_other_rolls_leave_is_put_away()
    {
        var plan = Plan([("roof", 60, 2), ("wall", 40, 4)], Roll);

        Assert.Equal(["roof 60", "roof 60, wall 40", "wall 40+40", "wall 40"], Cuts(plan));
        Assert.Equal((4, 3, false), (plan.RollCount, plan.LowerBoundRolls, plan.Proven));
    }

    /// <summary>
    /// Twelve of 18 as 5 + 5 + 2 leave 64 on one roll, room for three of the wall, and one roll
    /// more holds its other five; as 4 + 4 + 4 they leave room for one.
    /// </summary>
    [Fact]
    public void A_plane_leaves_as_much_as_it_can_on_the_roll_on_the_stand()
    {
        var plan = Plan([("roof", 18, 12), ("wall", 20, 8)], Roll);

        Assert.Equal(
            ["roof 18+18+18+18+18", "roof 18+18+18+18+18", "roof 18+18, wall 20+20+20",
                "wall 20+20+20+20+20"],
            Cuts(plan));
    }

    /// <summary>Whole planes fit one after another on one roll.</summary>
    [Fact]
    public void One_roll_may_serve_several_planes()
    {
        var plan = Plan([("a", 30, 1), ("b", 20, 2), ("c", 25, 1)], Roll);

        Assert.Equal(["a 30, b 20+20, c 25"], Cuts(plan));
        Assert.Equal(5, Assert.Single(plan.Rolls).LeftOverNm);
        Assert.True(plan.Proven);
    }

    /// <summary>Two rolls hold all of it mixed and no third one is there.</summary>
    [Fact]
    public void There_is_no_plan_where_rolls_do_not_suffice_to_keep_planes_apart() =>
        Assert.Null(PlaneByPlane.Plan(
            Problem([("roof", 40, 2), ("wall", 60, 2)], Roll with { Count = 2 }), key => key,
            Limits, Cancel));

    /// <summary>
    /// Twelve of 18 as 4 + 4 + 4 leave 28 three times, all worth keeping; gathered for a plane to
    /// come, as 5 + 5 + 2, they would leave 64 and twice 10 of scrap.
    /// </summary>
    [Fact]
    public void After_the_last_plane_nothing_is_moved()
    {
        var problem = Problem([("roof", 50, 2), ("wall", 18, 12)], Roll) with
        {
            MinUsefulOffcutNm = 20,
        };
        var plan = PlaneByPlane.Plan(problem, key => key, Limits, Cancel)!;

        Assert.Equal(84, plan.Rolls.Where(roll => roll.LeavesOffcut).Sum(r => r.LeftOverNm));
    }

    /// <summary>An offcut serves the first plane it fits; what it leaves is not bought again.
    /// </summary>
    [Fact]
    public void What_lies_on_the_rack_is_used_once()
    {
        var plan = Plan(
            [("roof", 70, 1), ("wall", 50, 1)], Roll with { Cost = 100 },
            new StockType { Key = "offcut", LengthNm = 60, Count = 1, Cost = 1, IsRemnant = true });

        Assert.Equal(["roof 70", "wall 50"], Cuts(plan));
        Assert.Equal(["roll", "offcut"], plan.Rolls.Select(roll => roll.StockKey));
        Assert.Equal(101, plan.Cost);
    }

    [Fact]
    public void A_piece_no_roll_gives_is_refused_whatever_its_plane()
    {
        var plan = Plan([("roof", 101, 1), ("wall", 50, 1)], Roll);

        Assert.Equal("too-long-for-any-roll", Assert.Single(plan.Refusals).Code);
        Assert.Empty(plan.Rolls);
    }

    /// <summary>
    /// Own count over the rolls as listed: whoever cuts them in turn never comes back to a plane.
    /// </summary>
    [Fact]
    public void Random_planes_are_finished_one_after_another_on_plans_that_hold()
    {
        var (dearer, shared) = (0, 0);
        for (var seed = 0; seed < 600; seed++)
        {
            var (problem, planeOf) = Random(seed);
            if (PlaneByPlane.Plan(problem, key => planeOf[key], Limits, Cancel) is not { } plan)
                continue;
            Assert.Empty(PlanCheck.Check(problem, plan));
            if (plan.Refusals.Count > 0 || plan.Unmet.Count > 0)
                continue;
            var free = CuttingStock.Plan(problem, Limits, Cancel);
            Assert.True(plan.LowerBoundCost <= free.Cost, $"seed {seed}");
            Assert.True(free.LowerBoundCost <= plan.Cost, $"seed {seed}");
            // Which lot a plane gets is a choice made before planning, so neither is the least.
            Assert.True(HasLots(seed) || free.Cost <= plan.Cost, $"seed {seed}");
            var order = plan.Rolls.SelectMany(roll => roll.Cuts)
                .Select(cut => planeOf[cut.ItemKey]).ToList();
            var visits = order.Where((plane, at) => at == 0 || order[at - 1] != plane).ToList();
            Assert.Equal(problem.Items.Where(i => i.Demand > 0)
                .Select(i => planeOf[i.Key]).Distinct(), visits);
            dearer += plan.Cost > free.Cost ? 1 : 0;
            shared += plan.Rolls.Count(
                roll => roll.Cuts.Select(cut => planeOf[cut.ItemKey]).Distinct().Count() > 1);
        }

        Assert.True(dearer > 15 && shared > 100, $"{dearer} dearer, {shared} rolls shared");
    }

    private static bool HasLots(int seed) => seed % 3 == 0;

    private static (CuttingProblem Problem, Dictionary<string, string> PlaneOf) Random(int seed)
    {
        var problem = RandomProblems.Small(seed);
        var random = new Random(seed);
        var planes = random.Next(1, 4);
        List<CuttingItem> items = [.. Enumerable.Range(0, planes).SelectMany(plane => problem.Items
            .Select((item, k) => item with
            {
                Key = $"{plane}-{item.Key}",
                Demand = random.Next(0, 4),
                LotGroup = HasLots(seed) ? $"plane {plane}" : null,
            }))];
        return (
            problem with
            {
                Items = items,
                Stock = [.. problem.Stock.Select((stock, k) => stock with
                {
                    Lot = HasLots(seed) && k > 0 ? $"lot {k % 2}" : null,
                })],
            },
            items.ToDictionary(item => item.Key, item => $"plane {item.Key[0]}"));
    }

    private static CuttingPlan Plan(
        IReadOnlyList<(string Plane, long Length, int Count)> items, params StockType[] stock)
    {
        var problem = Problem(items, stock);
        var plan = PlaneByPlane.Plan(problem, key => key, Limits, Cancel)!;
        Assert.Empty(PlanCheck.Check(problem, plan));
        return plan;
    }

    private static CuttingProblem Problem(
        IReadOnlyList<(string Plane, long Length, int Count)> items, params StockType[] stock) =>
        new()
        {
            Items = [.. items.Select(item => new CuttingItem(
                item.Plane, item.Length, item.Count))],
            Stock = stock,
            MinUsefulOffcutNm = 10,
        };

    /// <summary>Each roll in turn: its planes and the lengths cut for each.</summary>
    private static IEnumerable<string> Cuts(CuttingPlan plan) =>
        plan.Rolls.SelectMany(roll => Enumerable.Repeat(
            string.Join(", ", roll.Cuts.Select(cut => $"{cut.ItemKey} "
                + string.Join('+', Enumerable.Repeat(cut.LengthNm, cut.Count)))), roll.Times));
}
