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
        var turns = Turns(
            [.. rolls.Select(roll => (IReadOnlyList<BenchPiece>)[.. roll.PieceIds.Select(
                id => new BenchPiece(
                    id, of[id].CutNm, of[id].OrderNumber, of[id].Plane, roll.Lot))])],
            orders, limits, cancel);
        return [.. turns.Rolls.Select(turn => rolls[turn.Roll] with { PieceIds = turn.Pieces })];
    }

    /// <summary>
    /// The rolls as they are; of a plane's pieces of equal length, each comes after the one it
    /// hangs beside, as far as rolls of one lot give them.
    /// </summary>
    public static IReadOnlyList<RollPlan> StripAfterStrip(
        IReadOnlyList<RollPlan> rolls, IReadOnlyList<OpenPiece> pieces)
    {
        var of = pieces.Select((piece, place) => (piece, place))
            .ToDictionary(p => p.piece.PieceId);
        (string, string, long, string?) Kind(string id, RollPlan roll) => (
            of[id].piece.OrderNumber, of[id].piece.Plane, of[id].piece.CutNm, roll.Lot);
        var next = rolls.SelectMany(roll => roll.PieceIds.Select(id => (id, kind: Kind(id, roll))))
            .GroupBy(p => p.kind, p => p.id)
            .ToDictionary(g => g.Key, g => new Queue<string>(g.OrderBy(id => of[id].place)));
        return [.. rolls.Select(roll => roll with
        {
            PieceIds = [.. roll.PieceIds.Select(id => next[Kind(id, roll)].Dequeue())],
        })];
    }

    /// <summary>The rolls in turn with their pieces, and how many orders are open at once.
    /// </summary>
    public static (IReadOnlyList<(int Roll, IReadOnlyList<string> Pieces)> Rolls, int MostOpen)
        Turns(
            IReadOnlyList<IReadOnlyList<BenchPiece>> rolls, IReadOnlyList<string> orders,
            PlanLimits limits, CancellationToken cancel)
    {
        var orderOf = rolls.SelectMany(roll => roll).ToDictionary(p => p.Key, p => p.Order);
        var arranged = BenchArrangement.Of(rolls, orders);
        var open = Bench.MostOpen(
            [.. arranged.Select(turn => (IReadOnlyCollection<string>)
                turn.Pieces.Select(piece => orderOf[piece]).ToHashSet())],
            [.. Enumerable.Range(0, rolls.Count)]);
        if (orderOf.Values.Distinct().Count() < 2)
        {
            return (arranged, open);
        }

        List<IReadOnlyCollection<string>> asPlanned =
            [.. rolls.Select(roll => roll.Select(piece => piece.Order).ToHashSet())];
        var asNeeded = Bench.InOrder(asPlanned, orders);
        var fewest = Bench.Sequence(
            asPlanned, limits with { WorkSeconds = limits.WorkSeconds * ShareOfWork }, cancel);
        var chosen = asNeeded.MostOpen <= fewest.MostOpen ? asNeeded : fewest;
        return open <= chosen.MostOpen
            ? (arranged, open)
            : ([.. chosen.Rolls.Select(index => (
                index, (IReadOnlyList<string>)[.. rolls[index].Select(piece => piece.Key)]))],
                chosen.MostOpen);
    }
}
