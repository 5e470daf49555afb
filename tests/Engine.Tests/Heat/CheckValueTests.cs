using PostFrame.Engine.Heat;
using PostFrame.Engine.Quantities;
using Xunit;
using static PostFrame.EngineTests.Heat.Constructions;
using Row = System.Collections.Generic.IReadOnlyDictionary<string, string>;

namespace PostFrame.EngineTests.Heat;

/// <summary>
/// Tables of thermal.md that no other class holds, row by row: source, edition, table, tolerance
/// and mark stand at the head of each file.
/// </summary>
public sealed class CheckValueTests
{
    private const double AirPa = 101_325;

    [Theory]
    [MemberData(nameof(Table), "black-body")]
    public void Black_faces_exchange_what_ISO_6946_prints(string _, Row row) => Assert.Equal(
        row.Number("hr0"),
        AirSpaceHeat.Of(
            CalculationBasis.Iso6946, HeatFlow.Up, 50, 1,
            Temperature.FromCelsius(row.Number("mean_c")), 5).RadiativeWPerM2K,
        0.006);

    [Theory]
    [MemberData(nameof(Table), "films-ip")]
    public void A_film_resists_the_same_in_the_other_units(string _, Row row) => Assert.Equal(
        row.Number("r_ip"),
        (row["side"] == "inside"
            ? Films.Inside(
                CalculationBasis.Ashrae, row.Word<HeatFlow>("flow"), row.Number("emittance"))
            : Films.Outside(CalculationBasis.Ashrae, row.Word<Season>("season"))).TotalRValue,
        0.012);

    [Theory]
    [MemberData(nameof(Table), "film-sums")]
    public void The_two_systems_differ_most_at_reflective_faces(string _, Row row)
    {
        double Sum(CalculationBasis basis) =>
            Films.Inside(basis, row.Word<HeatFlow>("flow"), row.Number("emittance")).TotalSi
            + Films.Outside(basis, row.Word<Season>("season")).TotalSi;
        Assert.Equal(row.Number("iso"), Sum(CalculationBasis.Iso6946), 0.006);
        Assert.Equal(row.Number("ashrae"), Sum(CalculationBasis.Ashrae), 0.006);
    }

    [Theory]
    [MemberData(nameof(Table), "conductivities")]
    public void An_inch_resists_by_its_conductivity(string _, Row row) => Assert.Equal(
        row.Number("r_per_inch"),
        Slab.Solid.Of(25.4, row.Number("lambda")).R.TotalRValue,
        row.Number("tolerance"));

    // ASHRAE HoF 2021 ch. 26 Table 1 (R): hem-fir and spruce-pine-fir 0.11 to 0.13 W/(m·K).
    [Fact]
    public void Wood_is_taken_within_the_band_of_the_table() => Assert.InRange(
        new Framing { WidthMm = 38, SpacingMm = 610, DepthMm = 89 }.ConductivityWPerMK,
        0.11, 0.13);

    [Theory]
    [MemberData(nameof(Table), "vapour-factors")]
    public void A_material_holds_vapour_back_as_its_design_value_from_memory(string _, Row row) =>
        Assert.Equal(
            row.Number("mu"), MaterialBand.Of(row.Word<MaterialKind>("kind")).VapourFactor);

    [Theory]
    [MemberData(nameof(Table), "humidity-ratio")]
    public void Saturated_air_holds_the_water_of_the_table(string _, Row row)
    {
        var p = Vapour.Saturation(Temperature.FromCelsius(row.Number("celsius")));
        var w = row.Number("kg_per_kg");
        Assert.Equal(w, 0.621945 * p / (AirPa - p), 0.011 * w);
    }

    // HoF 2017 ch. 1 Ex. 1 (R): 40 °C dry bulb, W 0.0065 kg/kg: dew point 7 °C, 14 % RH, read off
    // a chart. p = W·P/(0.621945 + W).
    [Fact]
    public void The_air_of_chapter_1_example_1_has_its_dew_point_and_humidity()
    {
        var p = 0.0065 * AirPa / (0.621945 + 0.0065);
        Assert.Equal(7, Vapour.DewPoint(p).TotalCelsius, 1.0);
        Assert.Equal(0.14, p / Vapour.Saturation(Temperature.FromCelsius(40)), 0.005);
    }

    [Theory]
    [MemberData(nameof(Table), "surface-factor")]
    public void The_surface_factor_is_that_of_the_independent_script(string _, Row row)
    {
        var layer = Continuous(row.Number("r_value") / ThermalResistance.RValuesPerSi);
        var heat = Iso(0, [], layer);
        var (room, outside) = (heat.Conditions.Room, heat.Conditions.Outside);
        Assert.Equal(
            row.Number("f_rsi"),
            heat.RoomFace.KelvinsAbove(outside) / room.KelvinsAbove(outside), 0.0006);
    }

    // ISO 13788 mould criterion, 80 % at the surface (C): 20 °C and 50 % allow no face below
    // 12.62 °C, at −5 °C outdoors fRsi 0.705.
    [Fact]
    public void The_mould_criterion_asks_for_the_surface_of_the_script()
    {
        var least = Vapour.DewPoint(
            0.5 * Vapour.Saturation(Temperature.FromCelsius(20)) / DripFinding.MouldRh);
        Assert.Equal(12.62, least.TotalCelsius, 0.01);
        Assert.Equal(0.705, (least.TotalCelsius + 5) / 25, 0.0006);
    }

    // thermal.md 3.3 (C): straight lines in emittance between 0.05 and 0.2 overstate R by up to
    // 4 % up, 6 % sideways, 24 % down.
    [Theory]
    [InlineData(HeatFlow.Up, 4)]
    [InlineData(HeatFlow.Horizontal, 6)]
    [InlineData(HeatFlow.Down, 24)]
    public void Straight_lines_in_emittance_overstate_as_the_script_found(
        HeatFlow flow, double percent)
    {
        var most = AshraeConvection.Printed.Where(row => row.Flow == flow)
            .SelectMany(row => row.Hc.Select((_, i) =>
            {
                var (mean, difference) = AshraeConvection.Conditions[i];
                double R(double emittance) => AirSpaceHeat.Of(
                    CalculationBasis.Ashrae, flow, row.ThicknessMm, emittance,
                    Temperature.FromCelsius(mean), difference).R.TotalSi;
                return Enumerable.Range(1, 14).Max(k =>
                {
                    var straight = R(0.05) + (R(0.2) - R(0.05)) * k / 15;
                    return 100 * (straight / R(0.05 + 0.01 * k) - 1);
                });
            })).Max();
        Assert.Equal(percent, most, 1.0);
    }

    // thermal.md 3.3 (C): ISO formula over ASHRAE's printed values.
    [Theory]
    [InlineData("Down", 0.05, -5, 14)]
    [InlineData("Horizontal", 0.05, -4, 17)]
    [InlineData("Up", 0.05, -17, 22)]
    public void The_two_systems_lie_as_far_apart_as_the_script_found(
        string flow, double emittance, double least, double most)
    {
        var percents = ReferenceTable.Rows("air-space-ashrae")
            .Where(row => row["flow"] == flow && row["printed_credible"] == "1"
                && row.Number("emittance") == emittance)
            .Select(row => 100 * (AirSpaceHeat.Of(
                CalculationBasis.Iso6946, Enum.Parse<HeatFlow>(flow), row.Number("thickness_mm"),
                emittance, Temperature.FromCelsius(row.Number("mean_c")),
                row.Number("difference_k")).R.TotalSi / row.Number("r_printed") - 1))
            .ToList();
        Assert.Equal(least, percents.Min(), 1.0);
        Assert.Equal(most, percents.Max(), 1.0);
    }

    // Public encyclopaedic text (R): about 57.2 ng/(Pa·s·m²) a perm; a perm-inch by script (C).
    [Fact]
    public void A_perm_is_what_public_text_says()
    {
        Assert.Equal(57.2, Vapour.NanogramsPerPerm, 0.05);
        Assert.Equal(1.45322, Vapour.NanogramsPerPerm * 0.0254, 1e-5);
    }

    // thermal.md section 4: section numbers of 16 CFR Part 460 with their marks.
    [Theory]
    [InlineData("460.12(b)(4)", "R")]
    [InlineData("460.12(b)(5)", "R")]
    [InlineData("460.5(a)", "R")]
    [InlineData("460.5(b)", "M")]
    [InlineData("460.5(c)", "M")]
    [InlineData("460.5(d)", "M")]
    [InlineData("460.8", "R")]
    [InlineData("460.20", "R")]
    [InlineData("460.22", "R")]
    [InlineData("460.18", "M")]
    [InlineData("460.19", "M")]
    public void A_section_of_the_label_rule_is_quoted_with_its_mark(string section, string mark) =>
        Assert.Equal(
            mark, Assert.Single(LabelRule.All, rule => rule.Section == "16 CFR " + section).Mark);

    public static TheoryData<string, Row> Table(string name)
    {
        var data = new TheoryData<string, Row>();
        foreach (var row in ReferenceTable.Rows(name))
            data.Add(string.Join(' ', row.Values), row);
        return data;
    }
}
