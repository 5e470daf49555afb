using PostFrame.Engine.Buildings;
using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.TakeOff;

/// <summary>
/// Tells how a piece's length came about, step by step, so that a pencil can check it. The values
/// before "exact" add up to it.
/// </summary>
internal sealed class PieceWhy(Practice practice, PieceRule rule)
{
    public IReadOnlyList<WhyLine> Of(Draft draft)
    {
        var lines = new List<WhyLine>();
        if (draft.Stretch is { } stretch)
        {
            lines.Add(new(
                "run", $"along the {(draft.Opening is null ? "plane" : "opening")} from "
                    + $"{Say(stretch.From)} to {Say(stretch.To)}",
                stretch.Size, "D"));
            if (draft.InsteadOf is { } headers)
                lines.Add(new("headersMerged", headers, Length.Zero, "D"));
            if (draft.JointLap > Length.Zero)
                lines.Add(new(
                    "jointLap", "lapped on the next piece", draft.JointLap,
                    practice.MarkOf("breakLap")));
        }
        else
        {
            lines.AddRange(draft.Plane.IsWall ? WallSteps(draft) : RoofSteps(draft));
            lines.AddRange(Lines(rule.Ends.AtBottom(draft.Plane, draft.BottomEnd)));
            lines.AddRange(Lines(rule.Ends.AtTop(draft.Plane, draft.TopEnd)));
        }
        lines.Add(new("exact", $"sum: {Say(draft.Exact)}", draft.Exact, "D"));
        lines.Add(new(
            "roundUp",
            $"up to the next {Say(practice.RoundUpTo)}; within {Say(practice.Tolerance)} above a "
            + $"step counts as on it: {Say(draft.Cut)}",
            draft.Cut, practice.MarkOf("roundUpTo")));
        return lines;
    }

    private IEnumerable<WhyLine> RoofSteps(Draft draft)
    {
        foreach (var (i, part) in draft.Plane.Slopes.Index().OrderBy(s => s.Item.IsOverhang))
            yield return IsCarriedOn(draft, i) ? new(
                "eaveOverhang", "no overhang here: the lean-to carries the roof on", Length.Zero,
                "D") : new(
                part.IsOverhang ? "eaveOverhang" : "slopeLength",
                $"{(part.IsOverhang ? "overhang" : "run")} {Say(part.Run)} × slope factor "
                + $"{part.Slope.Factor:0.000000} ({Say(part.Slope)}) = {Say(part.Along)}",
                part.Along, part.IsOverhang ? "asked" : "D");
        var drape = rule.DrapeOf(draft.Plane, draft.Top.Up - draft.Bottom);
        if (drape > Length.Zero)
            yield return practice.DrapeSag > Length.Zero
                ? new(
                    "drape", $"sag {Say(practice.DrapeSag)} between purlins "
                    + $"{Say(Length.FromMillimetres(draft.Plane.Framing.SpacingMm))} apart: "
                    + "8·sag²/(3·spacing) in each space", drape, practice.MarkOf("drapeSag"))
                : new(
                    "drape", $"drape {practice.DrapePercent:0.###} % of the slope length", drape,
                    practice.MarkOf("drapePercent"));
    }

    /// <summary>True of an overhang of its plane, lowest or highest, that it does not reach.
    /// </summary>
    private static bool IsCarriedOn(Draft draft, int slope) =>
        (slope == 0 && draft.Bottom > draft.Plane.Base)
        || (slope == draft.Plane.Slopes.Count - 1 && draft.Top.Up < draft.Plane.Edge.Start.Up);

    private IEnumerable<WhyLine> WallSteps(Draft draft)
    {
        var (covers, top) = (draft.Covers, draft.Top);
        if (draft.Role == PieceRole.Sill)
            yield return new(
                "sillHeight", $"up to the sill of the opening at {Say(top.Up)}", top.Up, "D");
        else
            yield return new(
                "highestPoint",
                draft.Plane.Kind == PlaneKind.Sidewall
                    ? $"up to the top of the wall: {Say(top.Up)}"
                    : $"highest point on {Say(covers.From)} to {Say(covers.To)}, {Where(draft)} at "
                        + $"{Say(top.Across)}: {Height(draft)}",
                top.Up, "D");
        if (draft.Bottom == Length.Zero) yield break;
        var (term, what) = draft.BottomEnd == PlaneEnd.OpeningEdge
            ? ("openingTop", "opening's top")
            : ("stripBase", "strip's start");
        yield return new(term, $"less the {what} at {Say(draft.Bottom)}", -draft.Bottom, "D");
    }

    private static string Where(Draft draft)
    {
        var at = draft.Top.Across;
        if (at == draft.Covers.From) return "its left edge";
        return at == draft.Covers.To ? "its right edge" : "between its edges";
    }

    /// <summary>The height from the lower end of its profile segment, as a pencil would have it.
    /// </summary>
    private string Height(Draft draft)
    {
        var (at, up) = (draft.Top.Across, draft.Top.Up);
        var points = draft.Plane.Edge.Points;
        var right = 1;
        while (right < points.Count - 1 && points[right].Across < at) right++;
        var slope = draft.Plane.Edge.SlopeBefore(right);
        var foot = slope.RiseOverRun >= 0 ? points[right - 1] : points[right];
        var run = Length.Max(at - foot.Across, foot.Across - at);
        return run == Length.Zero
            ? $"{Say(up)} high"
            : $"{Say(foot.Up)} + {Say(run)} × {Rise(slope)} = {Say(up)}";
    }

    private static IEnumerable<WhyLine> Lines(IEnumerable<Allowance> allowances) =>
        allowances.Select(a => new WhyLine(a.Term, a.Text, a.Value, a.Mark));

    private string Rise(Slope slope) => practice.Metric
        ? $"{Math.Abs(slope.RiseOverRun):0.######}"
        : $"{Math.Abs(slope.RisePer12):0.####}/12";

    private string Say(Slope slope) =>
        practice.Metric ? $"{slope.TotalDegrees:0.###}°" : $"{slope.RisePer12:0.####}:12";

    private string Say(Length length) => length.Say(practice.Metric);
}
