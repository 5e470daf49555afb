using CsCheck;
using NetTopologySuite.Geometries;
using NetTopologySuite.Operation.Buffer;
using PostFrame.Engine;
using PostFrame.Engine.Buildings;
using Xunit;

namespace PostFrame.EngineTests.TakeOff;

/// <summary>
/// Random buildings judged by NetTopologySuite, an independent geometry library: the strips cover
/// each plane, none is idle, none is short, and headers stay out of their openings.
/// </summary>
public sealed class CoverageTests
{
    /// <summary>
    /// Buildings of each form for each check, a third with covered overhangs: 2400 in all.
    /// </summary>
    private const int Many = 100;

    private static readonly BufferParameters Square =
        new(1, EndCapStyle.Square, JoinStyle.Mitre, 5);

    /// <summary>The rounding tolerance, 1/16 in, and a hair for doubles.</summary>
    private const double Tolerance = 0.0626;

    public static TheoryData<RoofForm> Forms => [.. Enum.GetValues<RoofForm>()];

    [Theory, MemberData(nameof(Forms))]
    public void Strips_and_deducted_openings_together_cover_every_plane(RoofForm form) =>
        EachPlane(form, (job, result, plane, polygon) =>
        {
            var parts = Pieces(result, plane.Plane).Select(p => (Geometry)Body(p))
                .Concat(plane.Openings.Where(o => o.Deducted).Select(Hole));
            var missing = PolygonOracle.Difference(polygon, Grown(PolygonOracle.Union(parts)));
            Assert.True(missing.Area < 1e-6, $"{plane.Plane} lacks {missing}");
        });

    [Theory, MemberData(nameof(Forms))]
    public void No_piece_could_be_dropped(RoofForm form) =>
        EachPlane(form, (job, result, plane, polygon) =>
        {
            Piece[] pieces = [.. Pieces(result, plane.Plane)];
            foreach (var dropped in pieces.Where((_, i) => i == pieces.Length / 2
                || i == pieces.Length - 1))
            {
                var rest = pieces.Where(p => p != dropped).Select(p => (Geometry)Body(p))
                    .Concat(plane.Openings.Where(o => o.Deducted).Select(Hole));
                var missing = PolygonOracle.Difference(polygon, PolygonOracle.Union(rest));
                Assert.True(missing.Area > 0.5, $"{dropped.Mark} is not needed");
            }
        });

    [Theory, MemberData(nameof(Forms))]
    public void No_wall_piece_is_shorter_than_the_highest_point_of_its_interval(RoofForm form) =>
        EachPlane(form, (job, result, plane, polygon) =>
        {
            if (plane.Kind == PlaneKind.Roof) return;
            foreach (var piece in Pieces(result, plane.Plane).Where(p => p.Role != PieceRole.Sill))
            {
                var band = PolygonOracle.Rectangle(
                    piece.From.TotalInches, -1, piece.To.TotalInches, 1e6);
                var highest = polygon.Intersection(band).EnvelopeInternal.MaxY;
                Assert.True(
                    piece.Cut.TotalInches + Tolerance >= highest - piece.Bottom.TotalInches + 6,
                    $"{piece.Mark} is short of {highest}");
            }
        });

    [Theory, MemberData(nameof(Forms))]
    public void Headers_and_sills_never_reach_into_the_opening(RoofForm form) =>
        EachPlane(form, (job, result, plane, _) =>
        {
            foreach (var piece in Pieces(result, plane.Plane).Where(p => p.Role != PieceRole.Full))
            {
                var placed = PolygonOracle.Rectangle(
                    piece.From.TotalInches, piece.Bottom.TotalInches, piece.To.TotalInches,
                    piece.Top.TotalInches);
                foreach (var opening in job.Building!.Openings!.Where(o => o.Wall == plane.Plane))
                    Assert.True(placed.Intersection(Hole(opening)).Area < 1e-6, piece.Mark);
            }
        });

    private static void EachPlane(
        RoofForm form, Action<SizingInput, SizingResult, PlaneResult, Polygon> check) =>
        RandomJobs.Of(form).Sample(job =>
        {
            var result = job.Sized();
            var oracle = new PolygonOracle(job.Building!);
            foreach (var plane in result.Planes)
                if (oracle.Of(plane.Plane) is { } polygon)
                    check(job, result, plane, polygon);
        }, iter: Many);

    private static IEnumerable<Piece> Pieces(SizingResult result, string plane) =>
        result.Pieces.Where(p => p.Plane == plane);

    /// <summary>What a piece covers when both its ends are folded as the practice says.</summary>
    private static Polygon Body(Piece piece)
    {
        var folds = piece.Plane switch
        {
            ['r', ..] or ['l', 'e', 'a', 'n', 'R', ..] => 12,
            _ => 6,
        };
        var length = piece.Cut.TotalInches - folds;
        return PolygonOracle.Rectangle(
            piece.From.TotalInches, piece.Bottom.TotalInches, piece.To.TotalInches,
            piece.Role == PieceRole.Sill
                ? Math.Min(piece.Bottom.TotalInches + length, piece.Top.TotalInches)
                : piece.Bottom.TotalInches + length);
    }

    private static Geometry Grown(Geometry geometry) => geometry.Buffer(Tolerance, Square);

    private static Polygon Hole(PlacedOpening opening) => PolygonOracle.Rectangle(
        opening.From.TotalInches, opening.Bottom.TotalInches, opening.To.TotalInches,
        opening.Top.TotalInches);

    private static Polygon Hole(OpeningInput opening)
    {
        var sill = opening.Sill?.TotalInches ?? 0;
        var from = opening.FromStart!.Value.TotalInches;
        return PolygonOracle.Rectangle(
            from, sill, from + opening.Width!.Value.TotalInches,
            sill + opening.Height!.Value.TotalInches);
    }
}
