using System.Globalization;
using PostFrame.Engine.Buildings;
using PostFrame.Engine.Quantities;
using PostFrame.Engine.TakeOff;

namespace PostFrame.Engine;

/// <summary>What an estimator should look at before ordering.</summary>
/// <remarks>Source: takeoff.md 1.3, 2.4, 2.6, 2.9, 3, 4.5, 4.6 and W6; common practice.</remarks>
internal static class Warnings
{
    /// <summary>Over 4:12 a roof is steep. Source: 29 CFR 1926.501(b)(11).</summary>
    private const double SteepRoof = 4 + 1e-6;

    public static IReadOnlyList<Warning> Of(Job job) =>
    [
        .. OfPlanes(job), .. OfRoof(job), .. OfStrips(job), .. OfOpenings(job), .. OfPieces(job),
        .. OfProducts(job),
    ];

    private static IEnumerable<Warning> OfPlanes(Job job)
    {
        if (job.Plan.Uncovered.Count > 0)
            yield return new(
                "planes-left-out",
                "Left without insulation, as asked: "
                + string.Join(", ", job.Plan.Uncovered.Select(p => p.Title)) + ".", null);
        foreach (var warning in Beyond(job)) yield return warning;
        foreach (var lean in job.Building.LeanTos.Where(l => l.Inside == LeanToInside.Cold))
            foreach (var plane in job.Planes.Where(p =>
                p.Plane.StartsWith("lean", StringComparison.Ordinal)
                && p.Plane.Contains(lean.Side.ToString(), StringComparison.Ordinal)))
                yield return new(
                    "cold-lean-to-covered",
                    $"{plane.Title} is covered although the lean-to is cold.", plane.Plane);
        foreach (var plane in job.Planes.Where(p => p.Kind == PlaneKind.Endwall
            && PlaceOf(job.Building, p.Plane) is { } place
            && (place < job.Building.Insulated.From || place > job.Building.Insulated.To)))
            yield return new(
                "beyond-partition",
                $"{plane.Title} is covered although it closes the cold part beyond the partition "
                + $"at {job.Building.Partition!.Value.SayLong(job.Metric)}; the insulated part "
                + "ends at the partition.", plane.Plane);
    }

    /// <summary>Planes, openings, panels and a vent that the partition cuts off.</summary>
    private static IEnumerable<Warning> Beyond(Job job)
    {
        if (job.Building.Partition is not { } partition) yield break;
        var where = $"the partition at {partition.SayLong(job.Metric)}";
        if (job.Plan.Beyond.Count > 0)
            yield return new(
                "beyond-partition",
                $"Left out, because nothing of them lies on the insulated side of {where}: "
                + string.Join(", ", job.Plan.Beyond.Select(p => p.Title)) + ".", null);
        foreach (var opening in job.OpeningsBeyond)
            yield return new(
                "beyond-partition",
                $"The {OpeningReading.Word(opening.Kind)} in {opening.Plane}"
                + (opening.Along is { } along ? $" at {job.Say(along.From)}" : "")
                + $" lies beyond {where}, in the cold part, and takes no part.", opening.Plane);
        var onTheRoof = job.Building.Panels
            .Select(p => (What: "translucent panel", p.Plane, p.Along)).ToList();
        if (job.Building.Vent is { } vent) onTheRoof.Add(("vent of the ridge", "roof", vent));
        foreach (var (what, plane, along) in onTheRoof.Where(x =>
            !x.Along.Overlaps(job.Building.Insulated)))
            yield return new(
                "beyond-partition",
                $"The {what} from {job.Say(along.From)} to {job.Say(along.To)} lies beyond "
                + $"{where}, in the cold part, and takes no part.", plane);
    }

    /// <summary>Where an endwall stands along the building; null for a partition.</summary>
    private static Length? PlaceOf(Building building, string endwall)
    {
        if (endwall.StartsWith("endwall", StringComparison.Ordinal))
            return endwall[^1] == '1' ? Length.Zero : building.Length;
        return building.LeanTos
            .Where(l => endwall.StartsWith($"leanEndwall{l.Side}", StringComparison.Ordinal))
            .Select(l => (Length?)(endwall[^1] == '1' ? l.Along.From : l.Along.To))
            .FirstOrDefault();
    }

    private static IEnumerable<Warning> OfRoof(Job job)
    {
        var roofed = job.Planes.Any(p => p.Kind == PlaneKind.Roof && p.Strips > 0);
        if (!roofed) yield break;
        if (job.Plan.RoofChoice is { } choice
            && choice.Why.StartsWith("asked over", StringComparison.Ordinal))
            yield return new("vent-forbids-over-ridge", $"Laid as pairs: {choice.Why}.", "roof");
        yield return new(
            "lay-with-the-wind",
            "Blanket goes on just ahead of the cladding, from the leeward end: with the wind from "
            + "endwall 1 lay the highest strip first, the tabs to the other hand. Plan for two "
            + "people on the purlins whatever a piece weighs"
            + (job.Building.Roof.Profile.Steepest.RisePer12 > SteepRoof
                ? ", and on so steep a roof stop sooner than at "
                    + (job.Metric ? "24 km/h." : "15 mph.")
                : "."), null);
        if (job.Given.Roof?.EaveOverhang is { } overhang && overhang > Length.Zero)
            yield return new(
                "vented-eave",
                "If the soffit lets air in, the eave tuck must not close its path: shorten the "
                + "tuck, or leave the last purlin space open with a baffle.", null);
        if (job.Planes.Any(p => p.Strips > 0 && p.Panels.Count > 0))
            yield return new(
                "cut-out-panels",
                "Strips run over translucent panels: cut them out, fold the facing in and tape the "
                + "same day. Blanket left over a panel hides a fall hazard from above.", null);
        foreach (var warning in AtLeanTos(job)) yield return warning;
        var drape = job.Units.SelectMany(u => u.Pieces).Select(p => p.Draft)
            .Where(d => !d.Plane.IsWall)
            .Select(d => job.Rule.DrapeOf(d.Plane, d.Top.Up - d.Bottom))
            .DefaultIfEmpty(Length.Zero).Max();
        if (drape > (job.Practice.EaveTuck + job.Practice.RidgeLap).Times(0.5))
            yield return new(
                "much-drape",
                $"The drape comes to {drape.SayAbout(job.Metric)}, more than half the end "
                + "allowances.", null);
    }

    /// <summary>Strips that reach over an overhang on a part of their width only.</summary>
    private static IEnumerable<Warning> AtLeanTos(Job job) =>
        from unit in job.Units
        from plane in unit.Unit.PairsAtVent.Prepend(unit.Unit.Plane)
        from cut in plane.Cutbacks
        let across = unit.Pieces.Where(p => p.Draft.Plane == plane
            && p.Draft.Covers.Overlaps(cut.Along) && !cut.Along.Holds(p.Draft.Covers)).ToArray()
        where across.Length > 0
        select new Warning(
            "overhang-beside-lean-to",
            $"{CountWords.Of(across.Length, "strip")} of {plane.Title}"
            + $"{SuchAs([.. across.Select(p => $"strip {p.Strip.Number}")])}, "
            + (across.Length == 1 ? "lies" : "lie")
            + " partly at the lean-to, which carries the roof on, and partly at the overhang: cut "
            + $"{(cut.AtBottom + cut.AtTop).SayRounded(job.Metric)} off the lower end at the "
            + "lean-to on site.",
            plane.Id);

    private static IEnumerable<Warning> OfStrips(Job job)
    {
        var scant = job.Metric ? Length.FromMillimetres(75) : Length.FromInches(3);
        string[] planes = [.. job.Planes.Where(p => p.Strips > 0 && p.Surplus < scant)
            .Select(p => $"{p.Title} ({job.Say(p.Surplus)})")];
        if (planes.Length > 0)
            yield return new(
                "scant-surplus",
                $"Less than {job.Say(scant)} of blanket is left over to wrap at corners and rakes: "
                + string.Join(", ", planes) + ". Add a wrap if it is wanted.", null);
        foreach (var choice in job.Choices.Where(c => c.Taken))
            yield return new(
                "thin-last-strip", choice.Text + string.Concat(job.Choices
                    .Where(c => c.Plane == choice.Plane && !c.Taken)
                    .Select(c => $" Or lastStrip {c.Choice.ToString().ToLowerInvariant()}: "
                        + $"{c.What[..^1]} ({Than(job, c.Gross, choice.Gross)}).")),
                choice.Plane);
        foreach (var unit in job.Units.Where(u => u.Unit.Plane.Kind == PlaneKind.Roof
            && u.Strips.Any(s => IsWholeInches(s.Width, 36) || IsWholeInches(s.Width, 72))))
            yield return new(
                "joints-meet-panel-laps",
                "Strips of this width line up with every lap or every second lap of panels "
                + $"{Length.FromInches(36).Say(job.Metric)} wide; start with a narrower or offset "
                + "strip.", unit.Unit.Plane.Id);
    }

    /// <summary>"31.5 ft² less", "1.2 m² more" or "as much".</summary>
    private static string Than(Job job, Area one, Area other)
    {
        var more = one.TotalSquareFeet - other.TotalSquareFeet;
        var by = Area.FromSquareFeet(Math.Abs(more)).Say(job.Metric);
        return Math.Abs(more) < 0.05 ? "as much" : $"{by} {(more < 0 ? "less" : "more")}";
    }

    private static IEnumerable<Warning> OfOpenings(Job job)
    {
        foreach (var unit in job.Units)
            foreach (var group in
                new HeaderMerge(unit.Unit, job.Rule, job.Practice).ShortOnes(unit.Pieces))
                yield return new(
                    "short-header",
                    $"{CountWords.Of(group.Upright.Count, "header piece")} of about "
                    + $"{job.Say(group.Upright[0].Draft.Cut)} above the opening at "
                    + $"{job.Say(group.Opening.Along!.Value.From)} "
                    + (group.Upright.Count == 1 ? "is" : "are")
                    + $" fiddly.{InOne(job, group)}", unit.Unit.Plane.Id);
        foreach (var piece in job.Pieces.Where(p =>
            p is { Role: PieceRole.Header, Lay: PieceLay.Across }))
            yield return new(
                "short-headers-joined",
                $"The short headers above the opening at {job.Say(piece.From)} are one piece laid "
                + $"along it, {piece.Mark}: it "
                + $"{piece.Why.First(w => w.Term == "headersMerged").Text}.", piece.Plane);
        foreach (var saving in job.Savings)
            yield return new("unplaced-opening", saving.Text, saving.Plane);
        foreach (var opening in job.Openings.Where(o => o.IsWide && o.Along is not null))
            if (!job.Units.Any(u => u.Pieces.Any(p => p.Draft.Opening == opening))
                && job.Planes.Any(p => p.Plane == opening.Plane && p.Strips > 0))
                yield return new(
                    "opening-saves-nothing",
                    $"No strip lies wholly inside the opening at "
                    + $"{job.Say(opening.Along!.Value.From)}; all are hung full and cut out.",
                    opening.Plane);
    }

    /// <summary>What one piece along the opening would do in place of short headers.</summary>
    private static string InOne(Job job, ShortHeaders group)
    {
        if (group.Joined is not { Draft.Cut: var cut })
            return group.WhyNot.Length == 0 ? ""
                : $" One piece along the opening does not fit: {group.WhyNot}.";
        var one = $" One piece {cut.SayLong(job.Metric)} long laid along the opening would do, "
            + $"1 piece of {group.JoinedArea.Say(job.Metric)} for {group.Upright.Count} of "
            + group.UprightArea.Say(job.Metric);
        return group.IsBetter ? $"{one}: let short headers be merged to have it."
            : $"{one}: it buys more, so they stay as they are.";
    }

    private static IEnumerable<Warning> OfPieces(Job job)
    {
        foreach (var group in job.Pieces.GroupBy(p => (p.Product, p.Width)))
        {
            var product = job.ProductOf(group.Key.Product);
            var roll = product.Rolls
                .First(r => r.Width == group.Key.Width).RollLength - job.Practice.EndTrim;
            string[] tooLong = [.. group.Where(p => p.Cut > roll).Select(p => p.Mark)];
            if (tooLong.Length > 0)
                yield return new(
                    "piece-longer-than-roll",
                    $"{CountWords.Of(tooLong.Length, "piece")} "
                    + $"{(tooLong.Length == 1 ? "is" : "are")} longer than a roll yields "
                    + $"({roll.SayLong(job.Metric)} of {product.TitleIn(job.Metric)})"
                    + $"{SuchAs(tooLong)}: choose pairs or order longer rolls.",
                    group.First(p => p.Cut > roll).Plane);
        }
        foreach (var (id, least, most, text) in new[]
        {
            ("two-people", job.Practice.OnePersonLimit, job.Practice.TwoPersonLimit,
                "two people"),
            ("hoist", job.Practice.TwoPersonLimit, Mass.FromPounds(double.MaxValue),
                "a hoist"),
        })
        {
            Piece[] heavy = [.. job.Pieces.Where(p => p.Weight > least && !(p.Weight > most))];
            if (heavy.Length > 0)
                yield return new(
                    id, $"{CountWords.Of(heavy.Length, "piece")} over {least.Say(job.Metric)} "
                    + $"{(heavy.Length == 1 ? "needs" : "need")} {text}"
                    + SuchAs([.. heavy.Select(p => $"{p.Mark} at {p.Weight.Say(job.Metric)}")])
                    + ".", null);
        }
        var longest = job.Pieces
            .Where(p => p.Plane == "roof" && job.Building.Roof.Ridge is not null)
            .Select(p => p.Cut).DefaultIfEmpty(Length.Zero).Max();
        if (longest > Length.FromFeet(26))
            yield return new(
                "long-over-ridge",
                $"Pieces of {longest.SayLong(job.Metric)} over the ridge need two people, calm air "
                + "and both slopes open at once.", "roof");
    }

    private static IEnumerable<Warning> OfProducts(Job job)
    {
        foreach (var product in job.Assignments.Select(a => a.Product).Distinct()
            .OrderBy(p => p.Code, StringComparer.Ordinal))
            if (product.Kind == ProductKind.Blanket
                && product.Thickness.Value >= Length.FromInches(4))
                yield return new(
                    "thick-blanket",
                    $"{product.TitleIn(job.Metric)}: blanket of {(job.Metric ? "100 mm" : "4 in")} "
                    + "and more between cladding and framing needs longer screws and the building "
                    + "designer's consent.", null);
            else if (product.Kind == ProductKind.BubbleSheet)
                yield return new(
                    "bubble-alone",
                    $"{product.TitleIn(job.Metric)}: the sheet alone is about "
                    + $"{(job.Metric ? "R 0.18 m²·K/W" : "R-1")}. Any larger figure is for an "
                    + "assembly with still, enclosed air spaces and one direction of heat flow.",
                    null);
    }

    private static string SuchAs(string[] pieces) =>
        pieces.Length == 1 ? $", {pieces[0]}" : $", such as {pieces[0]}";

    private static bool IsWholeInches(Length width, double inches) =>
        width == Length.FromInches(inches);
}
