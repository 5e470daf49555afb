using PostFrame.CuttingWorker.Planning;

namespace PostFrame.CuttingWorker.Plans;

/// <summary>
/// In which order the rolls of orders planned together are cut, and which of several pieces of
/// equal length comes from which: orders close in the order they are needed and each plane's pieces
/// come together, unless the rolls as planned, cut in another order, keep fewer orders open.
/// </summary>
internal static class BenchOrdering
{
    /// <summary>Sequencing is worth a tenth of the planning.</summary>
    private const double ShareOfWork = 0.1;

    public static IReadOnlyList<RollPlan> Of(
        IReadOnlyList<RollPlan> rolls, IReadOnlyList<OpenPiece> pieces,
        IReadOnlyList<string> orders, PlanLimits limits, CancellationToken cancel)
    {
        var of = pieces.ToDictionary(piece => piece.PieceId);
        var together = BenchArrangement.Of(
            [.. rolls.Select(roll => (IReadOnlyList<BenchPiece>)[.. roll.PieceIds.Select(
                id => new BenchPiece(
                    id, of[id].CutNm, of[id].OrderNumber, of[id].Plane, roll.Lot))])], orders);
        IReadOnlyList<RollPlan> arranged = [.. together
            .Select(turn => rolls[turn.Roll] with { PieceIds = turn.Pieces })];
        if (of.Values.Select(piece => piece.OrderNumber).Distinct().Count() < 2)
        {
            return arranged;
        }

        var chosen = Choose(OrdersOf(rolls, of), orders, limits, cancel);
        var open = Bench.MostOpen(OrdersOf(arranged, of), [.. Enumerable.Range(0, rolls.Count)]);
        return open <= chosen.MostOpen
            ? arranged
            : [.. chosen.Rolls.Select(index => rolls[index])];
    }

    /// <summary>The sequence, and how many orders are open in it at once.</summary>
    public static BenchSequence Choose(
        IReadOnlyList<IReadOnlyCollection<string>> ordersOfRoll, IReadOnlyList<string> orders,
        PlanLimits limits, CancellationToken cancel)
    {
        var asNeeded = Bench.InOrder(ordersOfRoll, orders);
        var fewest = Bench.Sequence(
            ordersOfRoll, limits with { WorkSeconds = limits.WorkSeconds * ShareOfWork }, cancel);
        return asNeeded.MostOpen <= fewest.MostOpen ? asNeeded : fewest;
    }

    private static List<IReadOnlyCollection<string>> OrdersOf(
        IEnumerable<RollPlan> rolls, Dictionary<string, OpenPiece> of) =>
        [.. rolls.Select(roll => (IReadOnlyCollection<string>)
            roll.PieceIds.Select(piece => of[piece].OrderNumber).ToHashSet())];
}
