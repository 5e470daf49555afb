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

    private static string Keep(StoreTransaction transaction, BenchRollRow roll) =>
        StockStore.Add(transaction, new NewStock
        {
            Product = roll.Product,
            WidthNm = roll.WidthNm,
            LengthNm = roll.LeftOverNm,
            EndTrimNm = 0,
            Lot = roll.StockId is null ? null : StockStore.LotOf(transaction, roll.StockId),
            FromRoll = roll.RollId,
        });
}
