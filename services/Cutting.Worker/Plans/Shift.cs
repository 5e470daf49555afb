using Microsoft.Extensions.Options;
using PostFrame.CuttingWorker.Planning;
using PostFrame.CuttingWorker.Queue;
using PostFrame.Messaging;
using PostFrame.Problems;

namespace PostFrame.CuttingWorker.Plans;

/// <summary>Cutting the orders of a shift together: what it saves, and doing it.</summary>
internal sealed class Shift(
    [FromKeyedServices(CuttingSetup.Service)] SqliteStore store,
    IOptions<CuttingOptions> options, TimeProvider time)
{
    public const int MostOrders = 500;
    private static readonly int[] Together = [1, 2, 5, 10, 25, 50];
    private readonly SemaphoreSlim _turn = new(1);

    /// <summary>
    /// Compares planning each order by itself, in growing groups of which each uses what those
    /// before it left, and all together. From new rolls only, so that the comparison is fair. One
    /// comparison runs at a time.
    /// </summary>
    public async Task<IResult> CompareAsync(IReadOnlyList<string>? wanted, CancellationToken stop)
    {
        if (!await _turn.WaitAsync(TimeSpan.Zero, stop))
        {
            return new ProblemAnswer(
                ProblemKind.TooManyRequests, "Another comparison is running; ask again.")
            {
                RetryAfterSeconds = (int)options.Value.LongestPlanning.TotalSeconds,
            };
        }

        try
        {
            using var deadline = new CancellationTokenSource(options.Value.LongestPlanning, time);
            using var either = CancellationTokenSource.CreateLinkedTokenSource(
                deadline.Token, stop);
            return Compare(wanted, either.Token);
        }
        finally
        {
            _turn.Release();
        }
    }

    private IResult Compare(IReadOnlyList<string>? wanted, CancellationToken stop)
    {
        var (chosen, pieces, offers) = store.Read(view =>
        {
            var orders = Choose(view, wanted);
            return (orders, PlanStore.Open(view, orders.Chosen),
                PlanStore.Offers(view, orders.Chosen));
        });
        if (chosen.Refusal is { } refusal)
        {
            return refusal;
        }

        var sizes = Together.Where(size => size < chosen.Chosen.Count)
            .Append(chosen.Chosen.Count).ToList();
        var groups = pieces.GroupBy(piece => (piece.Product, piece.WidthNm))
            .Select(group => Table([.. group], chosen.Chosen, sizes, offers, stop)).ToList();
        return TypedResults.Ok(Body(chosen.Chosen, pieces, sizes, groups));
    }

    /// <summary>The orders asked for, or every one that could be pooled.</summary>
    public static (IReadOnlyList<string> Chosen, ProblemAnswer? Refusal) Choose(
        StoreTransaction view, IReadOnlyList<string>? wanted)
    {
        var open = OrderStore.NotBegun(view, MostOrders);
        var chosen = wanted is null ? open : [.. open.Where(wanted.Contains)];
        var others = wanted?.Except(open).ToList() ?? [];
        return others.Count > 0
            ? ([], new ProblemAnswer(
                ProblemKind.StateConflict,
                "Only orders that are planned and not begun can be pooled; not "
                + string.Join(", ", others) + "."))
            : chosen.Count < 2
                ? ([], new ProblemAnswer(
                    ProblemKind.StateConflict,
                    $"Cutting together takes at least 2 orders; {chosen.Count} can be."))
                : (chosen, null);
    }

    /// <summary>
    /// One product of one width: each order by itself, then in groups of each size.
    /// </summary>
    private List<Window> Table(
        IReadOnlyList<OpenPieceRow> pieces, IReadOnlyList<string> orders, List<int> sizes,
        IReadOnlyList<OfferRow> offers, CancellationToken stop)
    {
        var own = offers.Where(offer => (offer.Product, offer.WidthNm)
            == (pieces[0].Product, pieces[0].WidthNm)).ToList();
        var stock = PlanPieces.StockOf([.. own.Select(PlanningState.Offered)]);
        var longest = own.Max(offer => offer.RollLengthNm);
        var nmPerCost = longest / stock.Max(roll => roll.Cost);
        var byOrder = pieces.ToLookup(piece => piece.OrderNumber);
        var queue = orders.Select((order, rank) => new BenchOrder(
            order, rank,
            [.. byOrder[order].Select(p => new CuttingItem(p.PieceId, p.CutNm, Demand: 1))]));
        var bench = queue.Where(order => order.Items.Count > 0).ToList();
        var least = own.Min(offer => offer.MinUsefulOffcutNm);
        var limits = new PlanLimits { WorkSeconds = options.Value.WorkSeconds };
        var apart = bench.Select(order => CuttingStock.Plan(
            new CuttingProblem { Items = order.Items, Stock = stock, MinUsefulOffcutNm = least },
            limits, stop)).ToList();
        return
        [
            new Window(
                apart.Sum(plan => plan.RollCount), apart.Sum(plan => plan.Cost) * nmPerCost, 0),
            .. Pooling.Table(bench, stock, least, sizes, limits, stop).Select(choice => new Window(
                choice.Rolls, choice.Cost * nmPerCost,
                (int)((choice.LowerBoundCost * nmPerCost + longest - 1) / longest))),
        ];
    }

    private static ShiftBody Body(
        IReadOnlyList<string> orders, IReadOnlyList<OpenPieceRow> pieces, List<int> sizes,
        List<List<Window>> groups)
    {
        var cutNm = pieces.Sum(piece => piece.CutNm);
        var windows = groups[0].Select((_, index) => new Window(
            groups.Sum(group => group[index].Rolls), groups.Sum(group => group[index].BoughtNm),
            groups.Sum(group => group[index].LowerBound))).ToList();
        var (apart, together) = (windows[0], windows[^1]);
        return new ShiftBody
        {
            Orders = orders,
            Pieces = pieces.Count,
            RollsSeparately = apart.Rolls,
            RollsTogether = together.Rolls,
            RollsSaved = apart.Rolls - together.Rolls,
            SavedFt = Math.Round(Words.Inches(apart.BoughtNm - together.BoughtNm) / 12, 3),
            LowerBoundRolls = together.LowerBound,
            Windows = [.. sizes.Zip(windows.Skip(1), (size, window) => new ShiftWindowBody
            {
                OrdersTogether = size,
                Rolls = window.Rolls,
                WastePercent = Math.Round(100.0 * (window.BoughtNm - cutNm) / window.BoughtNm, 2),
            })],
        };
    }

    private sealed record Window(int Rolls, long BoughtNm, int LowerBound);
}
