using System.Text.Json;
using System.Threading.Channels;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Options;
using PostFrame.CuttingWorker.Planning;
using PostFrame.CuttingWorker.Queue;
using PostFrame.Messaging;

namespace PostFrame.CuttingWorker.Plans;

/// <summary>
/// Plans what waits, oldest first, one at a time: read the state, compute, and store the checked
/// plan with its announcements in one transaction, unless the state has moved on meanwhile. What it
/// works from is in the store, so a crash at any moment only makes it start again.
/// </summary>
internal sealed partial class PlanCutting(
    [FromKeyedServices(CuttingSetup.Service)] SqliteStore store,
    IOptions<CuttingOptions> options, TimeProvider time, ILogger<PlanCutting> log)
    : BackgroundService
{
    private const int MostTries = 3;
    private static readonly TimeSpan Poll = TimeSpan.FromSeconds(5);

    private readonly Channel<bool> _wake = Channel.CreateBounded<bool>(
        new BoundedChannelOptions(1) { FullMode = BoundedChannelFullMode.DropWrite });

    /// <summary>Something waits to be planned.</summary>
    public void Wake() => _wake.Writer.TryWrite(true);

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        await Task.Yield();
        WarmUp();
        var isFirst = true;
        while (!stoppingToken.IsCancellationRequested)
        {
            try
            {
                if (isFirst)
                {
                    await RepeatAsync(stoppingToken);
                    isFirst = false;
                }

                while (await PlanNextAsync(stoppingToken))
                {
                }
            }
            catch (StoreUnavailableException failure)
            {
                LogStoreAway(failure);
            }
            catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
            {
                return;
            }

            await RestAsync(stoppingToken);
        }
    }

    /// <summary>
    /// Most of a process's first plan is the planner being compiled; here no order waits for it.
    /// </summary>
    private static void WarmUp() => CuttingStock.Plan(
        new CuttingProblem
        {
            Items = [new("long", 7, 5), new("short", 3, 4)],
            Stock =
            [
                new StockType { Key = "roll", LengthNm = 20, Cost = 20 },
                new StockType { Key = "offcut", LengthNm = 15, Cost = 1, Count = 1 },
            ],
        },
        new PlanLimits { WorkSeconds = 0 });

    private async Task RestAsync(CancellationToken stop)
    {
        using var rest = CancellationTokenSource.CreateLinkedTokenSource(stop);
        var woken = _wake.Reader.WaitToReadAsync(rest.Token).AsTask();
        var late = Task.Delay(Poll, time, rest.Token);
        await Task.WhenAny(woken, late);
        await rest.CancelAsync();
        _wake.Reader.TryRead(out _);
    }

    /// <summary>
    /// Orders asks again for a first plan whose message died with a process. A later one nobody
    /// asks for: it is said again after every start.
    /// </summary>
    private async Task RepeatAsync(CancellationToken stop)
    {
        foreach (var order in store.Read(OrderStore.PlannedAgain))
        {
            await store.WriteAsync(transaction => Announcement.Repeat(transaction, order), stop);
        }
    }

    /// <summary>Plans one order with those that belong to it; false when none waits.</summary>
    internal async Task<bool> PlanNextAsync(CancellationToken stop)
    {
        if (store.Read(PlanningState.Next) is not { } state)
        {
            return false;
        }

        var tries = await store.WriteAsync(
            transaction => OrderStore.Begin(transaction, state.Orders), CancellationToken.None);
        try
        {
            var plans = Compute(state, tries, stop);
            FailPoint.Reach("cutting.planned");
            stop.ThrowIfCancellationRequested();
            await store.WriteAsync(
                transaction => Keep(transaction, state, plans), CancellationToken.None);
        }
        catch (OperationCanceledException) when (stop.IsCancellationRequested)
        {
            await store.WriteAsync(
                transaction => OrderStore.NotBegun(transaction, state.Orders),
                CancellationToken.None);
            throw;
        }
        catch (Exception failure) when (failure is not StoreUnavailableException)
        {
            LogFailed(failure, state.Order);
            if (tries >= MostTries)
            {
                await store.WriteAsync(
                    transaction => GiveUp(transaction, state), CancellationToken.None);
            }
        }

        return true;
    }

    /// <summary>
    /// An order at whose planning the process has died twice is planned without the search, and so
    /// without the solver, a library that can end the process: it may cost rolls, not the shop.
    /// </summary>
    private PlanSet Compute(PlanningState state, long tries, CancellationToken stop)
    {
        using var deadline = new CancellationTokenSource(options.Value.LongestPlanning, time);
        using var either = CancellationTokenSource.CreateLinkedTokenSource(deadline.Token, stop);
        return PlanPieces.Plan(
            [.. state.Pieces.Select(Piece)],
            new CuttingWish(state.Orders, state.OnePlaneAtATime), state.AtHand,
            state.MinUsefulOffcutNm,
            new PlanLimits { WorkSeconds = tries < MostTries ? options.Value.WorkSeconds : 0 },
            either.Token);
    }

    internal static OpenPiece Piece(OpenPieceRow row) => new()
    {
        PieceId = row.PieceId,
        OrderNumber = row.OrderNumber,
        Mark = row.Mark,
        Plane = row.Plane,
        Product = row.Product,
        WidthNm = row.WidthNm,
        CutNm = row.CutNm,
    };

    private void Keep(StoreTransaction transaction, PlanningState state, PlanSet plans)
    {
        if (MovedOn(transaction, state))
        {
            return;
        }

        if (plans.Refusals.Count > 0)
        {
            Refuse(transaction, state, plans.Refusals);
        }
        else
        {
            WritePlans.Write(transaction, state, plans);
            foreach (var order in state.Orders)
            {
                OrderStore.Planned(transaction, order);
                Announcement.Planned(transaction, order);
            }
        }

        PlanStore.ClearEmpty(transaction);
        PlanStore.CountChange(transaction);
    }

    /// <summary>Another plan is made from the newer state at once.</summary>
    private static bool MovedOn(StoreTransaction transaction, PlanningState state)
    {
        if (PlanStore.Changes(transaction) == state.Changes)
        {
            return false;
        }

        OrderStore.NotBegun(transaction, state.Orders);
        return true;
    }

    /// <summary>
    /// Refuses the orders the reasons name. Orders that were only planned with them wait again.
    /// </summary>
    private void Refuse(
        StoreTransaction transaction, PlanningState state, IReadOnlyList<Refusal> refusals)
    {
        PlanStore.Unplace(transaction, state.Plans);
        foreach (var order in state.Orders)
        {
            var pieces = state.Pieces.Where(piece => piece.OrderNumber == order).ToList();
            var named = refusals.Where(refusal => Names(refusal, pieces)).ToList();
            if (named.Count > 0)
            {
                Refuse(transaction, order, named);
            }
            else
            {
                OrderStore.Wait(transaction, order);
            }
        }
    }

    private static bool Names(Refusal refusal, List<OpenPieceRow> pieces) => refusal switch
    {
        { PieceId: { } id } => pieces.Any(piece => piece.PieceId == id),
        { Group: { } group } => pieces.Any(piece => (piece.Product, piece.WidthNm) == group),
        _ => true,
    };

    private void Refuse(
        StoreTransaction transaction, string order, IReadOnlyList<Refusal> refusals)
    {
        LogRefused(order, refusals.Count, refusals[0].Text);
        OrderStore.Refused(
            transaction, order, JsonSerializer.Serialize(refusals, MessageJson.Options));
        Announcement.Refused(transaction, order, refusals);
    }

    /// <summary>The others begin afresh without it: it may be the one at fault.</summary>
    private void GiveUp(StoreTransaction transaction, PlanningState state)
    {
        if (MovedOn(transaction, state))
        {
            return;
        }

        OrderStore.NotBegun(transaction, state.Orders);
        Refuse(transaction, state.Order,
        [
            new Refusal(Refusal.PlanRefused, null, null,
                $"Planning failed {MostTries} times on our side; the log has the cause."),
        ]);
        PlanStore.ClearEmpty(transaction);
    }

    [LoggerMessage(LogLevel.Error, "Planning failed for order {Order}")]
    private partial void LogFailed(Exception failure, string order);

    [LoggerMessage(
        LogLevel.Error, "Order {Order} cannot be planned, {Count} reasons, the first: {Reason}")]
    private partial void LogRefused(string order, int count, string reason);

    [LoggerMessage(LogLevel.Warning, "The store is not to be had; orders wait for their plan")]
    private partial void LogStoreAway(Exception failure);
}
