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
    /// Compares planning the orders one by one, in growing groups, and all together, from new rolls
    /// only so that the comparison is fair. One comparison runs at a time.
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

        var windows = Together.Where(size => size < chosen.Chosen.Count)
            .Append(chosen.Chosen.Count)
            .Select(size => new Window(size, PlanInGroups(
                chosen.Chosen, size, pieces.ToLookup(piece => piece.OrderNumber), offers, stop)))
            .ToList();
        var refused = windows.SelectMany(window => window.Plans)
            .SelectMany(plans => plans.Refusals).Select(found => found.Text).Distinct().ToList();
        return refused.Count > 0
            ? new ProblemAnswer(ProblemKind.StateConflict, string.Join(' ', refused))
            : TypedResults.Ok(Body(chosen.Chosen, pieces, windows));
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
                "Only orders that are known, not refused and not begun can be cut together; not "
                + string.Join(", ", others) + "."))
            : chosen.Count < 2
                ? ([], new ProblemAnswer(
                    ProblemKind.StateConflict,
                    $"Cutting together takes at least 2 orders; {chosen.Count} can be."))
                : (chosen, null);
    }

    private List<PlanSet> PlanInGroups(
        IReadOnlyList<string> orders, int size, ILookup<string, OpenPieceRow> pieces,
        IReadOnlyList<OfferRow> offers, CancellationToken stop)
    {
        var rolls = offers.Select(PlanningState.Offered).ToList();
        var limits = new PlanLimits { WorkSeconds = options.Value.WorkSeconds };
        return [.. orders.Chunk(size).Select(group => PlanPieces.Plan(
            [.. group.SelectMany(order => pieces[order]).Select(PlanCutting.Piece)],
            rolls, PlanningState.LeastOffcuts(offers), limits, stop))];
    }

    private static ShiftBody Body(
        IReadOnlyList<string> orders, IReadOnlyList<OpenPieceRow> pieces, List<Window> windows)
    {
        var cutNm = pieces.Sum(piece => piece.CutNm);
        var (apart, together) = (windows[0], windows[^1]);
        return new ShiftBody
        {
            Orders = orders,
            Pieces = pieces.Count,
            RollsSeparately = apart.Rolls,
            RollsTogether = together.Rolls,
            RollsSaved = apart.Rolls - together.Rolls,
            SavedFt = Math.Round(Words.Inches(apart.BoughtNm - together.BoughtNm) / 12, 3),
            LowerBoundRolls = together.Plans
                .Sum(plans => plans.Plans.Sum(plan => plan.LowerBoundRolls)),
            Windows = [.. windows.Select(window => new ShiftWindowBody
            {
                OrdersTogether = window.Size,
                Rolls = window.Rolls,
                WastePercent = Math.Round(100.0 * (window.BoughtNm - cutNm) / window.BoughtNm, 2),
            })],
        };
    }

    private sealed record Window(int Size, List<PlanSet> Plans)
    {
        public int Rolls { get; } = Plans.Sum(plans => plans.RollCount);

        public long BoughtNm { get; } = Plans.Sum(
            plans => plans.Plans.Sum(plan => plan.Rolls.Sum(roll => roll.RollLengthNm)));
    }
}
