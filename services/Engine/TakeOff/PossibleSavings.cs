using PostFrame.Engine.Buildings;
using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.TakeOff;

/// <summary>
/// What a wide opening without a fixed place would save at best. It is shown and not taken: a
/// deduction for a door that then moves is a short job.
/// </summary>
/// <remarks>Source: takeoff.md 3.</remarks>
internal sealed class PossibleSavings(Building building, Practice practice)
{
    /// <summary>Places tried per opening on a sloping wall; on a level one all are alike.</summary>
    private const int MostPlaces = 50;

    public IEnumerable<PossibleSaving> Of(
        IReadOnlyList<Opening> openings, IReadOnlyList<UnitTakeOff> units)
    {
        foreach (var opening in openings.Where(o => o.Along is null))
        {
            if (units.FirstOrDefault(u => u.Unit.Plane.Id == opening.Plane) is not { } unit)
                continue;
            if (!opening.Deducts(unit.Unit.NarrowestCoverage)) continue;
            yield return Best(opening, unit);
        }
    }

    private PossibleSaving Best(Opening opening, UnitTakeOff take)
    {
        var best = Places(opening, take).Select(place => At(opening, take, place))
            .DefaultIfEmpty((Strips: 0, Length: Length.Zero, Area: Area.Zero))
            .MaxBy(s => s.Area.TotalSquareMetres);
        var plane = take.Unit.Plane;
        var what = opening.Kind.ToString();
        return new(
            $"{char.ToLowerInvariant(what[0])}{what[1..]} {opening.Width.SayLong(practice.Metric)}",
            plane.Id, best.Strips, best.Length, best.Area,
            $"An opening {opening.Width.SayLong(practice.Metric)} wide in {plane.Title} has no "
            + "fixed place and is not deducted; once fixed it may save up to "
            + $"{best.Length.SayLong(practice.Metric)} of blanket.");
    }

    private static IEnumerable<Interval> Places(Opening opening, UnitTakeOff take)
    {
        var run = take.Unit.Plane.Run;
        Length[] starts = [.. take.Strips.Select(s => s.Covers.From)
            .Where(f => f > Length.Zero && f + opening.Width < run)];
        var points = take.Unit.Plane.Edge.Points;
        if (points.All(p => p.Up == points[0].Up)) starts = [.. starts.Take(1)];
        var step = Math.Max(1, starts.Length / MostPlaces);
        return starts.Where((_, i) => i % step == 0)
            .Select(s => new Interval(s, s + opening.Width));
    }

    private (int Strips, Length Length, Area Area) At(
        Opening opening, UnitTakeOff take, Interval place)
    {
        var without = new PieceRule(building, practice, []);
        var with = new PieceRule(building, practice, [opening with { Along = place }]);
        var (strips, length, area) = (0, Length.Zero, Area.Zero);
        foreach (var strip in take.Strips.Where(s => place.Holds(s.Covers)))
        {
            var saved = Cut(without, take, strip) - Cut(with, take, strip);
            (strips, length) = (strips + 1, length + saved);
            area += Area.Of(strip.Width, saved);
        }
        return (strips, length, area);
    }

    private static Length Cut(
        PieceRule rule, UnitTakeOff take, StripPosition strip) =>
        rule.Of(take.Unit.Plane, strip.Covers, take.Unit.NarrowestCoverage)
            .Aggregate(Length.Zero, (sum, d) => sum + d.Cut);
}
