using PostFrame.CuttingWorker.Stock;
using PostFrame.Messaging;

namespace PostFrame.CuttingWorker.Plans;

/// <summary>
/// With its last cut a roll is used up, and what is left and long enough is kept.
/// </summary>
internal static class FinishRoll
{
    /// <summary>The id of the offcut that went to the rack, or null when none did.</summary>
    public static string? IfDone(StoreTransaction transaction, long rollId)
    {
        var roll = CutStore.Roll(transaction, rollId)!;
        var isBegun = roll.PiecesCut > 0 || roll.SpoiledNm > 0;
        if (roll.FinishedAt is not null || !isBegun || roll.PiecesCut < roll.Pieces)
        {
            return null;
        }

        CutStore.Finish(transaction, rollId);
        if (roll.StockId is not null)
        {
            StockStore.Used(transaction, roll.StockId);
        }

        return roll.LeavesOffcut ? Keep(transaction, roll) : null;
    }

    /// <summary>An offcut is of the lot, and as old, as the roll it comes from.</summary>
    private static string Keep(StoreTransaction transaction, BenchRollRow roll)
    {
        var from = roll.StockId is null ? null : StockStore.Find(transaction, roll.StockId);
        var id = StockStore.NextId(transaction, StockStore.Offcut);
        StockStore.Add(transaction, id, StockStore.Offcut, new NewStock
        {
            Product = roll.Product,
            WidthNm = roll.WidthNm,
            LengthNm = roll.LeftOverNm,
            EndTrimNm = 0,
            Lot = from?.Lot,
            FromRoll = roll.RollId,
            ReceivedAtUnixMs = from?.ReceivedAt,
        });
        return id;
    }
}
