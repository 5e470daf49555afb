using PostFrame.Engine.Heat;
using PostFrame.Engine.Quantities;
using Xunit;
using static PostFrame.EngineTests.Heat.Constructions;

namespace PostFrame.EngineTests.Heat;

public sealed class BridgedAssemblyTests
{
    // Scottish Building Standards, Technical Handbook, annex 6.B.2 (read; marked R). The cavity is
    // given as 0.18 m²·K/W there, so it stands here as a fixed resistance. Tolerance 1 %.
    [Fact]
    public void The_timber_frame_wall_of_annex_6B2_comes_out_as_printed()
    {
        var wall = Iso(90, [0.15],
            Continuous(0.0125 / 0.21),
            Bridged(0.140 / 0.04, 0.140 / 0.12),
            Continuous(0.009 / 0.13),
            Continuous(0.18),
            Continuous(0.102 / 0.77));
        Assert.Equal(3.435, wall.UpperLimit.TotalSi, 0.01 * 3.435);
        Assert.Equal(3.304, wall.LowerLimit.TotalSi, 0.01 * 3.304);
        Assert.Equal(0.297, wall.U.TotalSi, 0.01 * 0.297);
    }

    // Same handbook, annex 6.B.3 (read): two layers bridged by different things, so four sections.
    // R′ 3.617, R″ 3.136, U 0.296. Outer leaf, cavity and board are those of 6.B.2. 1 %.
    [Fact]
    public void Two_independent_bridges_make_the_four_sections_of_annex_6B3()
    {
        var wall = Iso(90, [0.118, 0.067],
            Continuous(0.0125 / 0.21),
            Bridged(0.089 / 0.038, 0.089 / 0.13),
            Bridged(0.125 / 0.11, 0.125 / 0.88) with { FramingIndex = 1 },
            Continuous(0.18),
            Continuous(0.102 / 0.77));
        Assert.Equal(3.617, wall.UpperLimit.TotalSi, 0.01 * 3.617);
        Assert.Equal(3.136, wall.LowerLimit.TotalSi, 0.01 * 3.136);
        Assert.Equal(0.296, wall.U.TotalSi, 0.01 * 0.296);
    }

    // Public cold-roof example by ISO 6946 (read): R′ 8.4956, R″ 8.0964, U 0.1205.
    [Fact]
    public void The_cold_roof_example_comes_out_as_printed()
    {
        // Both its films are 0.10, so the outer one is completed by a layer of 0.06.
        var roof = Iso(0, [0.1275],
            Continuous(0.0595), Bridged(2.857, 0.769), Continuous(5.714), Continuous(0.06));
        Assert.Equal(8.4956, roof.UpperLimit.TotalSi, 0.001);
        Assert.Equal(8.0964, roof.LowerLimit.TotalSi, 0.001);
        Assert.Equal(0.1205, roof.U.TotalSi, 0.0001);
    }

    [Theory]
    [InlineData(BridgeMethod.ParallelPath)]
    [InlineData(BridgeMethod.IsothermalPlanes)]
    [InlineData(BridgeMethod.Combined)]
    public void Every_method_lies_between_the_two_limits(BridgeMethod method)
    {
        var wall = AssemblySolver.Solve(
            Of(90, [0.25], Continuous(0.08), Bridged(2.3, 0.63), Continuous(0.5)) with
            {
                Method = method,
            },
            Cold(CalculationBasis.Ashrae));
        Assert.InRange(
            wall.R.TotalSi, wall.LowerLimit.TotalSi - 1e-12, wall.UpperLimit.TotalSi + 1e-12);
    }

    // ASHRAE HoF 2021 (SI) ch. 27 Ex. 2, roof in summer: .16 + .09 + 4.97 + .52 + .06 + .04;
    // printed R 5.83 (the sum is 5.84), U 0.17. Marked R.
    [Fact]
    public void The_summer_roof_of_chapter_27_example_2_comes_out_as_printed()
    {
        var roof = AssemblySolver.Solve(
            Of(0, [], Continuous(0.09), Continuous(4.97), Continuous(0.52), Continuous(0.06)),
            Hot(CalculationBasis.Ashrae));
        Assert.Equal(5.83, roof.R.TotalSi, 0.01 * 5.83);
        Assert.Equal(0.17, roof.U.TotalSi, 0.005);
    }

    // Same chapter, Ex. 1, sandwich panel of 150 mm at λ 0.035: R of the panel 4.56, with films
    // printed R 4.70, U 0.21 (R, its text; the example's table prints 5.28 and 5.70 and is wrong).
    [Fact]
    public void The_panel_of_chapter_27_example_1_comes_out_as_its_text_prints()
    {
        var wall = AssemblySolver.Solve(
            Of(90, [], Continuous(4.56)), Cold(CalculationBasis.Ashrae));
        Assert.Equal(4.70, wall.R.TotalSi, 0.01 * 4.70);
        Assert.Equal(0.21, wall.U.TotalSi, 0.005);
    }

    // Same chapter, Ex. 3, 38 × 90 mm studs at 400 mm, 25 % framing: printed parallel path U 0.36,
    // R 2.78; isothermal planes R 2.58, U 0.388 (R). The layers are from memory (M): siding 0.11,
    // foam sheathing 0.70, batt 2.30 or stud 0.77, gypsum 0.08; they give the recomputed 2.757 and
    // 2.577 (C) to the last digit.
    [Fact]
    public void The_stud_wall_of_chapter_27_example_3_comes_out_by_both_methods()
    {
        var wall = AssemblySolver.Solve(
            Of(90, [0.25],
                Continuous(0.08), Bridged(2.30, 0.77), Continuous(0.70), Continuous(0.11)),
            Cold(CalculationBasis.Ashrae));
        Assert.Equal(2.78, wall.UpperLimit.TotalSi, 0.01 * 2.78);
        Assert.Equal(0.36, 1 / wall.UpperLimit.TotalSi, 0.005);
        Assert.Equal(2.58, wall.LowerLimit.TotalSi, 0.01 * 2.58);
        Assert.Equal(0.388, 1 / wall.LowerLimit.TotalSi, 0.01 * 0.388);
        Assert.Equal(2.757, wall.UpperLimit.TotalSi, 0.002);
        Assert.Equal(2.577, wall.LowerLimit.TotalSi, 0.002);
    }

    // The same wall with studs at 600 mm: printed R 2.76 (R). Its framing share is not among our
    // notes; by hand from the layers above, isothermal planes give 2.69 and parallel path 2.86 at
    // 20 %, 2.60 and 2.78 at 24 %: whatever it is between, the printed value lies in our limits.
    [Theory]
    [InlineData(0.20, 2.69, 2.86)]
    [InlineData(0.24, 2.60, 2.78)]
    public void Studs_farther_apart_stay_between_the_two_methods(
        double share, double isothermal, double parallel)
    {
        var wall = AssemblySolver.Solve(
            Of(90, [share],
                Continuous(0.08), Bridged(2.30, 0.77), Continuous(0.70), Continuous(0.11)),
            Cold(CalculationBasis.Ashrae));
        Assert.Equal(isothermal, wall.LowerLimit.TotalSi, 0.01);
        Assert.Equal(parallel, wall.UpperLimit.TotalSi, 0.01);
        Assert.InRange(2.76, wall.LowerLimit.TotalSi, wall.UpperLimit.TotalSi);
    }

    // Post-frame case P3 (C): 57 mm steel flange at 1524 mm, R-10 squeezed to 3 mm there: the
    // straight-through sum is U 0.118, where ASHRAE 90.1 Table A2.3.3 has 0.184 for
    // through-fastened R-10 (M). So steel framing never takes the sum.
    [Fact]
    public void Straight_through_a_steel_flange_the_sum_is_a_third_too_good()
    {
        var sum = AssemblySolver.Solve(
            Of(0, [57.0 / 1524],
                Bridged(10 / ThermalResistance.RValuesPerSi, 0.003 / 0.035)),
            Cold(CalculationBasis.Ashrae)).U.TotalUFactor;
        Assert.Equal(0.118, sum, 0.001);
        Assert.InRange(sum / 0.184, 0, 0.67);
    }

    // ISO 6946's combined method is for R′/R″ up to 1.5 (from memory of its scope). A blanket of
    // 1.761 m²K/W squeezed to 0.086: by hand, with Rsi 0.10 and Rse 0.04, at 6 % of wood
    // R′ = 1 / (0.94/1.901 + 0.06/0.226) = 1.316, R″ = 1 / (0.94/1.761 + 0.06/0.086) + 0.14 =
    // 0.952, their mean 1.134; at 12 % 1.006 and 0.668, 1.51 apart: 1.006 − 0.668/4 = 0.839.
    [Theory]
    [InlineData(0.06, 1.134)]
    [InlineData(0.12, 0.839)]
    public void The_combined_method_takes_no_more_off_than_at_its_bound(double wood, double r)
    {
        var roof = Iso(0, [wood], Bridged(1.761, 0.086));
        Assert.Equal(r, roof.R.TotalSi, 1e-3);
    }

    // Across the bound there is no step: R″ ≤ R ≤ R′, and R rises by no less than three quarters
    // of what is added everywhere.
    [Fact]
    public void Insulation_added_across_the_bound_of_the_combined_method_always_tells()
    {
        double R(double added) =>
            Iso(0, [0.12], Bridged(1.761, 0.086), Continuous(added)).R.TotalSi;
        for (var added = 0.0; added < 1; added += 0.001)
            Assert.InRange(R(added + 0.001) - R(added), 0.00074, 0.01);
    }

    // Post-frame roof P1: R-13 between 38 × 89 mm purlins at 610 mm, λ 0.12 (computed, C).
    [Fact]
    public void Roof_P1_with_blanket_between_purlins_keeps_its_value()
    {
        var roof = P1(CalculationBasis.Ashrae);
        Assert.Equal(2.1899, roof.UpperLimit.TotalSi, 0.003);
        Assert.Equal(2.1660, roof.LowerLimit.TotalSi, 0.003);
        var mean = (roof.UpperLimit.TotalSi + roof.LowerLimit.TotalSi) / 2;
        Assert.Equal(0.0809, 1 / mean / ThermalResistance.RValuesPerSi, 0.0002);
    }

    // Post-frame roof P2: R-10 blanket over the same purlins, squeezed to 3 mm (computed, C).
    [Fact]
    public void Roof_P2_with_blanket_squeezed_over_purlins_keeps_its_value()
    {
        var heat = PlaneHeat.Summarise(Draped(10, 76, 0.9));
        Assert.Equal(1.7933, heat.Winter.AssemblyR.TotalSi, 0.003);
        Assert.Equal(0.0982, heat.Winter.AssemblyU.TotalUFactor, 0.0002);
    }

    // Foam and batts lie between the purlins, a board unbroken under them: only blanket and sheet
    // are squeezed. Parallel path by hand, ASHRAE winter films 1/9.26 and 1/34, wood 0.089/0.12.
    [Theory]
    [InlineData(MaterialKind.ClosedCellFoam, 50.8, 12, true)]
    [InlineData(MaterialKind.Batt, 88.9, 13, true)]
    [InlineData(MaterialKind.XpsBoard, 50.8, 10, false)]
    public void Only_what_lies_over_the_purlins_is_squeezed(
        MaterialKind kind, double mm, double r, bool bridged)
    {
        const double films = 1 / 9.26 + 1 / 34.0;
        const double wood = 38.0 / 610;
        var clear = films + r / ThermalResistance.RValuesPerSi;
        var flat = Draped(r, mm, 0.9) with { Kind = kind, SlopeDegrees = 0 };
        var winter = PlaneHeat.Summarise(flat).Winter;
        Assert.Equal(
            bridged ? 1 / ((1 - wood) / clear + wood / (films + 0.089 / 0.12)) : clear,
            winter.AssemblyR.TotalSi, 1e-9);
        Assert.DoesNotContain("squeezed", winter.Method);
        Assert.Contains(bridged ? "between 6.2 % of wood" : "unbroken under", winter.Method);
    }

    [Fact]
    public void A_batt_too_thick_for_its_framing_is_told_without_the_framing()
    {
        var winter = PlaneHeat.Summarise(
            Draped(38, 305, 0.9) with { Kind = MaterialKind.Batt }).Winter;
        Assert.Contains("too thick for its framing, which is not counted", winter.Method);
    }

    // Common practice, no source: 2 in faced blanket with a bright face comes to about R 8 to 10
    // as an assembly with its films. That is the winter roof and the wall; the summer roof, heat
    // flowing down onto a clean bright face, is a little above.
    [Theory]
    [InlineData(18.4)]
    [InlineData(90)]
    public void Two_inches_with_a_bright_face_come_to_about_R_8_to_10(double slope)
    {
        var heat = PlaneHeat.Summarise(Draped(7, 51, 0.05) with { SlopeDegrees = slope });
        Assert.InRange(heat.Winter.AssemblyR.TotalRValue, 7.8, 10);
    }

    // Bubble sheet against the steel, with films: 1.9 up, 2.0 sideways, 2.3 down for a film of
    // ordinary emittance on the room side. thermal.md section 4, computed (C).
    [Theory]
    [InlineData(0, true, 1.9)]
    [InlineData(90, true, 2.0)]
    [InlineData(0, false, 2.3)]
    public void Bubble_sheet_stapled_to_steel_is_worth_about_two(
        double slope, bool winter, double r)
    {
        var heat = PlaneHeat.Summarise(Draped(1.1, 8, 0.9) with
        {
            SlopeDegrees = slope,
            Framing = null,
        });
        var season = winter ? heat.Winter : heat.Summer;
        Assert.Equal(r, season.AssemblyR.TotalRValue, 0.05);
    }

    [Fact]
    public void A_thin_sheet_is_never_worth_more_for_the_wood_beside_it()
    {
        var heat = PlaneHeat.Summarise(Draped(1.1, 8, 0.9));
        Assert.Equal(1.1 + 0.17 + 0.61, heat.Winter.AssemblyR.TotalRValue, 0.02);
        Assert.Contains("limited to the part between members", heat.Winter.Method);
    }

    private static PlaneConstruction Draped(double r, double thicknessMm, double emittance) =>
        new()
        {
            SlopeDegrees = 18.4,
            NominalR = ThermalResistance.FromRValue(r),
            ThicknessMm = thicknessMm,
            RoomFaceEmittance = emittance,
            Framing = new Framing { WidthMm = 38, SpacingMm = 610, DepthMm = 89 },
        };
}
