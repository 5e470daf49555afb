using System.Globalization;
using Microsoft.AspNetCore.Http.HttpResults;
using PostFrame.CuttingWorker.Queue;
using PostFrame.Messaging;
using PostFrame.Problems;

namespace PostFrame.CuttingWorker.Plans;

internal static class GetPlan
{
    private const string PlanesMixed =
        "Cut in this order, the rolls do not finish each plane before the next as was chosen: "
        + "rolls begun before come first, or the rolls at hand did not suffice for it.";

    private const string ShorterRolls =
        "The bound on rolls counts them whatever their length: where short ones are used up or "
        + "begun ones kept, fewer rolls might do, but not with less material bought.";

    public static void MapPlans(this IEndpointRouteBuilder routes) =>
        routes.MapGet("/v1/cutting/plans/{orderNumber}", Answer)
            .WithGroupName("cutting").WithName("getCuttingPlan").WithTags("Plans")
            .WithSummary("How an order is cut")
            .WithDescription(
                "Rolls in cutting order with the cuts on each, what is left over, and how close "
                + "the plan is to the least possible.")
            .MapRefusals(ProblemKind.PlanNotFound, ProblemKind.StateConflict);

    private static Results<Ok<PlanBody>, ProblemAnswer> Answer(
        string orderNumber, [FromKeyedServices(CuttingSetup.Service)] SqliteStore store)
    {
        var (order, cuts, rolls) = store.Read(view =>
        {
            var found = CutStore.OfOrder(view, orderNumber);
            return (OrderStore.Find(view, orderNumber), found,
                found.Select(cut => cut.PlanId).Distinct()
                    .ToDictionary(plan => plan, plan => CutStore.RollsOf(view, plan)));
        });
        return order is null
            ? new ProblemAnswer(
                ProblemKind.PlanNotFound, "No order with this number came to be cut.")
            : cuts.Count == 0
                ? WhyNone(order)
                : TypedResults.Ok(Body(order, cuts, rolls));
    }

    /// <summary>An order that had a plan is found; that it waits again ends by itself.</summary>
    private static ProblemAnswer WhyNone(OrderRow order) => order switch
    {
        { State: "refused" } => new(
            ProblemKind.PlanNotFound, string.Join(
                ' ', Announcement.RefusalsOf(order.Refusals).Select(refusal => refusal.Text))),
        { PlanNumber: > 0 } => new(
            ProblemKind.StateConflict,
            $"Order {order.OrderNumber} is being planned anew; plan {order.PlanNumber} holds no "
            + "more. Ask again.")
        {
            RetryAfterSeconds = 1,
        },
        _ => new(
            ProblemKind.PlanNotFound, $"Order {order.OrderNumber} waits to be planned."),
    };

    private static PlanBody Body(
        OrderRow order, IReadOnlyList<CutRow> cuts, Dictionary<long, int> rollsOf)
    {
        var own = cuts.Where(cut => cut.OrderNumber == order.OrderNumber
            && cut.VoidedAt is null).ToList();
        var piecesCut = own.Count(cut => cut.CutAt is not null);
        return new PlanBody
        {
            OrderNumber = order.OrderNumber,
            Revision = (int)order.Revision,
            NeededBy = DateOnly.Parse(order.NeededBy, CultureInfo.InvariantCulture),
            State = order.State != "planned" ? order.State
                : piecesCut == own.Count ? "cut"
                : piecesCut > 0 ? "cutting" : "planned",
            PlannedAt = DateTimeOffset.FromUnixTimeMilliseconds(
                cuts.Max(cut => cut.PlannedAt)).UtcDateTime,
            PlanNumber = (int)order.PlanNumber,
            OnePlaneAtATime = order.OnePlaneAtATime,
            Pieces = own.Count,
            PiecesCut = piecesCut,
            Rolls = own.Select(cut => cut.RollId).Distinct().Count(),
            Warnings = [.. Shades.Warnings(own), .. order.OnePlaneAtATime && ComesBack(own)
                ? [PlanesMixed] : Array.Empty<string>()],
            Plans = [.. cuts.GroupBy(cut => cut.PlanId)
                .Select(plan => Plan(plan, rollsOf[plan.Key]))],
        };
    }

    /// <summary>Whoever cuts the rolls in turn comes back to a plane he had left.</summary>
    private static bool ComesBack(IEnumerable<CutRow> own) => own.GroupBy(cut => cut.PlanId)
        .Any(plan =>
        {
            var planes = plan.Select(cut => cut.Plane).ToList();
            return planes.Where((plane, at) => at == 0 || planes[at - 1] != plane).Count()
                > planes.Distinct().Count();
        });

    private static ProductPlanBody Plan(IEnumerable<CutRow> cuts, int rollCount)
    {
        var plan = cuts.First();
        var rolls = cuts.GroupBy(cut => cut.RollId).Select(roll => roll.ToList()).ToList();
        return new ProductPlanBody
        {
            Product = plan.Product,
            ProductTitle = Words.Title(plan.Product, plan.WidthNm),
            WidthIn = Words.Inches(plan.WidthNm),
            WidthMm = Words.Millimetres(plan.WidthNm),
            WidthText = Words.Width(plan.WidthNm),
            Rolls = rollCount,
            LowerBoundRolls = (int)plan.LowerBoundRolls,
            GapRolls = rollCount - (int)plan.LowerBoundRolls,
            Patterns = rolls.Select(roll => (roll[0].RollLengthNm, string.Join(
                ' ', roll.Select(piece => piece.CutNm).Order()))).Distinct().Count(),
            Proven = plan.Proven,
            Method = plan.Method,
            Explanation = plan.Proven && rollCount > plan.LowerBoundRolls
                ? $"{plan.Explanation} {ShorterRolls}" : plan.Explanation,
            Material = Material(rolls),
            RollList = [.. rolls.Select(Roll)],
        };
    }

    private static MaterialBody Material(List<List<CutRow>> rolls)
    {
        var all = rolls.Sum(roll => roll[0].RollLengthNm);
        var cut = rolls.Sum(roll => roll.Sum(piece => piece.CutNm));
        var offcut = rolls.Sum(roll => roll[0].LeavesOffcut ? roll[0].LeftOverNm : 0);
        var loss = all - cut - offcut;
        return new MaterialBody
        {
            RollIn = Words.Inches(all),
            CutIn = Words.Inches(cut),
            TrimLossIn = Words.Inches(loss),
            OffcutIn = Words.Inches(offcut),
            TrimLossPercent = Math.Round(100.0 * loss / all, 2),
        };
    }

    private static RollBody Roll(List<CutRow> cuts)
    {
        var roll = cuts[0];
        return new RollBody
        {
            Roll = (int)roll.Number,
            RollId = roll.RollId,
            StockId = roll.StockId,
            Lot = roll.Lot,
            RollLengthIn = Words.Inches(roll.RollLengthNm),
            RollLengthMm = Words.Millimetres(roll.RollLengthNm),
            RollLengthText = Words.Length(roll.RollLengthNm, roll.WidthNm),
            EndTrimIn = Words.Inches(roll.EndTrimNm),
            Cuts = [.. cuts.Select(Cut)],
            SpoiledIn = Words.Inches(roll.SpoiledNm),
            LeftOverIn = Words.Inches(roll.LeftOverNm),
            LeftOverMm = Words.Millimetres(roll.LeftOverNm),
            LeftOverText = Words.Length(roll.LeftOverNm, roll.WidthNm),
            LeftOver = roll.LeavesOffcut ? "offcut" : "scrap",
            Finished = roll.FinishedAt is not null,
        };
    }

    private static CutBody Cut(CutRow cut) => new()
    {
        Sequence = (int)cut.Sequence,
        PieceId = cut.PieceId,
        OrderNumber = cut.OrderNumber,
        Mark = cut.Mark,
        Plane = cut.Plane,
        CutIn = Words.Inches(cut.CutNm),
        CutMm = Words.Millimetres(cut.CutNm),
        CutText = cut.CutText,
        State = cut.VoidedAt is not null ? "voided" : cut.CutAt is not null ? "cut" : "planned",
    };
}
