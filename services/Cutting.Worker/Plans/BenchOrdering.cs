using PostFrame.CuttingWorker.Planning;

namespace PostFrame.CuttingWorker.Plans;

/// <summary>
/// In which order the rolls of orders planned together are cut: orders close in the order they are
/// needed, unless another order of cutting keeps fewer of them open at once.
/// </summary>
internal static class BenchOrdering
{
    /// <summary>Sequencing is worth a tenth of the planning.</summary>
    private const double ShareOfWork = 0.1;

    public static IReadOnlyList<RollPlan> Of(
        IReadOnlyList<RollPlan> rolls, IReadOnlyList<OpenPiece> pieces,
        IReadOnlyList<string> orders, PlanLimits limits, CancellationToken cancel)
    {
        var orderOf = pieces.ToDictionary(piece => piece.PieceId, piece => piece.OrderNumber);
        var ordersOfRoll = rolls.Select(roll => (IReadOnlyCollection<string>)
            roll.PieceIds.Select(piece => orderOf[piece]).ToHashSet()).ToList();
        if (orderOf.Values.Distinct().Count() < 2)
        {
            return rolls;
        }

        var chosen = Choose(ordersOfRoll, orders, limits, cancel);
        return [.. chosen.Rolls.Select(index => rolls[index])];
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
}
