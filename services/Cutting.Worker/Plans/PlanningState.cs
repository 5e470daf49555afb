using PostFrame.CuttingWorker.Queue;
using PostFrame.CuttingWorker.Stock;
using PostFrame.Messaging;

namespace PostFrame.CuttingWorker.Plans;

/// <summary>Everything a plan is made from, read in one view of the store.</summary>
internal sealed record PlanningState
{
    /// <summary>
    /// The count of changes when this was read; a plan is stored only while it holds.
    /// </summary>
    public required long Changes { get; init; }

    /// <summary>The order that has waited longest.</summary>
    public required string Order { get; init; }

    /// <summary>The orders planned together, the one that waits among them.</summary>
    public required IReadOnlyList<string> Orders { get; init; }

    /// <summary>It was wished so of the order, and no other is planned with it.</summary>
    public required bool OnePlaneAtATime { get; init; }

    public required IReadOnlyList<OpenPieceRow> Pieces { get; init; }

    /// <summary>The plans that are replaced.</summary>
    public required IReadOnlyList<long> Plans { get; init; }

    /// <summary>Rolls of those plans that were begun or finished and go on.</summary>
    public required IReadOnlyList<RollRow> Begun { get; init; }

    public required IReadOnlyList<RollAtHand> AtHand { get; init; }

    public required IReadOnlyDictionary<(string, long), long> MinUsefulOffcutNm { get; init; }

    /// <summary>The state for the order that has waited longest, or null when none waits.</summary>
    public static PlanningState? Next(StoreTransaction view) =>
        OrderStore.NextWaiting(view) is { } order ? Of(view, order) : null;

    private static PlanningState Of(StoreTransaction view, string order)
    {
        var orders = PlanStore.Scope(view, order);
        var plans = PlanStore.PlansOf(view, orders);
        var rolls = PlanStore.Rolls(view, plans);
        var begun = rolls.Where(roll => roll.IsBegun).ToList();
        var released = rolls.Where(roll => !roll.IsBegun).Select(roll => roll.RollId).ToList();
        var offers = PlanStore.Offers(view, orders);
        return new PlanningState
        {
            Changes = PlanStore.Changes(view),
            Order = order,
            Orders = orders,
            OnePlaneAtATime = orders.Count == 1
                && OrderStore.Find(view, order)!.OnePlaneAtATime,
            Pieces = PlanStore.Open(view, orders),
            Plans = plans,
            Begun = begun,
            AtHand =
            [
                .. begun.Where(roll => roll.FinishedAt is null && roll.LeftNm > 0).Select(Begin),
                .. Rack(StockStore.Free(view, released)),
                .. offers.Select(Offered),
            ],
            MinUsefulOffcutNm = LeastOffcuts(offers),
        };
    }

    public static IReadOnlyDictionary<(string, long), long> LeastOffcuts(
        IReadOnlyList<OfferRow> offers) =>
        offers.GroupBy(offer => (offer.Product, offer.WidthNm)).ToDictionary(
            group => group.Key, group => group.Min(offer => offer.MinUsefulOffcutNm));

    /// <summary>Its lot comes first, so that a plane begun in a lot goes on in it.</summary>
    private static RollAtHand Begin(RollRow roll) => new()
    {
        Product = roll.Product,
        WidthNm = roll.WidthNm,
        LengthNm = roll.LeftNm,
        EndTrimNm = 0,
        Begun = roll.RollId,
        Lot = roll.Lot,
        AgeDays = int.MaxValue,
    };

    /// <summary>Oldest first: the longer it lies there, the higher its age.</summary>
    private static IEnumerable<RollAtHand> Rack(IReadOnlyList<StockRow> rows) =>
        rows.Select((row, index) => new RollAtHand
        {
            Product = row.Product,
            WidthNm = row.WidthNm,
            LengthNm = row.LengthNm,
            EndTrimNm = row.EndTrimNm,
            StockId = row.StockId,
            IsOffcut = row.Kind == StockStore.Offcut || row.PartOf is not null,
            Lot = row.Lot,
            AgeDays = rows.Count - index,
        });

    public static RollAtHand Offered(OfferRow offer) => new()
    {
        Product = offer.Product,
        WidthNm = offer.WidthNm,
        LengthNm = offer.RollLengthNm,
        EndTrimNm = offer.EndTrimNm,
    };
}
