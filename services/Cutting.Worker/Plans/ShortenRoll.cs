using System.ComponentModel;
using System.Globalization;
using PostFrame.CuttingWorker.Queue;
using PostFrame.Messaging;
using PostFrame.Problems;

namespace PostFrame.CuttingWorker.Plans;

/// <summary>A roll that is shorter than its label says.</summary>
public sealed record ShortRollWish(
    [property: Description("Whole length as measured, cuts and end trim included: \"80 ft\".")]
    string MeasuredLength);

/// <summary>A roll after its true length was measured.</summary>
public sealed record BenchRollBody
{
    public required long RollId { get; init; }

    public required double RollLengthIn { get; init; }

    public required double RollLengthMm { get; init; }

    [Description("Orders that are planned anew, around the cuts already made.")]
    public required IReadOnlyList<string> OrdersPlannedAnew { get; init; }
}

internal static class ShortenRoll
{
    public static void MapShortenRoll(this IEndpointRouteBuilder routes) =>
        routes.MapPost("/v1/cutting/rolls/{rollId:long}/short", Answer)
            .NeedsKey()
            .Accepts<ShortRollWish>("application/json")
            .WithGroupName("cutting").WithName("markRollShort").WithTags("Bench")
            .WithSummary("Say that a roll is shorter than its label says")
            .WithDescription("What no longer fits is planned anew; every cut made is kept.")
            .Produces<BenchRollBody>()
            .MapRefusals(
                ProblemKind.IdempotencyKeyMissing, ProblemKind.RollNotFound,
                ProblemKind.StateConflict, ProblemKind.UnsupportedMediaType,
                ProblemKind.InvalidRequest, ProblemKind.StoreUnavailable);

    private static async Task<IResult> Answer(
        long rollId, HttpContext context, PlanCutting planner,
        [FromKeyedServices(CuttingSetup.Service)] SqliteStore store)
    {
        var answer = await BenchRequest.AnswerOnceAsync<Measured, BenchRollBody>(
            context, store, Read, (transaction, wish) => Shorten(transaction, rollId, wish));
        planner.Wake();
        return answer;
    }

    private static Measured? Read(RequestObject root) =>
        root.Length("measuredLength") is { } length ? new Measured(length.Nanometres) : null;

    private static BenchRequest.Outcome<BenchRollBody> Shorten(
        StoreTransaction transaction, long rollId, Measured wish)
    {
        if (CutStore.Roll(transaction, rollId) is not { } roll)
        {
            return new ProblemAnswer(ProblemKind.RollNotFound, "No plan has a roll with this id.");
        }

        if (roll.FinishedAt is not null)
        {
            return new ProblemAnswer(
                ProblemKind.StateConflict, $"Roll {rollId} is finished; nothing more comes of it.");
        }

        var least = roll.EndTrimNm + roll.CutNm + roll.SpoiledNm;
        if (wish.LengthNm < Math.Max(1, least) || wish.LengthNm >= roll.RollLengthNm)
        {
            var mistakes = new Mistakes();
            mistakes.Add(
                "/measuredLength", "roll-length", Words.Length(wish.LengthNm),
                $"A short roll is at least {Words.Length(least)} (cut from it and squared off) "
                + $"and under {Words.Length(roll.RollLengthNm)}.",
                Words.Inches(roll.RollLengthNm).ToString(CultureInfo.InvariantCulture), "in");
            return ProblemAnswer.Invalid(mistakes);
        }

        CutStore.Shorten(transaction, rollId, wish.LengthNm);
        var orders = CutStore.OrdersOn(transaction, rollId);
        foreach (var order in orders)
        {
            OrderStore.Wait(transaction, order);
        }

        PlanStore.CountChange(transaction);
        return new BenchRollBody
        {
            RollId = rollId,
            RollLengthIn = Words.Inches(wish.LengthNm),
            RollLengthMm = Words.Millimetres(wish.LengthNm),
            OrdersPlannedAnew = orders,
        };
    }

    private sealed record Measured(long LengthNm);
}
