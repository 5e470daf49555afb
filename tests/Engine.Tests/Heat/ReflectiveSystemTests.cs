using PostFrame.Engine.Heat;
using PostFrame.Engine.Quantities;
using Xunit;
using static PostFrame.EngineTests.Heat.Constructions;

namespace PostFrame.EngineTests.Heat;

/// <summary>
/// Where "R-10 foil" comes from: the same layer, by direction and by what is added.
/// </summary>
public sealed class ReflectiveSystemTests
{
    public static TheoryData<string, string, string, double> Systems()
    {
        var data = new TheoryData<string, string, string, double>();
        foreach (var row in ReferenceTable.Rows("reflective-systems"))
            foreach (var flow in (string[])["up", "horizontal", "down"])
                data.Add(row["space"], row["films"], flow, row.Number(flow));
        return data;
    }

    [Theory]
    [MemberData(nameof(Systems))]
    public void One_foil_layer_is_worth_what_its_spaces_and_direction_give(
        string space, string films, string flow, double rValue)
    {
        var direction = Enum.Parse<HeatFlow>(flow, ignoreCase: true);
        var season = direction == HeatFlow.Down ? Season.Summer : Season.Winter;
        var r = 1.1 / ThermalResistance.RValuesPerSi;
        if (space == "one90") r += SpaceR(direction, 90);
        if (space == "two20") r += 2 * SpaceR(direction, 20);
        if (films == "both")
            r += Films.Inside(CalculationBasis.Ashrae, direction, 0.9).TotalSi
                + Films.Outside(CalculationBasis.Ashrae, season).TotalSi;
        Assert.Equal(rValue, r * ThermalResistance.RValuesPerSi, 0.15);
    }

    // thermal.md section 4 (C): foil wet (ε_eff 0.65), one 90 mm space, heat up, films: R 2.9.
    [Fact]
    public void Wet_foil_loses_its_space()
    {
        var wet = AirSpaceHeat.Of(
            CalculationBasis.Ashrae, HeatFlow.Up, 90, AirSpace.Effective(0.70, 0.9),
            Temperature.FromCelsius(10), 16.7).R.TotalRValue;
        Assert.Equal(2.9, 1.1 + wet + 0.61 + 0.17, 0.15);
    }

    // ASHRAE HoF 2021 ch. 26 Table 2 (R): foil 0.05, dew just visible 0.30 (ε_eff 0.29), clearly
    // visible 0.70 (0.65). The space under bright foil is worth less in each state, in the order of
    // its emittances, and a foil room face loses its film.
    [Fact]
    public void Bright_faces_are_also_given_damp_and_wet()
    {
        var (cold, hot) = (Cold(CalculationBasis.Ashrae), Hot(CalculationBasis.Ashrae));
        var bright = Of(0, [], Continuous(0.2), Space(90, 0.05, 0.9));
        var dulled = DulledFaces.Of(bright, cold, hot);
        Assert.Equal([0.30, 0.70], dulled.Select(faces => faces.Emittance));
        double[] effective = [.. dulled.Select(faces =>
            Assert.Single(faces.Winter.AirSpaces).Space.EffectiveEmittance)];
        Assert.Equal(0.29, effective[0], 0.005);
        Assert.Equal(0.65, effective[1], 0.005);
        double[] winter =
        [
            AssemblySolver.Solve(bright, cold).R.TotalSi,
            .. dulled.Select(faces => faces.Winter.R.TotalSi),
        ];
        Assert.True(winter[0] > winter[1] && winter[1] > winter[2]);

        var face = Of(0, [], Continuous(1)) with { RoomEmittance = 0.05 };
        var wet = DulledFaces.Of(face, cold, hot)[1];
        Assert.Equal(
            1 + Films.Inside(CalculationBasis.Ashrae, HeatFlow.Down, 0.70).TotalSi + 1 / 22.7,
            wet.Summer.R.TotalSi, 1e-9);
        Assert.Empty(DulledFaces.Of(Of(0, [], Continuous(1), Space(90, 0.9, 0.9)), cold, hot));
    }

    // ASHRAE HoF 2021 (SI) ch. 26 Table 10 (R): up, h 9.26 at ε 0.90 and 4.32 at 0.05, so 5.81 of
    // radiation per unit of ε: 5.23/9.26. ISO 6946: 0.9 · 5.71 · 0.10 and 0.05 · 5.71 · 0.189.
    [Theory]
    [InlineData(CalculationBasis.Ashrae, 0.9, 0.565)]
    [InlineData(CalculationBasis.Ashrae, 0.05, 0.0673)]
    [InlineData(CalculationBasis.Iso6946, 0.9, 0.514)]
    [InlineData(CalculationBasis.Iso6946, 0.05, 0.0540)]
    public void The_radiant_share_at_the_room_face_is_that_of_its_film(
        CalculationBasis basis, double emittance, double share)
    {
        var heat = AssemblySolver.Solve(
            Of(0, [], Continuous(1)) with { RoomEmittance = emittance }, Cold(basis));
        Assert.Equal(share, heat.RoomFaceRadiantShare, 0.0006);
    }

    // thermal.md section 4 (C): the radiant exchange falls by 94 %, the heat through a 90 mm space
    // at 50/30 °F by 58 % up, 64 % sideways, 85 % down.
    [Theory]
    [InlineData(HeatFlow.Up, 58)]
    [InlineData(HeatFlow.Horizontal, 64)]
    [InlineData(HeatFlow.Down, 85)]
    public void Cutting_radiation_by_94_percent_cuts_the_heat_by_less(HeatFlow flow, double cut)
    {
        AirSpaceHeat At(double effective) => AirSpaceHeat.Of(
            CalculationBasis.Ashrae, flow, 90, effective, Temperature.FromCelsius(10), 16.7);
        var (foil, paint) = (At(0.05), At(0.82));
        Assert.Equal(94, 100 * (1 - foil.RadiativeWPerM2K / paint.RadiativeWPerM2K), 0.5);
        Assert.Equal(cut, 100 * (1 - paint.R.TotalSi / foil.R.TotalSi), 1.0);
    }

    // thermal.md section 4 (C): that face under steel above an R-13 bridged roof adds about R 1.1
    // to 13.2 in winter, taking the space at 50/30 °F.
    [Fact]
    public void Under_steel_above_an_insulated_roof_foil_adds_about_one()
    {
        double R(double effective) => AirSpaceHeat.Of(
            CalculationBasis.Ashrae, HeatFlow.Up, 90, effective, Temperature.FromCelsius(10), 16.7)
            .R.TotalRValue;
        Assert.Equal(1.1, R(0.05) - R(0.82), 0.1);
    }

    // Inside that roof the space has only its own share of the difference, about 4 K, and so
    // convects less and resists more than the table's 30 °F column: it must be iterated.
    [Fact]
    public void Inside_an_insulated_roof_a_space_sees_only_its_share_of_the_difference()
    {
        var roof = AssemblySolver.Solve(
            Of(0, [38.0 / 610],
                Bridged(13 / ThermalResistance.RValuesPerSi, 0.089 / 0.12),
                Space(90, 0.05, 0.9)),
            At(CalculationBasis.Ashrae, 21, -7, Season.Winter));
        var space = Assert.Single(roof.AirSpaces);
        Assert.InRange(space.DifferenceKelvins, 2, 6);
        Assert.InRange(space.Heat.R.TotalRValue, 2.0, 3.2);
    }

    // Public-body maxima for modelling foil bubble (NRCan text on a public list, R): without an air
    // space RSI 0.26, one space 0.53, both spaces 0.62. They are ceilings for all directions; ours
    // for heat up must not be far above them.
    [Fact]
    public void Material_alone_stays_below_the_public_maximum() => Assert.InRange(
        1.1 / ThermalResistance.RValuesPerSi, 0.17, 0.26);

    // The same text: with one space at the inner foil RSI 0.53 (R). Heat up, the worst direction,
    // is what a maximum for all directions must be near: 5 %. (RSI 0.62 for two spaces has lost its
    // context in the copy and is not held.)
    [Fact]
    public void Material_and_one_space_are_worth_the_public_maximum() => Assert.Equal(
        0.53, 1.1 / ThermalResistance.RValuesPerSi + SpaceR(HeatFlow.Up, 90), 0.05 * 0.53);

    private static double SpaceR(HeatFlow flow, double mm) => AirSpaceHeat.Of(
        CalculationBasis.Ashrae, flow, mm, AirSpace.Effective(0.05, 0.9),
        Temperature.FromCelsius(10), 16.7).R.TotalSi;
}
