namespace PostFrame.CuttingWorker.Planning;

/// <summary>
/// Finishes one plane before the next, roll by roll: of the rolls a plane is cut from, one stays on
/// the stand and goes on with the next plane; what the others leave is put away.
/// </summary>
public static class PlaneByPlane
{
    /// <summary>
    /// Plans each plane by itself, in the order of the items, and joins the plans. The rolls are
    /// listed one by one in cutting order, and so are the cuts of each. The bound is that of planes
    /// free to mix, so the gap is what keeping them apart costs.
    /// </summary>
    /// <returns>
    /// Null when a plane finds no stock for all its pieces after those before it.
    /// </returns>
    /// <param name="problem">All planes together; one product of one width.</param>
    /// <param name="planeOf">The plane an item, by its key, belongs to.</param>
    /// <param name="limits">
    /// Work allowed: half for the bound, half for the planes by their pieces.
    /// </param>
    /// <param name="cancel">Ends the search early.</param>
    public static CuttingPlan? Plan(
        CuttingProblem problem, Func<string, string> planeOf, PlanLimits limits,
        CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(problem);
        ArgumentNullException.ThrowIfNull(planeOf);
        ArgumentNullException.ThrowIfNull(limits);
        var planes = problem.Items.Where(item => item.Demand > 0)
            .GroupBy(item => planeOf(item.Key)).Select(plane => plane.ToList()).ToList();
        if (planes.Count < 2)
            return CuttingStock.Plan(problem, limits, cancel);
        PlanLimits Share(double part) => limits with { WorkSeconds = limits.WorkSeconds * part };
        var mixed = CuttingStock.Plan(problem, Share(0.5), cancel);
        if (mixed.Refusals.Count > 0)
            return mixed;
        var pieces = planes.Sum(Pieces);
        var bench = new Stand(problem);
        foreach (var plane in planes)
        {
            var plan = CuttingStock.Plan(
                bench.Next(plane), Share(0.5 * Pieces(plane) / pieces), cancel);
            if (plan.Refusals.Count > 0 || plan.Unmet.Count > 0)
                return null;
            bench.Cut(plan, isLast: plane == planes[^1]);
        }

        return Joined(problem, bench, mixed);
    }

    private static double Pieces(List<CuttingItem> plane) =>
        plane.Sum(item => (double)item.Demand);

    private static CuttingPlan Joined(CuttingProblem problem, Stand bench, CuttingPlan mixed)
    {
        var rolls = bench.Rolls;
        var proven = bench.Cost == mixed.LowerBoundCost;
        var dearest = Math.Max(1, problem.Stock.Max(stock => stock.Cost));
        return mixed with
        {
            Rolls = rolls,
            Unmet = [],
            RollCount = rolls.Sum(roll => roll.Times),
            LowerBoundRolls = (int)Math.Max(
                CuttingStock.LeastRolls(problem),
                Math.Min(int.MaxValue, (mixed.LowerBoundCost + dearest - 1) / dearest)),
            Cost = bench.Cost,
            Proven = proven,
            Method = "one plane at a time",
            Explanation = "One plane at a time; with planes free to mix: " + mixed.Explanation,
            WorkSeconds = mixed.WorkSeconds + bench.WorkSeconds,
        };
    }

    /// <summary>The rolls cut so far, the one on the stand last, and the stock still there.
    /// </summary>
    private sealed class Stand(CuttingProblem problem)
    {
        private readonly string _onStand = new(
            '+', 1 + problem.Stock.Max(stock => stock.Key.Length));

        private List<StockType> _stock = [.. problem.Stock];

        public List<PlannedRoll> Rolls { get; } = [];

        public long Cost { get; private set; }

        public double WorkSeconds { get; private set; }

        /// <summary>A plane with what it can be cut from.</summary>
        public CuttingProblem Next(List<CuttingItem> plane) => problem with
        {
            Items = plane,
            Stock = Rolls is [.., { LeftOverNm: > 0 } last]
                ? [new StockType
                {
                    Key = _onStand,
                    LengthNm = last.LeftOverNm,
                    Count = 1,
                    Cost = 0,
                    IsRemnant = true,
                    Lot = _stock.Concat(problem.Stock).First(s => s.Key == last.StockKey).Lot,
                    AgeDays = int.MaxValue,
                }, .. _stock]
                : _stock,
        };

        /// <summary>The plane is cut: first from the roll on the stand, last from the one with
        /// most left, which stays there for the next.</summary>
        public void Cut(CuttingPlan plan, bool isLast)
        {
            (Cost, WorkSeconds) = (Cost + plan.Cost, WorkSeconds + plan.WorkSeconds);
            var fresh = plan.Rolls.Where(roll => roll.StockKey != _onStand).ToList();
            if (plan.Rolls.FirstOrDefault(roll => roll.StockKey == _onStand) is { } goesOn)
            {
                Rolls[^1] = Rolls[^1] with
                {
                    Cuts = [.. Rolls[^1].Cuts, .. goesOn.Cuts],
                    LeftOverNm = goesOn.LeftOverNm,
                    LeavesOffcut = goesOn.LeavesOffcut,
                };
            }

            if (fresh.Count == 0)
                return;
            var from = Rolls.Count;
            var last = fresh.MaxBy(roll => roll.LeftOverNm)!;
            Rolls.AddRange(fresh.SelectMany(roll => Enumerable.Repeat(
                roll with { Times = 1 },
                ReferenceEquals(roll, last) ? roll.Times - 1 : roll.Times)));
            Rolls.Add(last with { Times = 1 });
            if (!isLast)
                Unload(from);
            var used = fresh.GroupBy(roll => roll.StockKey, StringComparer.Ordinal)
                .ToDictionary(g => g.Key, g => g.Sum(roll => roll.Times), StringComparer.Ordinal);
            _stock = [.. _stock
                .Select(s => s with { Count = s.Count - used.GetValueOrDefault(s.Key) })
                .Where(s => s.Count is null or > 0)];
        }

        /// <summary>
        /// What the plane's other rolls have room for moves there, longest first, so that the next
        /// plane finds as much as can be on the roll on the stand.
        /// </summary>
        private void Unload(int from)
        {
            foreach (var cut in Rolls[^1].Cuts.OrderByDescending(cut => cut.LengthNm))
            {
                for (var at = from; at < Rolls.Count - 1; at++)
                {
                    var here = Count(Rolls[^1], cut);
                    var moved = (int)Math.Min(Rolls[at].LeftOverNm / cut.LengthNm, here);
                    if (moved == 0 || Rolls[^1].Cuts.Sum(c => c.Count) == moved)
                        continue;
                    Rolls[at] = With(Rolls[at], cut, moved);
                    Rolls[^1] = With(Rolls[^1], cut, -moved);
                }
            }
        }

        private static int Count(PlannedRoll roll, PlannedCut cut) =>
            roll.Cuts.Where(c => c.ItemKey == cut.ItemKey).Sum(c => c.Count);

        private PlannedRoll With(PlannedRoll roll, PlannedCut cut, int more)
        {
            var count = Count(roll, cut) + more;
            var left = roll.LeftOverNm - more * cut.LengthNm;
            return roll with
            {
                Cuts = [.. roll.Cuts.Where(c => c.ItemKey != cut.ItemKey)
                    .Concat(count > 0 ? [cut with { Count = count }] : [])
                    .OrderByDescending(c => c.LengthNm)],
                LeftOverNm = left,
                LeavesOffcut = left > 0 && left >= problem.MinUsefulOffcutNm,
            };
        }
    }
}
