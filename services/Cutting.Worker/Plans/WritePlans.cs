using PostFrame.Messaging;

namespace PostFrame.CuttingWorker.Plans;

/// <summary>
/// Puts new plans in the place of old ones. What was cut stays where it was cut: begun and finished
/// rolls go on in the new plan, before the new rolls.
/// </summary>
internal static class WritePlans
{
    public static void Write(StoreTransaction transaction, PlanningState state, PlanSet plans)
    {
        PlanStore.Unplace(transaction, state.Plans);
        PlanStore.ClearEmpty(transaction);
        foreach (var plan in plans.Plans)
        {
            var begun = state.Begun.Where(
                roll => (roll.Product, roll.WidthNm) == (plan.Product, plan.WidthNm)).ToList();
            Write(transaction, state, plan, begun);
        }
    }

    private static void Write(
        StoreTransaction transaction, PlanningState state, GroupPlan plan, List<RollRow> begun)
    {
        var goesOn = plan.Rolls.Where(roll => roll.GoesOnWith is not null)
            .ToDictionary(roll => roll.GoesOnWith!.Value);
        var planId = PlanStore.AddPlan(
            transaction, plan, begun.Count(roll => !goesOn.ContainsKey(roll.RollId)));
        var number = 0;
        foreach (var roll in begun)
        {
            var more = goesOn.GetValueOrDefault(roll.RollId);
            var left = more?.LeftOverNm ?? Math.Max(0, roll.LeftNm);
            PlanStore.KeepRoll(transaction, roll.RollId, planId, ++number, left, LeavesOffcut(
                state, roll, left));
            Place(transaction, roll.RollId, roll.LastCut, more?.PieceIds ?? []);
            FinishRoll.IfDone(transaction, roll.RollId);
        }

        foreach (var roll in plan.Rolls.Where(roll => roll.GoesOnWith is null))
        {
            var rollId = PlanStore.AddRoll(transaction, planId, ++number, roll);
            Place(transaction, rollId, 0, roll.PieceIds);
        }
    }

    private static bool LeavesOffcut(PlanningState state, RollRow roll, long leftNm) =>
        leftNm > 0 && leftNm >= state.MinUsefulOffcutNm.GetValueOrDefault(
            (roll.Product, roll.WidthNm), long.MaxValue);

    private static void Place(
        StoreTransaction transaction, long rollId, long after, IReadOnlyList<string> pieces)
    {
        foreach (var piece in pieces)
        {
            PlanStore.Place(transaction, piece, rollId, ++after);
        }
    }
}
