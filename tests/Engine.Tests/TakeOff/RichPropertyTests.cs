using System.Text.Json;
using CsCheck;
using NetTopologySuite.Geometries;
using PostFrame.Engine;
using PostFrame.Engine.Buildings;
using PostFrame.Engine.Quantities;
using Xunit;

namespace PostFrame.EngineTests.TakeOff;

/// <summary>What must hold for buildings with everything a request may hold.</summary>
public sealed class RichPropertyTests
{
    private const int Many = 60;

    private static readonly GeometryFactory Factory = new();

    [Fact]
    public void Order_changes_nothing() => RichJobs.Valid.Sample(job =>
    {
        var turned = job.With(b => b with { Openings = [.. b.Openings!.Reverse()] }) with
        {
            Insulation = [.. job.Insulation!.Reverse()],
        };
        Assert.Equal(
            JsonSerializer.Serialize(job.Sized()), JsonSerializer.Serialize(turned.Sized()));
    }, iter: Many);

    [Fact]
    public void Every_mark_is_its_own_and_every_derivation_adds_up() => RichJobs.Valid.Sample(job =>
    {
        var pieces = job.Sized().Pieces;
        Assert.Equal(pieces.Count, pieces.Select(p => p.Mark).Distinct().Count());
        foreach (var piece in pieces)
            Assert.Equal(piece.Exact, piece.Why.TakeWhile(w => w.Term != "exact")
                .Aggregate(Length.Zero, (sum, w) => sum + w.Value));
    }, iter: Many);

    [Fact]
    public void No_piece_is_shorter_than_exact_by_more_than_the_tolerance_or_longer_by_a_step() =>
        RichJobs.Valid.Sample(job =>
        {
            var step = job.Practice.RoundUpTo!.Value;
            Assert.All(job.Sized().Pieces, p =>
            {
                Assert.True(p.Cut >= p.Exact - Ask.In(0.0625));
                Assert.True(p.Cut < p.Exact + step);
                Assert.Equal(0, p.Cut.Nanometres % step.Nanometres);
            });
        }, iter: Many);

    [Fact]
    public void Pieces_and_deducted_openings_fill_the_outline() => RichJobs.Valid.Sample(job =>
    {
        var result = job.Sized();
        foreach (var plane in result.Planes)
        {
            var outline = Polygon(plane.Outline).Buffer(0);
            var parts = result.Pieces.Where(p => p.Plane == plane.Plane)
                .Select(p => (Geometry)Box(p.From, p.Bottom, p.To, p.Top))
                .Concat(plane.Openings.Where(o => o.Deducted)
                    .Select(o => Box(o.From, o.Bottom, o.To, o.Top)));
            var missing = PolygonOracle.Difference(
                outline, PolygonOracle.Union(parts).Buffer(0.0626));
            Assert.True(missing.Area < 0.01, $"{plane.Plane} lacks {missing}");
            var net = plane.Openings.Where(o => o.Deducted).Aggregate(outline, (rest, o) =>
                PolygonOracle.Difference(rest, Box(o.From, o.Bottom, o.To, o.Top)));
            Assert.Equal(net.Area / 144, plane.Net.TotalSquareFeet, 1e-3);
        }
    }, iter: Many);

    [Fact]
    public void No_piece_crosses_a_vented_ridge_or_a_panel_that_splits_the_run() =>
        RichJobs.Valid.Sample(job =>
        {
            var roof = job.Building!.Roof!;
            var before = roof.CoverOverhangs ? roof.RakeOverhang!.Value : Length.Zero;
            foreach (var piece in job.Sized().Pieces.Where(p => p.Plane == "roof"))
            {
                var (from, to) = (piece.From - before, piece.To - before);
                Assert.False(roof.Form != RoofForm.Monoslope && roof.Ridge == RidgeKind.Vented
                    && from < roof.VentTo && to > roof.VentFrom);
                Assert.DoesNotContain(roof.TranslucentPanels ?? [], p =>
                    p.Treatment == TranslucentTreatment.SplitRun
                    && from < p.FromStart + p.Width && to > p.FromStart);
            }
        }, iter: Many);

    private static Polygon Box(Length left, Length bottom, Length right, Length top) =>
        PolygonOracle.Rectangle(
            left.TotalInches, bottom.TotalInches, right.TotalInches, top.TotalInches);

    private static Polygon Polygon(IReadOnlyList<PlanePoint> outline) => Factory.CreatePolygon(
    [
        .. outline.Append(outline[0])
            .Select(p => new Coordinate(p.Across.TotalInches, p.Up.TotalInches)),
    ]);
}
