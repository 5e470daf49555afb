using PostFrame.Engine;
using PostFrame.Engine.Heat;
using PostFrame.Engine.Quantities;
using Xunit;

namespace PostFrame.EngineTests.Heat;

/// <summary>
/// How a line is put into the frame. The expected values are the parallel path of ASHRAE HoF 2021
/// ch. 27 added up by hand from films, wood (λ 0.12), squeezed blanket (0.035) and the section
/// between the members.
/// </summary>
public sealed class CandidateTests
{
    private const double Rsi = 1 / 9.26;
    private const double Rse = 1 / 34.0;
    private const double Wood = 0.089 / 0.12;
    private const double Squeezed = 0.003 / 0.035;

    // The liner hangs on the purlins: their 89 mm of wood are there once, whatever part of the
    // depth the air space takes. About 1.93 m²·K/W where it takes all of it.
    [Theory]
    [InlineData(40)]
    [InlineData(89)]
    public void Wood_beside_an_air_space_is_counted_once(double mm)
    {
        var heat = Winter(Blanket() with { Spaces = [new(SpaceSide.Room, mm, 0)] });
        Assert.Equal(
            Parallel(heat.ClearField.TotalSi, Rsi + Wood + Squeezed + Rse), heat.R.TotalSi, 1e-9);
    }

    [Fact]
    public void A_board_over_the_purlins_keeps_its_thickness_where_blanket_is_squeezed()
    {
        var r = 12 / ThermalResistance.RValuesPerSi;
        var board = Winter(Board() with { Placement = Placement.OverFraming });
        Assert.Equal(
            Math.Min(Parallel(Rsi + r + Rse, Rsi + r + Wood + Rse), Rsi + r + Rse),
            board.R.TotalSi, 1e-9);
        var blanket = Winter(Blanket());
        Assert.Equal(
            Parallel(
                Rsi + 10 / ThermalResistance.RValuesPerSi + Rse, Rsi + Wood + Squeezed + Rse),
            blanket.R.TotalSi, 1e-9);
    }

    // 4 in of foam between 89 mm purlins: the purlins stay 89 mm deep.
    [Theory]
    [InlineData(50)]
    [InlineData(101.6)]
    [InlineData(150)]
    public void Foam_lends_the_wood_no_depth_it_has_not(double mm)
    {
        var foam = Foam(mm, 6 * mm / 25.4);
        var heat = Winter(foam);
        var clear = Rsi + foam.MaterialR!.Value.TotalSi + Rse;
        Assert.Equal(Parallel(clear, Rsi + Wood + Rse), heat.R.TotalSi, 1e-9);
    }

    [Theory]
    [InlineData(MaterialKind.ClosedCellFoam)]
    [InlineData(MaterialKind.OpenCellFoam)]
    [InlineData(MaterialKind.Cellulose)]
    public void Foam_cannot_be_put_between_cladding_and_purlin(MaterialKind kind) =>
        Refused(
            Foam(50, 7) with { Kind = kind, Placement = Placement.OverFraming }, "/placement",
            "not-buildable");

    [Fact]
    public void A_second_space_on_the_same_side_is_refused() => Refused(
        Bubble() with { Spaces = [new(SpaceSide.Cladding, 20, 0), new(SpaceSide.Cladding, 20, 0)] },
        "/airSpaces/1/side", "either-or");

    [Fact]
    public void A_space_deeper_than_its_framing_is_refused_with_the_bound()
    {
        var misfit = Refused(
            Bubble() with { Spaces = [new(SpaceSide.Cladding, 120, 0)] },
            "/airSpaces/0/thickness", "at-most");
        Assert.Equal(("89", "mm"), (misfit.Limit, misfit.Unit));
        // Under the framing the liner stands off as far as it likes.
        Assert.Empty(CandidateFit.Violations(
            Bubble() with
            {
                Placement = Placement.UnderFraming,
                Spaces = [new(SpaceSide.Room, 120, 0), new(SpaceSide.Cladding, 89, 0)],
            },
            Site(0).Framing));
    }

    [Fact]
    public void A_space_has_what_foam_leaves_of_the_depth() => Assert.Equal(
        "39",
        Refused(
            Foam(50, 7) with { Spaces = [new(SpaceSide.Room, 60, 0)] },
            "/airSpaces/0/thickness", "at-most").Limit);

    // NAIMA 202-96 (Rev. 2000), nominal R at nominal recovered thickness (M✓), and between its
    // rows: 2½ in lie two thirds of the way from R-7 in 2 in to R-8 in 2¾ in.
    [Theory]
    [InlineData(2, 7)]
    [InlineData(2.75, 8)]
    [InlineData(3, 10)]
    [InlineData(3.5, 11)]
    [InlineData(4, 13)]
    [InlineData(5, 16)]
    [InlineData(6, 19)]
    [InlineData(8, 25)]
    [InlineData(9.5, 30)]
    [InlineData(2.5, 7.6667)]
    [InlineData(7, 22)]
    [InlineData(1, 3.5)]
    public void Blanket_reaches_its_nominal_R_and_no_more(double inches, double r) => Assert.Equal(
        r,
        MaterialBand.MostOf(MaterialKind.Blanket, inches * 25.4)!.Value.TotalRValue, 1e-3);

    [Fact]
    public void R_21_of_six_inches_of_blanket_is_more_than_it_reaches() => Assert.Equal(
        ClaimOutcome.NotReachableByMaterial,
        ClaimCheck.Of(
            Blanket() with { KnownR = null, ClaimedR = 21, ThicknessMm = 152.4 }, Site(0)).Outcome);

    [Fact]
    public void A_sheet_thicker_than_a_sheet_is_refused() => Refused(
        Bubble() with { ThicknessMm = 200 }, "/thickness", "at-most");

    [Fact]
    public void An_R_nobody_stated_is_asked_for_and_not_made_up()
    {
        var blank = Foam(50, 7) with { ClaimedR = null };
        Assert.Null(blank.MaterialR);
        Assert.Equal("claimedR", Assert.Single(CandidateAssembly.Missing(blank)).Fact);
        var finding = ClaimCheck.Of(blank with { Spaces = [] }, Site(0));
        Assert.Null(finding.SystemWinter);
        Assert.Null(finding.SystemSummer);
    }

    [Fact]
    public void More_than_the_material_reaches_is_rebuilt_at_what_it_reaches() => Assert.Equal(
        7.2 * 50 / 25.4, Foam(50, 30).MaterialR!.Value.TotalRValue, 1e-9);

    [Fact]
    public void A_bright_face_of_a_board_is_asked_for_its_air_space()
    {
        var foil = Board() with { CladdingEmittance = 0.05 };
        Assert.Equal("airSpaces", Assert.Single(CandidateAssembly.Unsaid(foil)).Fact);
        Assert.Empty(CandidateAssembly.Missing(foil));
        Assert.Contains(ClaimCheck.Of(foil, Site(0)).NotSaid, said => said.Contains("air space"));
        Assert.Empty(CandidateAssembly.Unsaid(foil with { Spaces = [] }));
        Assert.Empty(CandidateAssembly.Unsaid(Board()));
    }

    // ISO 6946:2017 clause 6.9 (from memory): a well-ventilated layer and all outside it are
    // dropped for a still-air film; here the insulation itself lies outside it.
    [Theory]
    [InlineData(500, 0)]
    [InlineData(1000, 0.5)]
    [InlineData(1500, 1)]
    [InlineData(9000, 1)]
    public void Outdoor_air_between_liner_and_sheet_takes_the_sheet_away(
        double openings, double share)
    {
        ThermalResistance Winter(double mm2) => ClaimCheck.Of(
            Bubble() with { Spaces = [new(SpaceSide.Room, 40, mm2)] }, Site(0))
            .SystemWinter!.Value;
        Assert.Equal(
            (1 - share) * Winter(0).TotalSi + share * 2 * Rsi, Winter(openings).TotalSi, 1e-9);
    }

    [Theory]
    [InlineData(0, "down")]
    [InlineData(90, "sideways")]
    public void A_wall_is_not_spoken_of_as_a_summer_roof(double slope, string way)
    {
        foreach (var claimed in Enumerable.Range(2, 40))
        {
            var finding = ClaimCheck.Of(
                Bubble() with
                {
                    ClaimedR = claimed / 2.0,
                    Spaces = [new(SpaceSide.Cladding, 80, 0)],
                },
                Site(slope));
            if (finding.Outcome != ClaimOutcome.Supported && slope == 0)
                Assert.Contains(way, finding.Text);
            if (slope == 90) Assert.DoesNotContain("down", finding.Text);
            if (slope == 90) Assert.DoesNotContain("summer", finding.Text);
        }
    }

    private static double Parallel(double clear, double framed)
    {
        const double wood = 38.0 / 610;
        return 1 / ((1 - wood) / clear + wood / framed);
    }

    private static Violation Refused(Candidate candidate, string path, string rule)
    {
        var misfit = Assert.Single(CandidateFit.Violations(candidate, Site(0).Framing));
        Assert.Equal((path, rule), (misfit.Path, misfit.Rule));
        Assert.Throws<InvalidOperationException>(() => CandidateAssembly.Build(candidate, Site(0)));
        Assert.Throws<InvalidOperationException>(() => ClaimCheck.Of(candidate, Site(0)));
        return misfit;
    }

    private static AssemblyHeat Winter(Candidate candidate) => AssemblySolver.Solve(
        CandidateAssembly.Build(candidate, Site(0)), Site(0).Winter);

    private static Candidate Blanket() => new()
    {
        Name = "blanket",
        Kind = MaterialKind.Blanket,
        KnownR = ThermalResistance.FromRValue(10),
        ThicknessMm = 76.2,
        RoomEmittance = 0.9,
    };

    private static Candidate Board() => Blanket() with
    {
        Name = "board",
        Kind = MaterialKind.PolyisoBoard,
        KnownR = ThermalResistance.FromRValue(12),
        ThicknessMm = 50.8,
    };

    private static Candidate Foam(double mm, double claimed) => new()
    {
        Name = "foam",
        Kind = MaterialKind.ClosedCellFoam,
        ClaimedR = claimed,
        ThicknessMm = mm,
        RoomEmittance = 0.9,
    };

    private static Candidate Bubble() => new()
    {
        Name = "sheet",
        Kind = MaterialKind.BubbleSheet,
        ThicknessMm = 8,
        RoomEmittance = 0.05,
        CladdingEmittance = 0.05,
    };

    private static PlaneSite Site(double slope) => new()
    {
        SlopeDegrees = slope,
        Framing = new Framing { WidthMm = 38, SpacingMm = 610, DepthMm = 89 },
        Winter = Constructions.At(CalculationBasis.Ashrae, 20, -15, Season.Winter),
        Summer = Constructions.At(CalculationBasis.Ashrae, 25, 60, Season.Summer),
    };
}
