using PostFrame.Engine.Buildings;
using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.TakeOff;

/// <summary>
/// The three ways to deal with a last strip that would cover less than 6 in: make it, one wider
/// strip instead, or make it and share the surplus between both ends as larger wraps.
/// </summary>
/// <remarks>Source: takeoff.md 2.6, first and last strip.</remarks>
internal sealed class LastStripChoices(UnitTaker taker, PieceRule rule, Practice practice)
{
    public IEnumerable<LastStripChoice> Of(UnitTakeOff take)
    {
        var unit = take.Unit;
        if (unit.BestWidths || unit.Widths.Count != 1 || unit.Plane.IsBand) yield break;
        var layout = new StripLayout(unit, rule, practice);
        var width = unit.Widths[0];
        if (take.Runs.FirstOrDefault(r => layout.IsThin(r, width)) is not { } run) yield break;
        var coverage = unit.Product.CoverageOf(width);
        var rest = run.Size
            - coverage * (run.Size.StepsToCover(coverage, practice.Tolerance) - 1);
        foreach (var choice in new[] { LastStrip.Make, LastStrip.Wider, LastStrip.Wrap })
        {
            var wider = layout.WiderFor(run, width);
            if (choice == LastStrip.Wider && wider is null) continue;
            var other = choice == unit.LastStrip
                ? take
                : taker.Take(unit with { LastStrip = choice });
            var length = other.Pieces.Aggregate(Length.Zero, (sum, p) => sum + p.Draft.Cut);
            var gross = other.Pieces.Aggregate(
                Area.Zero, (sum, p) => sum + Area.Of(p.Strip.Width, p.Draft.Cut));
            yield return new(
                unit.Plane.Id, choice, IsTaken(unit, choice, wider), length, gross,
                Words(choice, wider, unit.LastStrip),
                $"The last strip of {unit.Plane.Title} covers only {Say(rest)}. "
                + Words(choice, wider, unit.LastStrip));
        }
    }

    private static bool IsTaken(CoverUnit unit, LastStrip choice, Length? wider) =>
        unit.LastStrip == choice
        || (choice == LastStrip.Make && unit.LastStrip == LastStrip.Wider && wider is null);

    private string Words(LastStrip choice, Length? wider, LastStrip asked) => choice switch
    {
        LastStrip.Wider => $"One strip of {Say(wider!.Value)} takes the place of the last two.",
        LastStrip.Wrap => "It is made, and the surplus is shared as larger wraps at both ends.",
        _ when wider is null && asked == LastStrip.Wider =>
            "No roll covers the last two strips in one, so it is made at full width and trimmed "
            + "on site.",
        _ => "It is made at full width and trimmed on site.",
    };

    private string Say(Length length) => length.Say(practice.Metric);
}
