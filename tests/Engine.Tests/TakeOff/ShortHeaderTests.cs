using PostFrame.Engine;
using PostFrame.Engine.Buildings;
using Xunit;
using static PostFrame.EngineTests.TakeOff.Ask;

namespace PostFrame.EngineTests.TakeOff;

/// <summary>
/// Short headers become one piece along the opening where it buys no more area: then it is fewer
/// pieces (takeoff.md W6 offers the piece; area first, then pieces, as for roll widths). Every
/// figure is worked by hand.
/// </summary>
public sealed class ShortHeaderTests
{
    /// <summary>A sidewall 132 in high with a door from 144 in, 96 in high: 132 − 96 + 6 = 42 in.
    /// </summary>
    private static SizingInput Wall(double doorWidth, double step, InsulationInput? line = null) =>
        Job(312, 456, 132, Gable(4), line ?? Cover(48, "sidewallA"))
            .WithOpenings(Opening("sidewallA", OpeningKind.SlidingDoor, doorWidth, 96, 144))
            .WithPractice(p => p with { ShortHeader = In(60), RoundUpTo = In(step) });

    private static string Remark(SizingResult result, string id) =>
        Assert.Single(result.Warnings, w => w.Id == id).Text;

    [Fact]
    public void Equal_area_in_fewer_pieces_is_better_2_of_48_by_48_or_1_of_48_by_96()
    {
        // 42 in goes up to 48 at a step of 12: 2 × 48 × 48 = 4608 in² = 32 ft² = 48 × 96.
        var result = Wall(96, 12).Sized();
        var piece = Assert.Single(result.Pieces, p => p.Role == PieceRole.Header);
        Assert.Equal((PieceLay.Across, In(96), In(48), "SA-04H"),
            (piece.Lay, piece.Cut, piece.Width, piece.Mark));
        Assert.Equal((In(144), In(240), In(96), In(132)),
            (piece.From, piece.To, piece.Bottom, piece.Top));
        Assert.Equal(
            "The short headers above the opening at 144 in are one piece laid along it, SA-04H: it "
            + "takes the place of 2 header pieces of 32 ft²: one of 48 in × 96 in buys 32 ft².",
            Remark(result, "short-headers-joined"));
    }

    [Fact]
    public void The_derivation_of_the_joined_piece_says_what_it_takes_the_place_of()
    {
        var why = Assert.Single(
            Wall(96, 12).Sized().Pieces, p => p.Role == PieceRole.Header).Why;
        Assert.Equal(["run", "headersMerged", "exact", "roundUp"], why.Select(w => w.Term));
        Assert.Equal((In(96), In(0), In(96)), (why[0].Value, why[1].Value, why[2].Value));
        Assert.Equal("takes the place of 2 header pieces of 32 ft²: one of 48 in × 96 in buys "
            + "32 ft²", why[1].Text);
    }

    [Fact]
    public void The_joined_piece_is_taped_to_the_strip_on_each_side()
    {
        // Ten positions of 48 in, 4 and 5 one piece 48 in high: joints 1-2, 2-3 and 6-7 to 9-10 of
        // 144 in, two of 48 in; 960 in + 5 % = 84 ft.
        Assert.Equal(84, Assert.Single(
            Wall(96, 12).Sized().Accessories, a => a.Id == "lapTape").Needed, 1e-6);
    }

    [Fact]
    public void Less_area_is_better_2_of_48_by_72_or_1_of_48_by_108()
    {
        // 42 in goes up to 72 at a step of 36: 2 × 48 × 72 = 6912 in² = 48 ft²; a door of 108 in
        // takes 48 × 108 = 5184 in² = 36 ft².
        var piece = Assert.Single(Wall(108, 36).Sized().Pieces, p => p.Role == PieceRole.Header);
        Assert.Equal(In(108), piece.Cut);
    }

    [Theory]
    [InlineData(null)]
    [InlineData(true)]
    public void More_area_is_not_better_2_of_48_by_48_stay_where_one_takes_48_by_120(bool? asked)
    {
        var result = Wall(120, 12).WithPractice(p => p with { MergeShortHeaders = asked }).Sized();
        Assert.Equal([In(48), In(48)], result.Pieces
            .Where(p => p.Role == PieceRole.Header).Select(p => p.Cut));
        Assert.EndsWith(
            "One piece 10 ft long laid along the opening would do, 1 piece of 40 ft² for 2 of "
            + "32 ft²: it buys more, so they stay as they are.", Remark(result, "short-header"),
            StringComparison.Ordinal);
    }

    [Fact]
    public void W6_keeps_its_two_headers_and_is_told_of_the_one_piece_10_ft_long()
    {
        // 2 pieces of 48 × 18 in make 12 ft²; one of 48 × 120 in makes 40 ft².
        var result = WorkedJobs.W6.WithPractice(p => p with { MergeShortHeaders = true }).Sized();
        Assert.Equal(2, result.Pieces.Count(p => p.Role == PieceRole.Header));
        Assert.EndsWith(
            "1 piece of 40 ft² for 2 of 12 ft²: it buys more, so they stay as they are.",
            Remark(result, "short-header"), StringComparison.Ordinal);
    }

    [Fact]
    public void They_stay_when_asked_and_the_better_piece_is_offered()
    {
        var result = Wall(96, 12).WithPractice(p => p with { MergeShortHeaders = false }).Sized();
        Assert.Equal(2, result.Pieces.Count(p => p.Role == PieceRole.Header));
        Assert.EndsWith(
            "1 piece of 32 ft² for 2 of 32 ft²: let short headers be merged to have it.",
            Remark(result, "short-header"), StringComparison.Ordinal);
    }

    [Fact]
    public void With_widths_to_choose_from_the_piece_comes_from_the_narrowest_roll_that_holds_it()
    {
        // A door of 144 in 102 in high leaves 132 − 102 + 6 = 36 in; two strips of 72 in buy
        // 2 × 72 × 36 = 5184 in², one piece of a 36 in roll 36 × 144 = 5184 in².
        var best = Cover(72, "sidewallA") with { RollWidth = null, BestRollWidth = true };
        var result = Job(312, 432, 132, Gable(4), best)
            .WithOpenings(Opening("sidewallA", OpeningKind.SlidingDoor, 144, 102, 144))
            .WithPractice(p => p with { ShortHeader = In(60) }).Sized();
        var piece = Assert.Single(result.Pieces, p => p.Role == PieceRole.Header);
        Assert.Equal((In(36), In(144)), (piece.Width, piece.Cut));
    }

    [Fact]
    public void Headers_made_one_never_make_a_single_width_buy_less_than_the_best_widths()
    {
        // Step 72 in: full pieces 132 + 6 go up to 144, a header 132 − 108 + 6 = 30 in to 72. Over
        // a door from 72 to 144 in one strip of 72 in makes a header of 72 × 72 in; two of 36 in
        // are made one of 36 × 72 in. In all (216 − 72) × 144 + 36 × 72 = 23 328 in², 162 ft².
        double Bought(InsulationInput line) => Job(312, 216, 132, Gable(4), line)
            .WithOpenings(Opening("sidewallA", OpeningKind.SlidingDoor, 72, 108, 72))
            .WithPractice(p => p with { ShortHeader = In(60), RoundUpTo = In(72) })
            .Sized().Totals.Gross.TotalSquareFeet;
        Assert.Equal(162, Bought(Cover(36, "sidewallA")), 1e-6);
        Assert.Equal(162, Bought(
            Cover(36, "sidewallA") with { RollWidth = null, BestRollWidth = true }), 1e-6);
    }

    [Fact]
    public void A_header_wider_than_the_roll_does_not_fit_and_that_is_told() =>
        Assert.EndsWith(
            "One piece along the opening does not fit: the highest, 42 in, is wider than a roll "
            + "of 36 in.",
            Remark(Wall(96, 12, Cover(36, "sidewallA")).Sized(), "short-header"),
            StringComparison.Ordinal);

    [Fact]
    public void Headers_of_which_one_is_not_short_stay_and_that_is_told()
    {
        // 4:12 from 132 in: 164 in at 96 in and 180 in at 144 in; above 147 in with 6 in of folds
        // 23 and 39 in, of which the second is not under 24 in.
        var result = Job(312, 456, 132, Gable(4), Cover(48, "endwall1"))
            .WithOpenings(Opening("endwall1", OpeningKind.SlidingDoor, 96, 147, 48)).Sized();
        Assert.EndsWith(
            "One piece along the opening does not fit: the highest, 39 in, is not short (under "
            + "24 in).", Remark(result, "short-header"), StringComparison.Ordinal);
    }
}
