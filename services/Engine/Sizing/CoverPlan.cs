using PostFrame.Engine.Buildings;
using PostFrame.Engine.Quantities;
using PostFrame.Engine.TakeOff;

namespace PostFrame.Engine;

/// <summary>A plane covered by goods bought by area.</summary>
internal sealed record AreaCover(Plane Plane, Assignment Assignment);

/// <summary>
/// Which planes are covered by what, roof layout decided; units and planes in canonical order,
/// whatever the order of the request.
/// </summary>
internal sealed class CoverPlan
{
    private readonly Building building;
    private readonly Practice practice;
    private readonly List<CoverUnit> units = [];
    private readonly List<AreaCover> areas = [];
    private readonly List<Plane> uncovered = [];
    private readonly List<Plane> beyond = [];

    private CoverPlan(Building building, Practice practice) =>
        (this.building, this.practice) = (building, practice);

    public IReadOnlyList<CoverUnit> Units => units;

    public IReadOnlyList<AreaCover> Areas => areas;

    public IReadOnlyList<Plane> Uncovered => uncovered;

    /// <summary>Planes of which nothing lies in the insulated part.</summary>
    public IReadOnlyList<Plane> Beyond => beyond;

    /// <summary>How the main roof is laid and why; null when no rolls cover it.</summary>
    public (RoofLayout Layout, string Why)? RoofChoice { get; private set; }

    public static CoverPlan Of(
        Building building, Practice practice, IReadOnlyList<Plane> walls,
        IReadOnlyList<Assignment> assignments)
    {
        var plan = new CoverPlan(building, practice);
        plan.CoverRoof(assignments);
        foreach (var lean in building.LeanTos)
            plan.Cover(RoofPlanes.OfLeanTo(building, lean), assignments);
        foreach (var wall in walls) plan.Cover(wall, assignments);
        return plan;
    }

    private void CoverRoof(IReadOnlyList<Assignment> assignments)
    {
        var whole = assignments.FirstOrDefault(a => a.Planes.Contains("roof"));
        if (building.Roof.Ridge is null)
        {
            var planes = whole?.Input.BreakLayout == BreakLayout.Split
                ? RoofPlanes.Segments(building)
                : [RoofPlanes.Over(building)];
            foreach (var plane in planes) Put(plane, whole);
            return;
        }
        if (whole is not null && whole.Product.IsCutFromRolls) CoverWhole(whole);
        else if (whole is not null) CoverSides(whole, whole);
        else
        {
            var a = assignments.FirstOrDefault(x => x.Planes.Contains("roofA"));
            var b = assignments.FirstOrDefault(x => x.Planes.Contains("roofB"));
            if (a is null && b is null) Put(RoofPlanes.Over(building), null);
            else CoverSides(a, b);
            if ((a ?? b)?.Product.IsCutFromRolls == true)
                RoofChoice = (RoofLayout.EaveToRidge, "each slope is named by itself");
        }
    }

    private void CoverWhole(Assignment whole)
    {
        var over = RoofPlanes.Over(building);
        var (layout, why) = Choose(whole, over);
        RoofChoice = (layout, why);
        if (layout == RoofLayout.EaveToRidge)
        {
            CoverSides(whole, whole);
            return;
        }
        units.Add(Unit(over, whole) with
        {
            PairsAtVent = building.Vent is null
                ? []
                : [RoofPlanes.OnSide(building, BuildingSide.A),
                    RoofPlanes.OnSide(building, BuildingSide.B)],
        });
    }

    /// <remarks>Source: takeoff.md 2.4, "Eave-to-eave or eave-to-ridge?"</remarks>
    private (RoofLayout Layout, string Why) Choose(Assignment whole, Plane over)
    {
        switch (whole.Input.RoofLayout ?? RoofLayout.Auto)
        {
            case RoofLayout.EaveToRidge:
                return (RoofLayout.EaveToRidge, "as asked");
            case RoofLayout.OverRidge when building.Vent is { } vent
                && vent.Holds(building.Insulated):
                return (RoofLayout.EaveToRidge,
                    "asked over the ridge, but the ridge is vented all along: blanket across the "
                    + "slot would seal it");
            case RoofLayout.OverRidge:
                return (RoofLayout.OverRidge, "as asked");
            default:
                break;
        }
        if (whole.Input.BreakLayout == BreakLayout.Split)
            return (RoofLayout.EaveToRidge, "pieces are split at the break");
        if (building.Vent is not null)
            return (RoofLayout.EaveToRidge, "the ridge is vented");
        var piece = new PieceRule(building, practice, [])
            .Of(over, new(Length.Zero, over.Run), over.Run)[0];
        if (piece.Exact > practice.LongestOverRidge)
            return (RoofLayout.EaveToRidge,
                $"over the ridge would be {piece.Exact.SayRounded(building.Metric)}, more than "
                + practice.LongestOverRidge.SayRounded(building.Metric));
        var weight = Weights.Of(whole.Product, whole.Widths.Max(), piece.Cut);
        return weight > practice.TwoPersonLimit
            ? (RoofLayout.EaveToRidge,
                $"a piece over the ridge would weigh {weight.Say(building.Metric)}, more than two "
                + $"people lift ({practice.TwoPersonLimit.Say(building.Metric)})")
            : (RoofLayout.OverRidge,
                $"over the ridge is {piece.Cut.SayRounded(building.Metric)} and "
                + $"{weight.Say(building.Metric)} a piece: fewer pieces and no ridge joint");
    }

    private void CoverSides(Assignment? a, Assignment? b)
    {
        foreach (var (side, assignment) in new[] { (BuildingSide.A, a), (BuildingSide.B, b) })
        {
            var planes = assignment?.Input.BreakLayout == BreakLayout.Split
                ? RoofPlanes.Segments(building, side)
                : [RoofPlanes.OnSide(building, side)];
            foreach (var plane in planes) Put(plane, assignment);
        }
    }

    private void Cover(Plane plane, IReadOnlyList<Assignment> assignments) =>
        Put(plane, assignments.FirstOrDefault(a => a.Planes.Contains(plane.Id)));

    private void Put(Plane plane, Assignment? assignment)
    {
        if (plane.Parts.Count == 0)
        {
            beyond.Add(plane);
            return;
        }
        if (assignment is null)
        {
            uncovered.Add(plane);
            return;
        }
        if (plane.IsWall && assignment.Input.StartHeight is { } start)
            plane = plane with { Base = Length.Max(plane.Base, start) };
        if (assignment.Product.IsCutFromRolls) units.Add(Unit(plane, assignment));
        else areas.Add(new(plane, assignment));
    }

    private static CoverUnit Unit(Plane plane, Assignment assignment) => new()
    {
        Plane = plane,
        Product = assignment.Product,
        Widths = assignment.Widths,
        BestWidths = assignment.Input.BestRollWidth,
        LastStrip = assignment.Input.LastStrip ?? LastStrip.Make,
        Path = assignment.Path,
    };
}
