using NetTopologySuite.Geometries;
using NetTopologySuite.Operation.Overlay;
using NetTopologySuite.Operation.OverlayNG;
using PostFrame.Engine;
using PostFrame.Engine.Buildings;

namespace PostFrame.EngineTests.TakeOff;

/// <summary>
/// Planes of a building as NetTopologySuite polygons in inches, drawn from the request by the
/// table of forms in takeoff.md 2.3 and by nothing of ours.
/// </summary>
internal sealed class PolygonOracle(BuildingInput building)
{
    private static readonly GeometryFactory Factory = new();

    private double Width => building.Width!.Value.TotalInches;

    private double Run => building.Length!.Value.TotalInches;

    private double Eave => building.EaveHeight!.Value.TotalInches;

    private double Eaves =>
        building.Roof!.CoverOverhangs ? building.Roof.EaveOverhang?.TotalInches ?? 0 : 0;

    private double RoofRun => Run + (building.Roof!.CoverOverhangs
        ? 2 * building.Roof.RakeOverhang?.TotalInches ?? 0
        : 0);

    public static Polygon Rectangle(double left, double bottom, double right, double top) =>
        Factory.CreatePolygon(
            [new(left, bottom), new(right, bottom), new(right, top), new(left, top),
                new(left, bottom)]);

    public static Geometry Union(IEnumerable<Geometry> parts) =>
        OverlayNGRobust.Union(Factory.BuildGeometry(parts));

    /// <summary>What of the first the second leaves; snaps where plain overlay would throw.
    /// </summary>
    public static Geometry Difference(Geometry first, Geometry second) =>
        OverlayNGRobust.Overlay(first, second, SpatialFunction.Difference);

    /// <summary>The plane as a polygon; null for planes it does not draw.</summary>
    public Polygon? Of(string plane)
    {
        var main = Profile();
        var ridge = main.MaxBy(p => p.Y)!;
        var lean = building.LeanTos is { Count: > 0 } leans ? leans[0] : null;
        var leanWidth = lean?.Width!.Value.TotalInches ?? 0;
        var leanFall = leanWidth * (lean?.Slope!.Value.RiseOverRun ?? 0);
        var drop = lean?.Drop?.TotalInches ?? 0;
        var (overA, overB) = (Overhang(main[0], main[1], BuildingSide.A),
            Overhang(main[^1], main[^2], BuildingSide.B));
        return plane switch
        {
            "roof" => Rectangle(0, 0, RoofRun, Along(main) + overA + overB),
            "roofA" => Rectangle(
                0, 0, RoofRun, Along(main.Where(p => p.X <= ridge.X)) + overA),
            "roofB" => Rectangle(
                0, 0, RoofRun, Along(main.Where(p => p.X >= ridge.X)) + overB),
            "sidewallA" => Rectangle(0, 0, Run, main[0].Y),
            "sidewallB" => Rectangle(0, 0, Run, main[^1].Y),
            "leanRoofA" or "leanRoofB" => Rectangle(
                0, 0, RoofRun, Math.Sqrt(leanWidth * leanWidth + leanFall * leanFall)
                    + Eaves * Math.Sqrt(1 + leanFall * leanFall / leanWidth / leanWidth)),
            "leanSidewallA" => Rectangle(0, 0, Run, main[0].Y - drop - leanFall),
            "leanSidewallB" => Rectangle(0, 0, Run, main[^1].Y - drop - leanFall),
            "endwall1" or "endwall2" => Endwall(main, lean, leanWidth, leanFall, drop),
            _ => null,
        };
    }

    private static Polygon Endwall(
        List<Coordinate> main, LeanToInput? lean, double leanWidth, double fall, double drop)
    {
        var top = main.ToList();
        if (lean is { Side: BuildingSide.A } && drop == 0)
            top = [new(0, main[0].Y - fall), .. main.Select(p => new Coordinate(
                p.X + leanWidth, p.Y))];
        if (lean is { Side: BuildingSide.B } && drop == 0)
            top.Add(new(main[^1].X + leanWidth, main[^1].Y - fall));
        top.Reverse();
        var right = top[0].X;
        return Factory.CreatePolygon([new(0, 0), new(right, 0), .. top, new(0, 0)]);
    }

    /// <summary>Out to the fascia on the eave's own slope; none over a flush lean-to.</summary>
    private double Overhang(Coordinate eave, Coordinate next, BuildingSide side) =>
        building.LeanTos is { Count: > 0 } leans && leans[0].Side == side
            && (leans[0].Drop?.TotalInches ?? 0) == 0
            ? 0
            : Eaves * eave.Distance(next) / Math.Abs(next.X - eave.X);

    private static double Along(IEnumerable<Coordinate> points)
    {
        var list = points.ToList();
        return list.Zip(list.Skip(1)).Sum(p => p.First.Distance(p.Second));
    }

    private List<Coordinate> Profile()
    {
        var roof = building.Roof!;
        var half = Width / 2;
        double lower = roof.LowerRun?.TotalInches ?? 0;
        double low = roof.LowerSlope?.RiseOverRun ?? 0, up = roof.UpperSlope?.RiseOverRun ?? 0;
        var bent = Eave + lower * low;
        var peak = bent + (half - lower) * up;
        switch (roof.Form)
        {
            case RoofForm.Gable:
                return [new(0, Eave), new(half, Eave + half * roof.Slope!.Value.RiseOverRun),
                    new(Width, Eave)];
            case RoofForm.Monoslope:
                return [new(0, Eave), new(Width, Eave + Width * roof.Slope!.Value.RiseOverRun)];
            case RoofForm.OffsetRidge:
                var r = roof.RidgeFromSidewallA!.Value.TotalInches;
                var top = Eave + r * roof.SlopeA!.Value.RiseOverRun;
                return [new(0, Eave), new(r, top),
                    new(Width, top - (Width - r) * roof.SlopeB!.Value.RiseOverRun)];
            case RoofForm.Profile:
                return [.. roof.Points!.Select(p =>
                    new Coordinate(p.Across!.Value.TotalInches, p.Up!.Value.TotalInches))];
            default:
                var brokenA = roof.Form == RoofForm.Gambrel || roof.BrokenSide != BrokenSide.B;
                var brokenB = roof.Form == RoofForm.Gambrel || roof.BrokenSide != BrokenSide.A;
                return
                [
                    new(0, Eave), .. brokenA ? [new(lower, bent)] : Array.Empty<Coordinate>(),
                    new(half, peak),
                    .. brokenB ? [new(Width - lower, bent)] : Array.Empty<Coordinate>(),
                    new(Width, Eave),
                ];
        }
    }
}
