using PostFrame.Messaging;
using PostFrame.Problems;

namespace PostFrame.CuttingWorker.Plans;

/// <summary>
/// A roll found short keeps the places on it until its orders are planned anew; what it does not
/// hold any more cannot have been cut from it.
/// </summary>
internal static class Room
{
    /// <summary>Why a piece cannot come off this roll, or null when it can.</summary>
    public static ProblemAnswer? Lacking(StoreTransaction view, PieceRow piece, long rollId)
    {
        var roll = CutStore.Roll(view, rollId)!;
        var left = roll.RollLengthNm - roll.EndTrimNm - roll.CutNm - roll.SpoiledNm;
        return piece.CutNm <= left
            ? null
            : new ProblemAnswer(
                ProblemKind.StateConflict,
                $"Roll {rollId} has {Words.Length(Math.Max(0, left))} left; piece {piece.Mark} of "
                + $"{piece.OrderNumber} is {Words.Length(piece.CutNm)} long. Its order is planned "
                + "anew; read the plan again.");
    }
}
