using PostFrame.Engine.Buildings;
using PostFrame.Engine.Heat;
using PostFrame.Engine.Quantities;
using PostFrame.Engine.TakeOff;

namespace PostFrame.Engine;

/// <summary>Sums up each covered plane.</summary>
internal sealed class PlaneResults(
    Building building,
    IReadOnlyList<Opening> openings,
    IReadOnlyList<Piece> pieces,
    Practice practice)
{
    /// <summary>Area goods deduct the windows a 48 in strip would.</summary>
    private static readonly Length AsStrip = Length.FromFeet(4);

    private readonly ILookup<string, Piece> byPlane = pieces.ToLookup(p => p.Plane);

    public IReadOnlyList<PlaneResult> Of(CoverPlan plan, IReadOnlyList<UnitTakeOff> units) =>
    [
        .. units.SelectMany(OfUnit).Concat(plan.Areas.Select(OfArea))
            .OrderBy(p => p.Kind).ThenBy(p => p.Plane, StringComparer.Ordinal),
    ];

    private IEnumerable<PlaneResult> OfUnit(UnitTakeOff take)
    {
        var unit = take.Unit;
        foreach (var plane in unit.PairsAtVent.Prepend(unit.Plane))
        {
            StripPosition[] strips = unit.PairsAtVent.Count == 0
                ? [.. take.Strips]
                : [.. take.Strips.Where(s => unit.PlanesAt(s.Covers).Contains(plane))];
            if (strips.Length == 0) continue;
            var covered = unit.PairsAtVent.Count == 0
                ? plane
                : plane with { Parts = Joined(strips) };
            yield return Of(covered, unit.Product, unit.Product.Thickness.Value,
                unit.NarrowestCoverage) with
            {
                Gross = byPlane[plane.Id].Aggregate(
                    Area.Zero, (sum, p) => sum + Area.Of(p.Width, p.Cut)),
                Strips = strips.Length,
                Run = Sum(covered.Parts.Select(p => p.Size)),
                Coverage = strips.Max(s => s.Reach.Size),
                Surplus = Sum(strips.Select(s => s.Reach.Size)) - RunOf(take, unit, covered),
                How = HowCounted(take, strips, RunOf(take, unit, covered), covered),
                Joints = [.. strips.SelectMany(s => new[] { s.Covers.From, s.Covers.To })
                    .Distinct().Order()],
            };
        }
    }

    private string HowCounted(
        UnitTakeOff take, IReadOnlyList<StripPosition> strips, Length run, Plane plane)
    {
        var covered = Sum(strips.Select(s => s.Reach.Size));
        var wraps = run - Sum(plane.Parts.Select(p => p.Size));
        var added = wraps > Length.Zero ? $" with {Say(wraps)} of wraps and laps" : "";
        var each = string.Join(" + ", strips.GroupBy(s => s.Reach.Size)
            .OrderByDescending(g => g.Key).Select(g => $"{g.Count()} × {Say(g.Key)}"));
        var why = take.Pieces.Any(p => p.Draft.Plane.IsBand && p.Draft.Lay == PieceLay.Across)
            ? "laid along the wall"
            : take.Unit.BestWidths ? "the widths that buy least, then make fewest pieces"
                : $"a rest within {Say(practice.Tolerance)} makes no strip";
        return $"{Say(run)} to cover{added}: {each} = {Say(covered)}, {Say(covered - run)} over; "
            + $"{why}";
    }

    private string Say(Length length) => length.Say(practice.Metric);

    /// <summary>The whole run with its wraps; where a vent divides it, what the strips cover.
    /// </summary>
    private static Length RunOf(UnitTakeOff take, CoverUnit unit, Plane covered) =>
        unit.PairsAtVent.Count == 0
            ? Sum(take.Runs.Select(r => r.Size))
            : Sum(covered.Parts.Select(p => p.Size));

    private PlaneResult OfArea(AreaCover cover)
    {
        var product = cover.Assignment.Product;
        var result = Of(
            cover.Plane, product, cover.Assignment.Input.Thickness ?? product.Thickness.Value,
            AsStrip);
        return result with { Gross = result.Net };
    }

    private PlaneResult Of(Plane plane, Product product, Length thickness, Length coverage)
    {
        Opening[] here = [.. openings.Where(o => o.Plane == plane.Id && o.Along is not null)];
        return new()
        {
            Plane = plane.Id,
            Code = plane.Code,
            Title = plane.Title,
            Kind = plane.Kind,
            Product = product.Code,
            Outline = plane.Outline(),
            Lines = plane.Lines,
            Net = here.Where(o => o.Deducts(coverage)).Aggregate(
                plane.Area, (net, o) => net - Within(plane, o)),
            Gross = Area.Zero,
            Strips = 0,
            Run = Sum(plane.Parts.Select(p => p.Size)),
            Coverage = Length.Zero,
            Surplus = Length.Zero,
            Joints = [],
            How = "by net area",
            Openings = [.. here.Select(o => new PlacedOpening(
                o.Kind, o.Along!.Value.From, o.Along.Value.To, o.Bottom, o.Top,
                o.Deducts(coverage)))],
            Panels = OnTheMap.Panels(building, plane),
            Start = plane.Origin,
            Thermal = PlaneHeat.Summarise(Construction(plane, product, thickness)),
        };
    }

    /// <summary>The part of an opening above the strips' start and within the covered stretches.
    /// </summary>
    private static Area Within(Plane plane, Opening opening)
    {
        var bottom = Length.Max(opening.Bottom, plane.Base);
        var width = Sum(plane.Parts.Where(p => p.Overlaps(opening.Along!.Value))
            .Select(p => opening.Along!.Value.ClippedTo(p).Size));
        return opening.Top > bottom ? Area.Of(width, opening.Top - bottom) : Area.Zero;
    }

    private PlaneConstruction Construction(
        Plane plane, Product product, Length thickness) => new()
        {
            SlopeDegrees = Math.Min(90, plane.SlopeDegrees),
            NominalR = ThermalResistance.FromSi(
            product.NominalR.Value.TotalSi * (thickness / product.Thickness.Value)),
            ThicknessMm = thickness.TotalMillimetres,
            RoomFaceEmittance = product.RoomFaceEmittance.Value,
            Kind = ProductMaterial.Of(product),
            Framing = plane.Framing,
            Words = practice.Metric ? UnitWords.Metric : UnitWords.Us,
        };

    /// <summary>A strip that only wraps a rake covers nothing of the run.</summary>
    private static IReadOnlyList<Interval> Joined(IEnumerable<StripPosition> strips)
    {
        var parts = new List<Interval>();
        foreach (var strip in strips.Where(s => s.Covers.Size > Length.Zero))
            if (parts.Count > 0 && parts[^1].To == strip.Covers.From)
                parts[^1] = new(parts[^1].From, strip.Covers.To);
            else
                parts.Add(strip.Covers);
        return parts;
    }

    private static Length Sum(IEnumerable<Length> lengths) =>
        lengths.Aggregate(Length.Zero, (sum, l) => sum + l);
}
