using PostFrame.Engine;
using PostFrame.Engine.Buildings;
using PostFrame.Engine.Quantities;
using Xunit;
using static PostFrame.EngineTests.TakeOff.Ask;

namespace PostFrame.EngineTests.TakeOff;

/// <summary>Source: takeoff.md 3, common practice.</summary>
public sealed class OpeningTests
{
    private static SizingInput Wall(params OpeningInput[] openings) =>
        Job(360, 480, 168, Gable(4), Cover(48, "sidewallA")).WithOpenings(openings);

    private static int[] Headers(SizingInput job) => [.. job.Sized().Pieces
        .Where(p => p.Role == PieceRole.Header).Select(p => p.Strip)];

    [Theory]
    [InlineData(OpeningKind.OverheadDoor)]
    [InlineData(OpeningKind.SlidingDoor)]
    [InlineData(OpeningKind.BifoldDoor)]
    [InlineData(OpeningKind.FramedOpening)]
    public void Wide_openings_deduct_strips_wholly_inside(OpeningKind kind) =>
        Assert.Equal([3, 4], Headers(Wall(Opening("sidewallA", kind, 120, 120, 90))));

    [Theory]
    [InlineData(OpeningKind.WalkDoor)]
    [InlineData(OpeningKind.Louvre)]
    public void Walk_doors_and_louvres_deduct_nothing_however_wide(OpeningKind kind) =>
        Assert.Empty(Headers(Wall(Opening("sidewallA", kind, 144, 120, 96))));

    [Theory]
    [InlineData(96, new[] { 3, 4 })]
    [InlineData(96.01, new[] { 4 })]
    public void An_edge_exactly_on_the_jamb_counts_as_inside(double from, int[] strips) =>
        Assert.Equal(strips, Headers(Wall(
            Opening("sidewallA", OpeningKind.OverheadDoor, 96, 120, from))));

    [Theory]
    [InlineData(0, new[] { 3, 4 })]
    [InlineData(1, new int[0])]
    public void A_jamb_margin_narrows_the_opening_on_each_side(double margin, int[] strips) =>
        Assert.Equal(strips, Headers(Wall(
            Opening("sidewallA", OpeningKind.OverheadDoor, 96, 120, 96))
            .WithPractice(p => p with { JambMargin = In(margin) })));

    [Theory]
    [InlineData(96, false)]
    [InlineData(97, true)]
    public void A_window_wider_than_two_strips_has_header_and_sill_strips(double width, bool split)
    {
        var result = Wall(Opening("sidewallA", OpeningKind.Window, width, 36, 96, 42)).Sized();
        Assert.Equal(split ? 2 : 0, result.Pieces.Count(p => p.Role == PieceRole.Sill));
        if (!split) return;
        Assert.Equal(In(42 + 3 + 3), result.PieceAt("SA-03S").Exact);
        Assert.Equal(In(168 - 78 + 3 + 3), result.PieceAt("SA-03H").Exact);
    }

    [Theory]
    [InlineData(6, false)]
    [InlineData(8, true)]
    public void A_window_is_left_out_only_where_that_buys_less(double height, bool split)
    {
        // At 1 in rounding header and sill have four folds of 3 in against two: 6 in more.
        var result = Wall(Opening("sidewallA", OpeningKind.Window, 144, height, 96, 42))
            .WithPractice(p => p with { RoundUpTo = In(1) }).Sized();
        Assert.Equal(split, result.Pieces.Any(p => p.Role == PieceRole.Sill));
    }

    [Fact]
    public void Openings_one_above_the_other_leave_a_piece_between_them()
    {
        var result = Wall(
            Opening("sidewallA", OpeningKind.OverheadDoor, 144, 84, 96),
            Opening("sidewallA", OpeningKind.Window, 144, 24, 96, 120)).Sized();
        Assert.Equal(In(120 - 84 + 3 + 3), result.PieceAt("SA-03S").Exact);
        Assert.Equal(In(168 - 144 + 3 + 3), result.PieceAt("SA-03H").Exact);
        Assert.Equal((In(84), In(120)),
            (result.PieceAt("SA-03S").Bottom, result.PieceAt("SA-03S").Top));
    }

    [Fact]
    public void A_head_is_measured_from_the_same_datum_as_the_eave()
    {
        var job = Wall(Opening("sidewallA", OpeningKind.OverheadDoor, 96, 120, 96)).With(b =>
            b with
            {
                EaveHeightDatum = EaveHeightDatum.Grade,
                StripBaseAboveDatum = In(8),
            });
        var piece = job.Sized().PieceAt("SA-03H");
        Assert.Equal((In(112), In(160)), (piece.Bottom, piece.Top));
        Assert.Equal(In(0), job.Sized().PlaneAt("sidewallA").Openings[0].Bottom);
    }

    [Fact]
    public void An_opening_without_a_place_deducts_nothing_and_shows_what_it_may_save()
    {
        var open = Opening("endwall1", OpeningKind.OverheadDoor, 240, 144, null);
        var job = WorkedJobs.W2 with
        {
            Building = WorkedJobs.W2.Building! with { Openings = [open] },
        };
        var result = job.Sized();
        Assert.DoesNotContain(result.Pieces, p => p.Role == PieceRole.Header);
        var saving = Assert.Single(result.PossibleSavings);
        Assert.Equal(4, saving.Strips);
        var bestPlace = Enumerable.Range(1, 3).Max(i => Saved(In(60 * i)));
        Assert.Equal(bestPlace, saving.Length.TotalInches, 1e-6);

        double Saved(Length from) => result.Totals.Length.TotalInches
            - (job with
            {
                Building = job.Building with
                {
                    Openings =
                [open with { FromStart = from }]
                }
            }).Sized().Totals.Length.TotalInches;
    }

    [Fact]
    public void Only_strips_wholly_inside_count_as_a_possible_saving()
    {
        var saving = Assert.Single(Wall(
            Opening("sidewallA", OpeningKind.OverheadDoor, 130, 120, null))
            .Sized().PossibleSavings);
        Assert.Equal((2, In(2 * (174 - 54))), (saving.Strips, saving.Length));
    }

    [Fact]
    public void A_continuous_eave_light_ends_the_strips_at_its_sill()
    {
        var light = new OpeningInput
        {
            Wall = "sidewallA",
            Kind = OpeningKind.EaveLight,
            Height = In(36),
        };
        Assert.All(Wall(light).Sized().Pieces, p => Assert.Equal(In(168 - 36 + 3 + 3), p.Exact));
    }

    [Fact]
    public void An_eave_light_broken_by_bays_is_covered_and_cut()
    {
        var light = Opening("sidewallA", OpeningKind.EaveLight, 96, 36, 96);
        Assert.All(Wall(light).Sized().Pieces, p => Assert.Equal(In(168 + 6), p.Exact));
    }

    // takeoff.md 2.9: a continuous band has no width of its own; who gives the wall's is told how.
    [Fact]
    public void An_eave_light_as_wide_as_the_wall_is_told_how_to_be_continuous()
    {
        var length = Wall().Building!.Length!.Value;
        var refused = Assert.Single(Wall(
            Opening("sidewallA", OpeningKind.EaveLight, (int)length.TotalInches, 36, null))
            .Refused());
        Assert.Equal("wider-than-wall", refused.Rule);
        Assert.Contains("must be less than the", refused.Message);
        Assert.Contains("Leave out its width and place", refused.Message);
    }
}
