using PostFrame.Engine.Heat;
using PostFrame.Engine.Quantities;
using Xunit;

namespace PostFrame.EngineTests.Heat;

public sealed class ClaimTests
{
    // The "R-10 foil" cases of thermal.md section 4: material R 1.0 to 1.1 (R), with one 90 mm
    // space and films 10.4 down, 3.9 up (C). One layer, by what is said about its spaces.
    [Fact]
    public void R_10_of_a_sheet_against_steel_needs_an_air_space_that_is_not_there()
    {
        var finding = Of(Bubble(10) with { Spaces = [] });
        Assert.Equal(ClaimOutcome.NeedsAirSpaceNotThere, finding.Outcome);
        Assert.InRange(finding.MaterialMost!.Value.TotalRValue, 1.0, 1.5);
        Assert.InRange(finding.SystemWinter!.Value.TotalRValue, 1.9, 2.7);
    }

    [Fact]
    public void R_10_with_one_enclosed_space_is_a_summer_only_system_value()
    {
        var finding = Of(Bubble(10) with { Spaces = [Gap(90)] });
        Assert.Equal(ClaimOutcome.SummerOnlySystemValue, finding.Outcome);
        Assert.Contains("In winter the same system is R-4", finding.Text);
        Assert.InRange(finding.SystemSummer!.Value.TotalRValue, 10, 14.5);
    }

    [Fact]
    public void R_1_of_a_bubble_sheet_is_supported() =>
        Assert.Equal(ClaimOutcome.Supported, Of(Bubble(1.1) with { Spaces = [] }).Outcome);

    [Fact]
    public void R_21_of_a_bubble_sheet_is_not_reachable()
    {
        var finding = Of(Bubble(21) with { Spaces = [] });
        Assert.Equal(ClaimOutcome.NotReachableByMaterial, finding.Outcome);
        Assert.Contains(
            "Even with a space of 3½ in on each side and heat flowing down", finding.Text);
    }

    // Straight down a bubble with two 90 mm spaces reaches R 19 (ASHRAE ch. 26 Table 3), so what
    // keeps an R-10 from a steep roof is the direction of heat flow, never the material.
    [Theory]
    [InlineData(0)]
    [InlineData(22)]
    [InlineData(23)]
    [InlineData(45)]
    public void On_no_roof_is_a_value_of_heat_flowing_straight_down_beyond_the_material(
        double slope)
    {
        var finding = ClaimCheck.Of(Bubble(10) with { Spaces = [Gap(90)] }, Site(slope));
        Assert.NotEqual(ClaimOutcome.NotReachableByMaterial, finding.Outcome);
        Assert.Contains("heat flowing", finding.Text);
    }

    [Fact]
    public void On_a_steep_roof_it_is_said_that_the_value_is_one_of_heat_flowing_straight_down()
    {
        var finding = ClaimCheck.Of(Bubble(10) with { Spaces = [Gap(90)] }, Site(45));
        Assert.Equal(ClaimOutcome.SummerOnlySystemValue, finding.Outcome);
        Assert.Contains("straight down, as under a flat roof in summer", finding.Text);
        Assert.Contains("On this slope it is R-6.9 in summer and R-4.8 in winter", finding.Text);

        var bare = ClaimCheck.Of(Bubble(10) with { Spaces = [] }, Site(45));
        Assert.Equal(ClaimOutcome.NeedsAirSpaceNotThere, bare.Outcome);
        Assert.Contains("straight down, as under a flat roof in summer", bare.Text);
    }

    // Sideways at 50 °F and 30 °F difference Table 3 prints 0.49 m²·K/W at 20 mm, 0.45 at 90 mm:
    // 1.5 + 2 × 2.78 + films 0.68 and 0.25 make R 8.0, with 90 mm 7.5 (thermal.md 2.2 and 3.3).
    [Theory]
    [InlineData(7.8, ClaimOutcome.NeedsAirSpaceNotThere)]
    [InlineData(8.3, ClaimOutcome.NotReachableByMaterial)]
    public void Beyond_a_material_in_a_wall_is_what_the_best_printed_space_does_not_reach(
        double claimed, ClaimOutcome outcome)
    {
        var finding = ClaimCheck.Of(Bubble(claimed) with { Spaces = [] }, Site(90));
        Assert.Equal(outcome, finding.Outcome);
        Assert.Equal(8.0, finding.SystemBest!.Value.TotalRValue, 0.06);
    }

    // At 4:12 such a sheet comes to R 9.6 by that rule, good to 15 % (thermal.md 3.3): the claim is
    // not said to hold nowhere else.
    [Fact]
    public void A_claim_within_the_doubt_of_the_rule_is_not_confined_to_flat_roofs()
    {
        var finding = ClaimCheck.Of(Bubble(10) with { Spaces = [Gap(90)] }, Site(18.4));
        Assert.StartsWith(
            "R-10 holds for the whole system with heat flowing straight down", finding.Text);
        Assert.DoesNotContain("only", finding.Text);
    }

    // ASHRAE ch. 26 Table 3 prints no 18°: what is told of it is told with the rule it is told by.
    [Theory]
    [InlineData(18.4, true)]
    [InlineData(45, false)]
    public void A_value_between_the_printed_slopes_is_not_passed_off_as_printed(
        double slope, bool own) =>
        Assert.Equal(own, ClaimCheck.Of(Bubble(10) with { Spaces = [Gap(90)] }, Site(slope))
            .Text.Contains("own rule", StringComparison.Ordinal));

    [Theory]
    [InlineData(1.55, "R-1.55 is within")]
    [InlineData(1.5, "R-1.5 is within")]
    [InlineData(1.56, "R-1.56 holds for the whole system")]
    public void A_claim_is_repeated_as_it_was_made(double claimed, string begins) =>
        Assert.StartsWith(begins, Of(Bubble(claimed) with { Spaces = [] }).Text);

    [Fact]
    public void What_was_not_said_stays_blank_and_is_named()
    {
        var finding = Of(Bubble(10) with
        {
            Spaces = null,
            ThicknessMm = null,
            RoomEmittance = null,
            CladdingEmittance = null,
        });
        Assert.Equal(ClaimOutcome.NeedsAirSpaceNotThere, finding.Outcome);
        Assert.Contains("none is stated", finding.Text);
        Assert.Null(finding.SystemWinter);
        Assert.Null(finding.SystemSummer);
        Assert.Contains("thickness", finding.NotSaid);
        Assert.Contains(finding.NotSaid, unsaid => unsaid.Contains("460.12(b)(4)"));
    }

    [Theory]
    [InlineData(MaterialKind.Blanket, 3, 10, ClaimOutcome.Supported)]
    [InlineData(MaterialKind.Blanket, 2, 13, ClaimOutcome.NotReachableByMaterial)]
    [InlineData(MaterialKind.ClosedCellFoam, 2, 13, ClaimOutcome.Supported)]
    [InlineData(MaterialKind.OpenCellFoam, 2, 13, ClaimOutcome.NotReachableByMaterial)]
    [InlineData(MaterialKind.Batt, 5.5, 21, ClaimOutcome.Supported)]
    public void A_body_of_insulation_is_judged_by_its_thickness(
        MaterialKind kind, double inches, double claimed, ClaimOutcome expected) =>
        Assert.Equal(expected, Of(new Candidate
        {
            Name = "line",
            Kind = kind,
            ClaimedR = claimed,
            ThicknessMm = inches * 25.4,
        }).Outcome);

    // 16 CFR 460.5(a): rated on the material alone; both films (ASHRAE, some) must not lift
    // a claim beyond it into what is supported.
    [Fact]
    public void Films_do_not_lift_the_claim_of_a_blanket_even_when_it_is_said_to_have_no_space()
    {
        var blanket = new Candidate
        {
            Name = "line",
            Kind = MaterialKind.Blanket,
            ThicknessMm = 50.8,
            RoomEmittance = 0.9,
        };
        var most = ClaimCheck.Of(blanket, Site(0)).MaterialMost!.Value.TotalRValue;
        var claimed = blanket with { ClaimedR = most + 0.5 };
        Assert.Equal(ClaimOutcome.NotReachableByMaterial, Of(claimed).Outcome);
        Assert.Equal(
            ClaimOutcome.NotReachableByMaterial, Of(claimed with { Spaces = [] }).Outcome);
    }

    [Fact]
    public void Without_claim_or_thickness_nothing_is_judged()
    {
        var foam = new Candidate { Name = "line", Kind = MaterialKind.ClosedCellFoam };
        Assert.Null(Of(foam).Outcome);
        Assert.Null(Of(foam with { ClaimedR = 13 }).Outcome);
        Assert.Null(Of(foam with { ThicknessMm = 50 }).Outcome);
    }

    [Fact]
    public void A_wall_has_no_summer_only_value()
    {
        foreach (var claimed in (double[])[4, 6, 8, 10, 12])
            Assert.NotEqual(
                ClaimOutcome.SummerOnlySystemValue,
                ClaimCheck.Of(Bubble(claimed) with { Spaces = [Gap(90)] }, Site(90)).Outcome);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(90)]
    public void Cutting_radiation_by_95_percent_cuts_the_heat_of_the_assembly_by_less(double slope)
    {
        var candidate = Bubble(null) with { Spaces = [Gap(90)] };
        var site = Site(slope);
        foreach (var conditions in (Conditions[])[site.Winter, site.Summer])
        {
            var cut = RadiantCut.Of(CandidateAssembly.Build(candidate, site), conditions);
            Assert.InRange(cut.RadiantPercent!.Value, 90, 97);
            Assert.InRange(cut.TotalPercent, 5, cut.RadiantPercent.Value - 5);
        }
    }

    [Fact]
    public void Touching_steel_on_both_faces_nothing_is_cut_but_the_room_film()
    {
        var site = Site(0);
        var painted = Bubble(null) with { Spaces = [], RoomEmittance = 0.9 };
        var cut = RadiantCut.Of(CandidateAssembly.Build(painted, site), site.Winter);
        Assert.Null(cut.RadiantPercent);
        Assert.Equal(0, cut.TotalPercent, 1e-9);
    }

    [Fact]
    public void A_space_open_to_the_wind_counts_for_nothing()
    {
        var open = Bubble(10) with
        {
            Spaces = [new CandidateSpace(SpaceSide.Cladding, 90, OpeningsMm2: 2000)],
        };
        Assert.Equal(ClaimOutcome.NeedsAirSpaceNotThere, Of(open).Outcome);
    }

    [Fact]
    public void The_same_facts_rebuild_to_the_same_assembly_whoever_offers_them()
    {
        var ours = new Candidate
        {
            Name = "ours",
            Kind = MaterialKind.Blanket,
            KnownR = ThermalResistance.FromRValue(10),
            ThicknessMm = 76.2,
            RoomEmittance = 0.9,
        };
        var theirs = ours with { Name = "theirs", KnownR = null, ClaimedR = 10 };
        var site = Site(18);
        Assert.Equal(
            AssemblySolver.Solve(CandidateAssembly.Build(ours, site), site.Winter).R,
            AssemblySolver.Solve(CandidateAssembly.Build(theirs, site), site.Winter).R);
    }

    private static ClaimFinding Of(Candidate candidate) => ClaimCheck.Of(candidate, Site(0));

    private static CandidateSpace Gap(double mm) => new(SpaceSide.Cladding, mm, 0);

    private static Candidate Bubble(double? claimed) => new()
    {
        Name = "foil bubble",
        Kind = MaterialKind.BubbleSheet,
        ClaimedR = claimed,
        ThicknessMm = 8,
        RoomEmittance = 0.05,
        CladdingEmittance = 0.05,
    };

    private static PlaneSite Site(double slope) => new()
    {
        SlopeDegrees = slope,
        Framing = new Framing { WidthMm = 38, SpacingMm = 610, DepthMm = 90 },
        Winter = Constructions.At(CalculationBasis.Ashrae, 20, -15, Season.Winter),
        Summer = Constructions.At(CalculationBasis.Ashrae, 25, 60, Season.Summer),
    };
}
