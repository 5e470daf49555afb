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
    /// Compares planning the orders in groups of growing size, in the order they are needed: each
    /// group as <c>POST /v1/cutting/shift</c> would plan it, from new rolls only, so that the
    /// comparison is fair and can be kept. One comparison runs at a time.
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
        var planes = groups.Aggregate(Window.Nothing, (sum, group) => sum + group.Planes);
        return TypedResults.Ok(Body(
            chosen.Chosen, pieces, sizes, [.. groups.Select(group => group.Sizes)], planes));
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
                "Only orders that are planned and not begun can be planned anew; not "
                + string.Join(", ", others) + "."))
            : chosen.Count == 0
                ? ([], new ProblemAnswer(
                    ProblemKind.StateConflict, "No order is planned and not begun."))
                : (chosen, null);
    }

    /// <summary>
    /// One product of one width, in groups of each size: what is bought, and how many orders are
    /// open at the bench at once.
    /// </summary>
    private (List<Window> Sizes, Window Planes) Table(
        IReadOnlyList<OpenPieceRow> pieces, IReadOnlyList<string> orders, List<int> sizes,
        IReadOnlyList<OfferRow> offers, CancellationToken stop)
    {
        var own = offers.Where(offer => (offer.Product, offer.WidthNm)
            == (pieces[0].Product, pieces[0].WidthNm)).ToList();
        var stock = PlanPieces.StockOf([.. own.Select(PlanningState.Offered)]);
        var shop = new Shop(
            stock, own.Max(offer => offer.RollLengthNm), own.Min(offer => offer.MinUsefulOffcutNm),
            new PlanLimits { WorkSeconds = options.Value.WorkSeconds }, stop);
        var byOrder = pieces.ToLookup(piece => piece.OrderNumber);
        var planes = byOrder.Select(order => PlaneAfterPlane(shop, [.. order]))
            .Aggregate(Window.Nothing, (sum, order) => sum + order);
        return ([.. sizes.Select(size => orders.Chunk(size)
            .Select(group => Group(shop, group, [.. group.SelectMany(order => byOrder[order])]))
            .Aggregate(Window.Nothing, (sum, group) => sum + group))], planes);
    }

    /// <summary>One order, each of its planes finished before the next.</summary>
    private static Window PlaneAfterPlane(Shop shop, IReadOnlyList<OpenPieceRow> order)
    {
        var planeOf = order.ToDictionary(piece => piece.PieceId, piece => piece.Plane);
        var plan = PlaneByPlane.Plan(
            shop.Problem(order), piece => planeOf[piece], shop.Limits, shop.Stop);
        return plan is null
            ? throw new InvalidOperationException("New rolls can always be had.")
            : new Window(plan.RollCount, plan.Cost * shop.NmPerCost, LowerBound: 0, MostOpen: 1);
    }

    private static Window Group(
        Shop shop, IReadOnlyList<string> orders, IReadOnlyList<OpenPieceRow> pieces)
    {
        if (pieces.Count == 0)
        {
            return Window.Nothing;
        }

        var plan = CuttingStock.Plan(shop.Problem(pieces), shop.Limits, shop.Stop);
        var orderOf = pieces.ToDictionary(piece => piece.PieceId);
        var bench = BenchOrdering.Turns(
            [.. plan.Rolls.Select(roll => (IReadOnlyList<BenchPiece>)[.. roll.Cuts.Select(
                cut => new BenchPiece(
                    cut.ItemKey, cut.LengthNm, orderOf[cut.ItemKey].OrderNumber,
                    orderOf[cut.ItemKey].Plane))])],
            orders, shop.Limits, shop.Stop);
        var leastNm = plan.LowerBoundCost * shop.NmPerCost;
        return new Window(
            plan.RollCount, plan.Cost * shop.NmPerCost,
            (int)((leastNm + shop.LongestRollNm - 1) / shop.LongestRollNm), bench.MostOpen);
    }

    private static ShiftBody Body(
        IReadOnlyList<string> orders, IReadOnlyList<OpenPieceRow> pieces, List<int> sizes,
        List<List<Window>> groups, Window planes)
    {
        var cutNm = pieces.Sum(piece => piece.CutNm);
        var windows = sizes.Select((_, index) =>
            groups.Aggregate(Window.Nothing, (sum, group) => sum + group[index])).ToList();
        var (apart, together) = (windows[0], windows[^1]);
        var least = windows.Append(planes).Min(window => window.BoughtNm);
        return new ShiftBody
        {
            Orders = orders,
            Pieces = pieces.Count,
            RollsSeparately = apart.Rolls,
            RollsTogether = together.Rolls,
            RollsSaved = apart.Rolls - together.Rolls,
            SavedFt = Feet(apart.BoughtNm - together.BoughtNm),
            LowerBoundRolls = together.LowerBound,
            OnePlaneAtATime = new ShiftPlanesBody
            {
                Rolls = planes.Rolls,
                BoughtFt = Feet(planes.BoughtNm),
                MoreThanLeastFt = Feet(planes.BoughtNm - least),
                WastePercent = WastePercent(planes, cutNm),
            },
            Windows = [.. sizes.Zip(windows).Where((_, index) => windows.Take(index)
                    .All(smaller => windows[index].BoughtNm < smaller.BoughtNm))
                .Select(choice => new ShiftWindowBody
                {
                    OrdersTogether = choice.First,
                    MostOpen = choice.Second.MostOpen,
                    Rolls = choice.Second.Rolls,
                    BoughtFt = Feet(choice.Second.BoughtNm),
                    MoreThanLeastFt = Feet(choice.Second.BoughtNm - least),
                    WastePercent = WastePercent(choice.Second, cutNm),
                })],
        };
    }

    private static double WastePercent(Window window, long cutNm) =>
        Math.Round(100.0 * (window.BoughtNm - cutNm) / window.BoughtNm, 2);

    private static double Feet(long lengthNm) => Math.Round(Words.Inches(lengthNm) / 12, 3);

    /// <summary>What every group of one product and width is planned with.</summary>
    private sealed record Shop(
        List<StockType> Stock, long LongestRollNm, long MinUsefulOffcutNm, PlanLimits Limits,
        CancellationToken Stop)
    {
        public long NmPerCost => LongestRollNm / Stock.Max(roll => roll.Cost);

        public CuttingProblem Problem(IReadOnlyList<OpenPieceRow> pieces) => new()
        {
            Items = [.. pieces.Select(p => new CuttingItem(p.PieceId, p.CutNm, Demand: 1))],
            Stock = Stock,
            MinUsefulOffcutNm = MinUsefulOffcutNm,
        };
    }

    private sealed record Window(int Rolls, long BoughtNm, int LowerBound, int MostOpen)
    {
        public static Window Nothing { get; } = new(0, 0, 0, 0);

        public static Window operator +(Window one, Window other) => new(
            one.Rolls + other.Rolls, one.BoughtNm + other.BoughtNm,
            one.LowerBound + other.LowerBound, Math.Max(one.MostOpen, other.MostOpen));
    }
}
