using System.ComponentModel;
using System.Text.Json.Serialization;
using PostFrame.CuttingWorker.Stock;
using PostFrame.Messaging;
using PostFrame.Problems;

namespace PostFrame.CuttingWorker.Plans;

/// <summary>A piece as the bench left it.</summary>
public sealed record BenchPieceBody
{
    public required string PieceId { get; init; }

    public required string OrderNumber { get; init; }

    public required string Mark { get; init; }

    [Description("cut, or waiting when the piece must be planned and cut again.")]
    public required string State { get; init; }

    [Description("The roll it was cut from.")]
    public required long RollId { get; init; }

    [Description("The roll has given all that was planned from it.")]
    public required bool RollFinished { get; init; }

    [Description("Label for what is left of the roll, when it goes back to the rack.")]
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? OffcutStockId { get; init; }
}

internal static class MarkCut
{
    public static void MapMarkCut(this IEndpointRouteBuilder routes) =>
        routes.MapPost("/v1/cutting/pieces/{pieceId}/cut", Answer)
            .WithGroupName("cutting").WithName("markPieceCut").WithTags("Bench")
            .WithSummary("Say that a piece is cut")
            .WithDescription(
                "Saying it again changes nothing. With the last cut of a roll, what is left and "
                + "long enough gets a label and goes to the rack.")
            .Produces<BenchPieceBody>()
            .MapRefusals(
                ProblemKind.PieceNotFound, ProblemKind.StateConflict,
                ProblemKind.StoreUnavailable);

    private static Task<IResult> Answer(
        string pieceId, HttpContext context,
        [FromKeyedServices(CuttingSetup.Service)] SqliteStore store) =>
        BenchRequest.AnswerAsync(context, store, transaction => Cut(transaction, pieceId));

    private static BenchRequest.Outcome<BenchPieceBody> Cut(
        StoreTransaction transaction, string pieceId)
    {
        if (CutStore.Piece(transaction, pieceId) is not { } piece)
        {
            return new ProblemAnswer(
                ProblemKind.PieceNotFound, "No piece with this id came to be cut.");
        }

        if (piece.RollId is not { } rollId)
        {
            return new ProblemAnswer(
                ProblemKind.StateConflict,
                $"Piece {piece.Mark} of {piece.OrderNumber} has no place on a roll: its order is "
                + $"{piece.OrderState}.");
        }

        if (piece.CutAt is null)
        {
            if (Room.Lacking(transaction, piece, rollId) is { } lacking)
            {
                return lacking;
            }

            CutStore.Cut(transaction, pieceId);
            FinishRoll.IfDone(transaction, rollId);
            PlanStore.CountChange(transaction);
        }

        return new BenchPieceBody
        {
            PieceId = piece.PieceId,
            OrderNumber = piece.OrderNumber,
            Mark = piece.Mark,
            State = "cut",
            RollId = rollId,
            RollFinished = CutStore.Roll(transaction, rollId)!.FinishedAt is not null,
            OffcutStockId = StockStore.OffcutOf(transaction, rollId),
        };
    }
}
