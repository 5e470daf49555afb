using System.ComponentModel;
using PostFrame.CuttingWorker.Queue;
using PostFrame.Messaging;
using PostFrame.Problems;

namespace PostFrame.CuttingWorker.Plans;

/// <summary>Which cut went wrong; the roll guards against a piece that moved meanwhile.</summary>
public sealed record SpoiledWish([property: Description("As in the plan.")] long RollId);

internal static class SpoilPiece
{
    private const int HighestRollId = int.MaxValue;

    public static void MapSpoilPiece(this IEndpointRouteBuilder routes) =>
        routes.MapPost("/v1/cutting/pieces/{pieceId}/spoiled", Answer)
            .NeedsKey()
            .Accepts<SpoiledWish>("application/json")
            .WithGroupName("cutting").WithName("markPieceSpoiled").WithTags("Bench")
            .WithSummary("Say that a piece was cut wrong or damaged")
            .WithDescription(
                "Its roll has lost the length. The rest is planned anew around the cuts already "
                + "made; the piece keeps its id and its label.")
            .Produces<BenchPieceBody>()
            .MapRefusals(
                ProblemKind.IdempotencyKeyMissing, ProblemKind.PieceNotFound,
                ProblemKind.StateConflict, ProblemKind.UnsupportedMediaType,
                ProblemKind.InvalidRequest, ProblemKind.StoreUnavailable);

    private static async Task<IResult> Answer(
        string pieceId, HttpContext context, PlanCutting planner,
        [FromKeyedServices(CuttingSetup.Service)] SqliteStore store)
    {
        var answer = await BenchRequest.AnswerOnceAsync<SpoiledWish, BenchPieceBody>(
            context, store, Read, (transaction, wish) => Spoil(transaction, pieceId, wish));
        planner.Wake();
        return answer;
    }

    private static SpoiledWish? Read(RequestObject root)
    {
        if (!root.Has("rollId"))
        {
            root.Wrong("rollId", "required", "", "Which roll was it cut from?");
        }

        return root.OptionalWhole("rollId", 1, HighestRollId) is { } rollId
            ? new SpoiledWish(rollId)
            : null;
    }

    private static BenchRequest.Outcome<BenchPieceBody> Spoil(
        StoreTransaction transaction, string pieceId, SpoiledWish wish)
    {
        if (CutStore.Piece(transaction, pieceId) is not { } piece)
        {
            return new ProblemAnswer(
                ProblemKind.PieceNotFound, "No piece with this id came to be cut.");
        }

        if (piece.RollId != wish.RollId)
        {
            return new ProblemAnswer(
                ProblemKind.StateConflict,
                $"Piece {piece.Mark} of {piece.OrderNumber} is not on roll {wish.RollId} now; "
                + "read the plan again.");
        }

        if (piece.CutAt is null && Room.Lacking(transaction, piece, wish.RollId) is { } lacking)
        {
            return lacking;
        }

        CutStore.Spoil(transaction, pieceId, wish.RollId, piece.CutNm);
        OrderStore.Wait(transaction, piece.OrderNumber);
        PlanStore.CountChange(transaction);
        return new BenchPieceBody
        {
            PieceId = piece.PieceId,
            OrderNumber = piece.OrderNumber,
            Mark = piece.Mark,
            State = "waiting",
            RollId = wish.RollId,
            RollFinished = CutStore.Roll(transaction, wish.RollId)!.FinishedAt is not null,
        };
    }
}
