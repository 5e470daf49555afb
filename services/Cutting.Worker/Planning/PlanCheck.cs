using System.Numerics;

namespace PostFrame.CuttingWorker.Planning;

/// <summary>
/// Judges a plan by its own arithmetic, from the problem and the plan alone. It shares no code with
/// the planner, so an error there cannot hide here.
/// </summary>
public static class PlanCheck
{
    /// <summary>Everything wrong with the plan; empty when it may be cut.</summary>
    public static IReadOnlyList<PlanViolation> Check(CuttingProblem problem, CuttingPlan plan)
    {
        ArgumentNullException.ThrowIfNull(problem);
        ArgumentNullException.ThrowIfNull(plan);
        var found = new List<PlanViolation>();
        if (plan.Refusals.Count > 0)
        {
            if (plan.Rolls.Count > 0)
                found.Add(new("total", "plan", "A refused problem has rolls in its plan."));
            return found;
        }

        var items = problem.Items.ToDictionary(i => i.Key, StringComparer.Ordinal);
        var stock = problem.Stock.ToDictionary(s => s.Key, StringComparer.Ordinal);
        for (var r = 0; r < plan.Rolls.Count; r++)
            Roll($"roll {r + 1}", plan.Rolls[r], problem, items, stock, found);
        Demand(problem, plan, found);
        Stock(problem, plan, found);
        Lots(items, stock, plan, found);
        Totals(stock, plan, found);
        Bounds(problem, plan, found);
        return found;
    }

    private static void Roll(
        string where, PlannedRoll roll, CuttingProblem problem,
        Dictionary<string, CuttingItem> items, Dictionary<string, StockType> stock,
        List<PlanViolation> found)
    {
        if (!stock.TryGetValue(roll.StockKey, out var type))
        {
            found.Add(new("unknown-key", where, $"{where}: no stock type {roll.StockKey}."));
            return;
        }

        if (roll.Times < 1)
            found.Add(new("total", where, $"{where} is cut {roll.Times} times; at least 1."));
        BigInteger left = new BigInteger(type.LengthNm) - type.EndTrimNm;
        var usable = left;
        foreach (var cut in roll.Cuts)
        {
            left -= new BigInteger(cut.LengthNm) * cut.Count;
            if (cut.Count < 1)
                found.Add(new("demand", where,
                    $"{where}: {cut.Count} of {cut.ItemKey}; at least 1."));
            if (!items.TryGetValue(cut.ItemKey, out var item))
                found.Add(new("unknown-key", where, $"{where}: no item {cut.ItemKey}."));
            else if (item.LengthNm != cut.LengthNm)
                found.Add(new("demand", where,
                    $"{where}: {cut.ItemKey} cut at {cut.LengthNm} nm; it is {item.LengthNm} nm."));
        }

        if (left < 0)
            found.Add(new("capacity", where,
                $"{where}: {usable - left} nm are cut from a roll of {usable} nm usable."));
        if (left != roll.LeftOverNm)
            found.Add(new("left-over", where,
                $"{where}: left-over stated {roll.LeftOverNm} nm, is {left} nm."));
        if (roll.LeavesOffcut != (left > 0 && left >= problem.MinUsefulOffcutNm))
            found.Add(new("left-over", where,
                $"{where}: {left} nm left, least useful {problem.MinUsefulOffcutNm} nm, "
                + $"offcut stated {roll.LeavesOffcut}."));
    }

    private static void Demand(CuttingProblem problem, CuttingPlan plan, List<PlanViolation> found)
    {
        var cut = plan.Rolls
            .SelectMany(r => r.Cuts.Select(c => (c.ItemKey, Pieces: (long)c.Count * r.Times)))
            .GroupBy(c => c.ItemKey, StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => g.Sum(c => c.Pieces), StringComparer.Ordinal);
        var unmet = plan.Unmet.GroupBy(u => u.Key, StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => g.Sum(u => (long)u.Value), StringComparer.Ordinal);
        foreach (var item in problem.Items)
        {
            var got = cut.GetValueOrDefault(item.Key);
            var missing = unmet.GetValueOrDefault(item.Key);
            if (missing < 0 || got + missing != item.Demand)
                found.Add(new("demand", item.Key,
                    $"{item.Key}: {got} cut and {missing} stated unmet; {item.Demand} wanted."));
        }

        foreach (var key in unmet.Keys.Where(k => problem.Items.All(i => i.Key != k)))
            found.Add(new("unknown-key", key, $"Unmet {key} is no item of the problem."));
    }

    private static void Stock(CuttingProblem problem, CuttingPlan plan, List<PlanViolation> found)
    {
        foreach (var type in problem.Stock.Where(s => s.Count is not null))
        {
            var used = plan.Rolls.Where(r => r.StockKey == type.Key).Sum(r => (long)r.Times);
            if (used > type.Count)
                found.Add(new("stock-count", type.Key,
                    $"{type.Key}: {used} rolls used; {type.Count} at hand."));
        }
    }

    private static void Lots(
        Dictionary<string, CuttingItem> items, Dictionary<string, StockType> stock,
        CuttingPlan plan, List<PlanViolation> found)
    {
        var lots = plan.Rolls
            .Where(r => stock.ContainsKey(r.StockKey))
            .SelectMany(r => r.Cuts
                .Where(c => items.TryGetValue(c.ItemKey, out var i) && i.LotGroup is not null)
                .Select(c => (Group: items[c.ItemKey].LotGroup!, stock[r.StockKey].Lot)))
            .Distinct().GroupBy(g => g.Group, StringComparer.Ordinal);
        foreach (var group in lots.Where(g => g.Count() > 1))
            found.Add(new("lot", group.Key,
                $"{group.Key} is cut from lots "
                    + $"{string.Join(", ", group.Select(g => g.Lot ?? "none"))};"
                + " all of it must come from one."));
    }

    private static void Totals(
        Dictionary<string, StockType> stock, CuttingPlan plan, List<PlanViolation> found)
    {
        var rolls = plan.Rolls.Sum(r => (long)r.Times);
        if (rolls != plan.RollCount)
            found.Add(new("total", "plan", $"{plan.RollCount} rolls stated; {rolls} in the plan."));
        var cost = BigInteger.Zero;
        foreach (var roll in plan.Rolls.Where(r => stock.ContainsKey(r.StockKey)))
            cost += new BigInteger(stock[roll.StockKey].Cost) * roll.Times;
        if (cost != plan.Cost)
            found.Add(new("total", "plan", $"Cost stated {plan.Cost}; the rolls cost {cost}."));
    }

    /// <summary>
    /// A bound above the plan itself is false; so is a proof with a gap or unmet demand.
    /// </summary>
    private static void Bounds(CuttingProblem problem, CuttingPlan plan, List<PlanViolation> found)
    {
        var met = plan.Unmet.Count == 0;
        if (met && plan.LowerBoundRolls > plan.RollCount)
            found.Add(new("bound", "plan",
                $"At least {plan.LowerBoundRolls} rolls stated; the plan uses {plan.RollCount}."));
        if (met && plan.LowerBoundCost > plan.Cost)
            found.Add(new("bound", "plan",
                $"Cost of at least {plan.LowerBoundCost} stated; the plan costs {plan.Cost}."));
        if (plan.Proven && (!met || plan.LowerBoundCost != plan.Cost))
            found.Add(new("bound", "plan",
                $"Stated proven with bound {plan.LowerBoundCost}, cost {plan.Cost}, "
                + $"{plan.Unmet.Count} items unmet."));
        if (plan.LowerBoundCost < 0 || plan.LowerBoundRolls < 0)
            found.Add(new("bound", "plan", "A lower bound is below 0."));
        var wanted = problem.Items.Any(i => i.Demand > 0);
        if (wanted && met && plan.RollCount == 0)
            found.Add(new("demand", "plan", "Pieces are wanted and no roll is cut."));
    }
}
