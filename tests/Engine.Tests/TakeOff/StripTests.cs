using PostFrame.Engine;
using PostFrame.Engine.Quantities;
using PostFrame.Engine.TakeOff;
using Xunit;
using static PostFrame.EngineTests.TakeOff.Ask;

namespace PostFrame.EngineTests.TakeOff;

/// <summary>Source: takeoff.md 2.6.</summary>
public sealed class StripTests
{
    private static SizingInput Long(double length, InsulationInput line) =>
        Job(360, length, 120, Gable(4), line);

    [Theory]
    [InlineData("blanket-3-white", 48, 10)]
    [InlineData("bubble-foil", 46, 11)]
    public void A_whole_strip_per_slope_hangs_on_how_the_product_laps(
        string product, double coverage, int strips)
    {
        var line = Roof(48, RoofLayout.EaveToRidge, "roofA") with { Product = product };
        var plane = Long(480, line).Sized().PlaneAt("roofA");
        Assert.Equal((In(coverage), strips), (plane.Coverage, plane.Strips));
    }

    [Theory]
    [InlineData(480, 10)]
    [InlineData(480.0625, 10)]
    [InlineData(480.063, 11)]
    [InlineData(479, 10)]
    public void The_count_has_the_same_tolerance_as_the_rounding(double length, int strips) =>
        Assert.Equal(strips, Long(length, Cover(48, "sidewallA")).Sized()
            .PlaneAt("sidewallA").Strips);

    [Fact]
    public void The_last_strip_is_full_width_and_the_surplus_is_told()
    {
        var plane = WorkedJobs.W1.Sized().PlaneAt("endwall1");
        Assert.Equal((8, In(24)), (plane.Strips, plane.Surplus));
    }

    [Theory]
    [InlineData("W1", "endwall1", "360 in to cover: 8 × 48 in = 384 in, 24 in over")]
    [InlineData("W8", "roofA", "18,000 mm to cover: 15 × 1,200 mm = 18,000 mm, 0 mm over")]
    public void The_count_is_told_as_a_pencil_would_have_it(string job, string plane, string how) =>
        Assert.StartsWith(
            how, WorkedJobs.Get(job).Sized().PlaneAt(plane).How, StringComparison.Ordinal);

    [Fact]
    public void Wraps_are_added_at_both_ends_before_the_count()
    {
        var plane = Long(480, Cover(48, "sidewallA"))
            .WithPractice(p => p with { CornerWrap = In(6) }).Sized().PlaneAt("sidewallA");
        Assert.Equal((11, In(36)), (plane.Strips, plane.Surplus));
    }

    [Fact]
    public void The_first_strip_lies_over_its_wrap_and_covers_that_much_less()
    {
        var piece = Long(480, Cover(48, "sidewallA"))
            .WithPractice(p => p with { CornerWrap = In(6) }).Sized().PieceAt("SA-01");
        Assert.Equal((In(0), In(42)), (piece.From, piece.To));
    }

    [Fact]
    public void Rake_wraps_belong_to_roofs_and_corner_wraps_to_walls()
    {
        var result = Long(480, Cover(48, "sidewallA", "roofA"))
            .WithPractice(p => p with { RakeWrap = In(6) }).Sized();
        Assert.Equal((10, 11), (
            result.PlaneAt("sidewallA").Strips, result.PlaneAt("roofA").Strips));
    }

    [Fact]
    public void A_last_strip_under_6_in_offers_its_three_choices()
    {
        var choices = Long(485, Cover(48, "sidewallA")).Sized().Choices;
        Assert.Equal(
            [LastStrip.Make, LastStrip.Wider, LastStrip.Wrap], choices.Select(c => c.Choice));
        Assert.Equal([true, false, false], choices.Select(c => c.Taken));
        Assert.Equal([126 * 11, 126 * 10, 126 * 11],
            choices.Select(c => (int)c.CutLength.TotalInches));
    }

    [Fact]
    public void The_warning_of_a_thin_last_strip_says_what_the_other_choices_would_cost()
    {
        var text = Assert.Single(Long(485, Cover(48, "sidewallA")).Sized().Warnings,
            w => w.Id == "thin-last-strip").Text;
        // 11 × 48 in against 9 × 48 + 60, all 126 in long: 36 in × 126 in = 31.5 ft² less.
        Assert.EndsWith(
            "Or lastStrip wider: One strip of 60 in takes the place of the last two (31.5 ft² "
            + "less). Or lastStrip wrap: It is made, and the surplus is shared as larger wraps at "
            + "both ends (as much).", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(486)]
    [InlineData(480)]
    public void A_last_strip_of_6_in_or_more_offers_none(double length) =>
        Assert.Empty(Long(length, Cover(48, "sidewallA")).Sized().Choices);

    [Fact]
    public void One_wider_strip_takes_the_place_of_the_last_two()
    {
        var result = Long(485, Cover(48, "sidewallA") with { LastStrip = LastStrip.Wider })
            .Sized();
        Assert.Equal(10, result.Pieces.Count);
        Assert.Equal(In(60), result.PieceAt("SA-10").Width);
        Assert.Equal(In(485), result.PieceAt("SA-10").To);
    }

    [Fact]
    public void Larger_wraps_share_the_surplus_between_both_ends()
    {
        var result = Job(389, 480, 120, Gable(4),
            Cover(48, "endwall1") with { LastStrip = LastStrip.Wrap }).Sized();
        Assert.Equal(In(48 - (9 * 48 - 389) / 2.0), result.PieceAt("E1-01").To);
        Assert.Equal(In(389), result.PieceAt("E1-09").To);
    }

    [Fact]
    public void Both_endwalls_are_numbered_from_sidewall_A_so_their_pieces_are_alike()
    {
        var roof = new RoofInput
        {
            Form = Engine.Buildings.RoofForm.OffsetRidge,
            RidgeFromSidewallA = In(100),
            SlopeA = Pitch(9),
            SlopeB = Pitch(3),
        };
        var result = Job(350, 480, 160, roof, Cover(48, "endwall1", "endwall2")).Sized();
        Assert.Equal(
            result.Pieces.Where(p => p.Plane == "endwall1").Select(p => (p.Strip, p.Cut)),
            result.Pieces.Where(p => p.Plane == "endwall2").Select(p => (p.Strip, p.Cut)));
    }
}
