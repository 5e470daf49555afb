using CsCheck;
using NetTopologySuite.Geometries;
using PostFrame.Engine;
using PostFrame.Engine.Buildings;
using PostFrame.Engine.TakeOff;
using Xunit;
using static PostFrame.EngineTests.TakeOff.Ask;

namespace PostFrame.EngineTests.TakeOff;

/// <summary>
/// Random gables with lean-tos along part of a side, covered overhangs and a partition, judged by
/// NetTopologySuite polygons drawn from the request alone (takeoff.md 2.3, 2.4, 2.9).
/// </summary>
public sealed class PartLengthCoverageTests
{
    private const int Many = 150;

    /// <summary>Slope factor of 4:12, and of the lean-tos' 2:12.</summary>
    private static readonly double K = Math.Sqrt(160) / 12, LeanK = Math.Sqrt(148) / 12;

    private sealed record Case(
        double Width, double Length, double Eave, double Rake, double Overhang, double[] Lean,
        double Drop, LeanToInside Inside, (double From, double To) Insulated, bool OverRidge);

    private static readonly Gen<Case> Cases = Gen.Int.Select(seed =>
    {
        var random = new Random(seed);
        var length = 400 + random.Next(400);
        var from = random.Next(3) == 0 ? 0 : 24 + random.Next(120);
        var to = random.Next(3) == 0 ? length : from + 60 + random.Next(length - from - 60);
        double partition = 30 + random.Next(length - 60);
        (double, double)[] parts = [(0, length), (0, partition), (partition, length)];
        return new Case(
            240 + random.Next(240), length, 120 + random.Next(96), random.Next(36),
            1 + random.Next(36), [from, to], random.Next(2) * 24, (LeanToInside)random.Next(3),
            parts[random.Next(3)], random.Next(2) == 0);
    });

    [Fact]
    public void Strips_cover_every_roof_and_sidewall_that_a_lean_to_leaves() => Each(
        (polygon, plane, pieces) => Assert.True(PolygonOracle.Difference(polygon,
            PolygonOracle.Union(pieces.Select(Body)).Buffer(0.07)).Area < 0.1, plane.Plane));

    [Fact]
    public void The_drawn_outline_and_the_net_area_are_those_of_the_polygon() => Each(
        (polygon, plane, _) =>
        {
            Assert.Equal(polygon.Area / 144, plane.Net.TotalSquareFeet, 1e-4);
            var drawn = new Polygon(new([.. plane.Outline.Append(plane.Outline[0])
                .Select(p => new Coordinate(p.Across.TotalInches, p.Up.TotalInches))])).Buffer(0);
            Assert.True(polygon.SymmetricDifference(drawn).Area < 0.1, plane.Plane);
        });

    [Fact]
    public void No_strip_of_them_could_be_dropped() => Each((polygon, plane, pieces) =>
        Assert.All(pieces, dropped => Assert.True(PolygonOracle.Difference(polygon,
            PolygonOracle.Union(pieces.Where(p => p != dropped).Select(Body))).Area > 0.05,
            dropped.Mark)));

    private static void Each(Action<Geometry, PlaneResult, Piece[]> check) => Cases.Sample(c =>
    {
        var result = Of(c).Sized();
        foreach (var plane in result.Planes)
            check(Polygon(c, plane.Plane), plane,
                [.. result.Pieces.Where(p => p.Plane == plane.Plane)]);
    }, iter: Many);

    private static SizingInput Of(Case c)
    {
        var isBeyond = c.Lean[1] <= c.Insulated.From || c.Lean[0] >= c.Insulated.To;
        string[] lean = isBeyond ? [] : ["leanRoofA", "leanSidewallA"];
        var isLeft = c.Inside != LeanToInside.Open || Left(c).Any();
        string[] main = isLeft ? ["sidewallA", "sidewallB"] : ["sidewallB"];
        return Job(c.Width, c.Length, c.Eave, Gable(4) with
        {
            EaveOverhang = In(c.Overhang),
            RakeOverhang = In(c.Rake),
            CoverOverhangs = true,
        }, Roof(48, c.OverRidge ? RoofLayout.OverRidge : RoofLayout.EaveToRidge),
            Cover(48, [.. lean, .. main])).With(b => b with
            {
                Partition = c.Insulated == (0, c.Length) ? null : new()
                {
                    FromEndwall1 = In(c.Insulated.From > 0 ? c.Insulated.From : c.Insulated.To),
                    InsulatedEndwall = c.Insulated.From > 0 ? 2 : 1,
                },
                LeanTos =
                [
                    new()
                    {
                        Side = BuildingSide.A, Width = In(96), Slope = Pitch(2),
                        Drop = In(c.Drop), Inside = c.Inside, FromEndwall1 = In(c.Lean[0]),
                        Length = In(c.Lean[1] - c.Lean[0]),
                    },
                ],
            }).WithPractice(p => p with { RoundUpTo = In(1), PartitionLap = In(0) });
    }

    private static Geometry Polygon(Case c, string plane)
    {
        var (s, over) = (c.Width / 2 * K, c.Overhang * K);
        var isFlush = c.Drop == 0;
        var over1 = isFlush && c.Lean[0] == 0 && c.Lean[1] == c.Length ? 0 : over;
        var low = c.Eave - c.Drop - 16;
        return plane switch
        {
            "roofB" => OnRoof(c, [0, c.Length], 0, s + over),
            "roofA" => Stepped(c, OnRoof(c, [0, c.Length], 0, s + over1), over1),
            "roof" => Stepped(c, OnRoof(c, [0, c.Length], 0, 2 * s + over1 + over), over1),
            "leanRoofA" => OnRoof(c, c.Lean, 0, (96 + c.Overhang) * LeanK),
            "leanSidewallA" => Wall(
                Math.Max(c.Lean[0], c.Insulated.From) - c.Lean[0],
                Math.Min(c.Lean[1], c.Insulated.To) - c.Lean[0], low),
            "sidewallA" when c.Inside == LeanToInside.Open => Band(c) is { } band
                ? band
                : PolygonOracle.Union(Left(c).Select(p => Wall(p.From, p.To, c.Eave))),
            _ => Wall(c.Insulated.From, c.Insulated.To, c.Eave),
        };
    }

    private static Polygon? Band(Case c) =>
        c.Drop > 0 && c.Lean[0] == 0 && c.Lean[1] == c.Length
            ? PolygonOracle.Rectangle(c.Insulated.From, c.Eave - c.Drop, c.Insulated.To, c.Eave)
            : null;

    private static Geometry Wall(double from, double to, double height) =>
        PolygonOracle.Rectangle(from, 0, to, height);

    /// <summary>Insulated stretches of sidewall A beside an open lean-to, or its band.</summary>
    private static IEnumerable<(double From, double To)> Left(Case c) =>
        Band(c) is not null
            ? [c.Insulated]
            : new[] { (0.0, c.Lean[0]), (c.Lean[1], c.Length) }
                .Select(p => (From: Math.Max(p.Item1, c.Insulated.From),
                    To: Math.Min(p.Item2, c.Insulated.To)))
                .Where(p => p.From < p.To);

    /// <summary>The insulated part of a stretch, on a roof that starts at the rake's fascia.
    /// </summary>
    private static Polygon OnRoof(Case c, double[] along, double bottom, double top)
    {
        var (from, to) = (Math.Max(along[0], c.Insulated.From), Math.Min(along[1], c.Insulated.To));
        return PolygonOracle.Rectangle(
            from == along[0] ? 0 : from - along[0] + c.Rake, bottom,
            to - along[0] + (to == along[1] ? 2 : 1) * c.Rake, top);
    }

    private static Geometry Stepped(Case c, Geometry roof, double over) => c.Drop > 0 || over == 0
        ? roof
        : PolygonOracle.Difference(roof, PolygonOracle.Rectangle(
            c.Lean[0] == 0 ? 0 : c.Lean[0] + c.Rake, -1,
            c.Lean[1] + (c.Lean[1] == c.Length ? 2 : 1) * c.Rake, over));

    private static Geometry Body(Piece piece) => PolygonOracle.Rectangle(
        piece.From.TotalInches, piece.Bottom.TotalInches, piece.To.TotalInches,
        piece.Lay == PieceLay.Across
            ? piece.Top.TotalInches
            : piece.Bottom.TotalInches + piece.Cut.TotalInches
                - (piece.Plane.Contains("oof", StringComparison.Ordinal) ? 12 : 6));
}
