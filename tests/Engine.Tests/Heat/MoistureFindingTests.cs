using PostFrame.Engine.Heat;
using PostFrame.Engine.Quantities;
using Xunit;

namespace PostFrame.EngineTests.Heat;

public sealed class MoistureFindingTests
{
    [Fact]
    public void A_leaky_facing_accumulates_and_every_cure_is_what_it_says()
    {
        var finding = Of(perm: 1.0, excess: 540);
        Assert.Equal(MoistureVerdict.Accumulates, finding.Year.Verdict);
        Assert.Equal(RetarderClass.II, finding.Class);
        Assert.StartsWith("Accumulates: in the first year up to ", finding.Text);
        Assert.Contains("the years after add to it", finding.Text);
        var limit = Assert.Single(finding.Cures, cure => cure.Id == "humidity-limit");
        Assert.True(limit.Cures);
        Assert.Contains(finding.Cures, cure => cure.Id == "tighter-facing");
    }

    // Below 200 g/m² a film hangs (ISO 13788:2012, from memory), but what is left year by year
    // passes any bound: nobody is told that it will not run off.
    [Fact]
    public void A_little_that_accumulates_is_not_called_a_film_that_hangs()
    {
        var finding = Of(perm: 0.09, excess: 540);
        Assert.Equal(MoistureVerdict.Accumulates, finding.Year.Verdict);
        Assert.InRange(finding.Year.PeakGPerM2, 1, 199);
        Assert.DoesNotContain("does not run off", finding.Text);
    }

    [Fact]
    public void A_tighter_facing_never_wets_more()
    {
        double[] perms = [10, 1, 0.1, 0.02, 0];
        var peaks = perms.Select(perm => Of(perm, 540).Year.PeakGPerM2).ToArray();
        for (var i = 1; i < peaks.Length; i++) Assert.True(peaks[i] <= peaks[i - 1] + 1e-6);
    }

    [Fact]
    public void A_damper_room_never_wets_less()
    {
        var peaks = Enum.GetValues<IndoorUse>()
            .Select(IndoorMoisture.ColdExcessPa).Order()
            .Select(excess => Of(0.5, excess).Year.PeakGPerM2).ToArray();
        for (var i = 1; i < peaks.Length; i++) Assert.True(peaks[i] >= peaks[i - 1] - 1e-6);
    }

    [Fact]
    public void A_heater_without_a_flue_makes_it_worse_and_a_flue_is_a_cure()
    {
        var with = Of(0.5, 270, burnerExcess: 800);
        Assert.True(with.Year.PeakGPerM2 > Of(0.5, 270).Year.PeakGPerM2);
        Assert.Contains(with.Cures, cure => cure.Id == "vent-the-heater");
    }

    [Fact]
    public void A_clear_night_makes_the_roof_drip_sooner()
    {
        var site = Site();
        var drip = DripFinding.Of(
            CandidateAssembly.Build(Blanket(0.02), site), site, null, null);
        Assert.True(drip.ClearNightRh < drip.OnsetRh);
        Assert.Null(drip.WorstMonth);
    }

    // thermal.md 7.3: touching the steel drips above 47 %, R-10 above 88 % (C, ISO, 0 °F).
    [Theory]
    [InlineData(1.1, 0.47)]
    [InlineData(10, 0.88)]
    public void The_onset_is_that_of_the_independent_surface_check(double r, double rh)
    {
        var site = Site() with { Framing = null };
        var drip = DripFinding.Of(
            CandidateAssembly.Build(
                Blanket(0.02) with { KnownR = ThermalResistance.FromRValue(r) }, site),
            site, null, null);
        Assert.Equal(rh, drip.OnsetRh, 0.005);
    }

    // thermal.md 7.3 (C): R-19, 152 mm, facing of 1 perm and the fibre after it: peak 374.8 g/m²,
    // 139 carried over. The permeance of a faced blanket is its facing's.
    [Fact]
    public void A_faced_blanket_comes_to_the_year_computed_outside()
    {
        var faced = Blanket(1) with
        {
            KnownR = ThermalResistance.FromRValue(19),
            ThicknessMm = 152,
        };
        var year = MoistureFinding.Of(
            faced, Site() with { Framing = null }, Duluth(), new RoomAir
            {
                HeatedTo = Temperature.FromCelsius(15),
                ColdExcessPa = 540,
            }).Year;
        Assert.Equal(374.8, year.PeakGPerM2, 3.7);
        Assert.Equal(139, year.CarriedOverGPerM2, 1.5);
    }

    // thermal.md 7.3 (C): R-10, 76 mm, 70 °F 40 % to 0 °F: 4.18 g/m²·day behind 1 perm, 0.426
    // behind 0.1. One month of such weather and a room of that pressure: 1 %.
    [Theory]
    [InlineData(1.0, 4.18)]
    [InlineData(0.1, 0.426)]
    public void The_steady_rate_is_that_of_the_independent_script(double perm, double daily)
    {
        var outdoors = Temperature.FromFahrenheit(0);
        var room = Temperature.FromFahrenheit(70);
        var outdoorPa = 0.8 * Vapour.Saturation(outdoors);
        var finding = MoistureFinding.Of(
            Blanket(perm), Site() with { Framing = null },
            [.. Enumerable.Range(1, 12).Select(month =>
                new OutdoorMonth(month, outdoors, outdoorPa))],
            new RoomAir
            {
                HeatedTo = room,
                ColdExcessPa = 0.4 * Vapour.Saturation(room) - outdoorPa,
            });
        Assert.Equal(
            daily, finding.ColdestFlow.NetCondensation * DiffusionState.GramsPerDay,
            0.01 * daily + 0.0005);
    }

    [Fact]
    public void A_few_grams_left_are_not_called_like_a_wet_roof()
    {
        var little = Enumerable.Range(1, 200).Select(i => Of(i * 0.005, 540))
            .First(finding => finding.Year.CarriedOverGPerM2 > 0.1);
        Assert.Equal(MoistureVerdict.NearlyDries, little.Year.Verdict);
        Assert.StartsWith("Dries but for a little", little.Text);
        Assert.Contains(
            FormattableString.Invariant($"{little.Year.CarriedOverGPerM2:0.#} g/m² are left"),
            little.Text);
    }

    // ASHRAE HoF 2021 ch. 18 (from memory): a flat roof loses about 4 K to the usual sky. Held so
    // all year and without sun it is the wet bound; a wall sees no sky.
    [Theory]
    [InlineData(1)]
    [InlineData(0.1)]
    public void Under_the_sky_a_roof_never_wets_less(double perm)
    {
        var finding = Of(perm, 540);
        Assert.True(finding.UnderSky!.PeakGPerM2 > finding.Year.PeakGPerM2);
        Assert.True(finding.UnderSky.CarriedOverGPerM2 >= finding.Year.CarriedOverGPerM2 - 1e-9);
        Assert.Contains(
            FormattableString.Invariant($"{finding.UnderSky.PeakGPerM2:0.#} g/m² instead of"),
            finding.Text);
        var wall = MoistureFinding.Of(
            Blanket(perm), Site() with { SlopeDegrees = 90 }, Duluth(), Shop());
        Assert.Null(wall.UnderSky);
        Assert.DoesNotContain("sky", wall.Text);
    }

    // thermal.md 7.3: Duluth in January, −13.02 °C and 188.2 Pa, the room at 15 °C. By hand for
    // R-10 by ISO 6946: room face 15 − 28.02 · 0.10/1.901 = 13.53 °C, steel
    // 15 − 28.02 · 1.861/1.901 = −12.43 °C, where psat is 610.5·exp(−21.875 · 12.43/253.07) =
    // 208.5 Pa. The room's air holds 188.2 + 540 = 728.2 Pa: dew point 237.3·L/(17.269 − L),
    // L = 0.1763: 2.45 °C; outdoors the frost point of 188.2 Pa, L = −1.1768: −13.55 °C.
    [Fact]
    public void Every_boundary_has_its_dew_or_frost_point()
    {
        var at = MoistureFinding.Of(
            Blanket(1), Site() with { Framing = null }, Duluth(), Shop()).Interfaces;
        Assert.Equal(13.53, at[1].At.TotalCelsius, 0.01);
        Assert.Equal("room face", at[1].Place);
        Assert.Equal(2.45, at[1].DewPoint.TotalCelsius, 0.01);
        Assert.False(at[1].IsFrost);
        var steel = Assert.Single(at, point => point.Place.Contains("and steel"));
        Assert.Equal(-12.43, steel.At.TotalCelsius, 0.01);
        Assert.Equal(208.5, steel.SaturationPa, 0.1);
        // It condenses there: the vapour is at saturation, its frost point the steel's temperature.
        Assert.Equal(steel.At.TotalCelsius, steel.DewPoint.TotalCelsius, 1e-6);
        Assert.True(steel.IsFrost);
        Assert.Equal(-13.55, at[^1].DewPoint.TotalCelsius, 0.01);
        Assert.Equal(-13.02, at[^1].At.TotalCelsius, 1e-9);
    }

    private static RoomAir Shop() => new()
    {
        HeatedTo = Temperature.FromCelsius(15),
        ColdExcessPa = 540,
    };

    private static MoistureFinding Of(double perm, double excess, double burnerExcess = 0) =>
        MoistureFinding.Of(Blanket(perm), Site(), Duluth(), new RoomAir
        {
            HeatedTo = Temperature.FromCelsius(15),
            ColdExcessPa = excess,
            BurnerExcessPa = burnerExcess,
        });

    private static Candidate Blanket(double perm) => new()
    {
        Name = "blanket",
        Kind = MaterialKind.Blanket,
        KnownR = ThermalResistance.FromRValue(10),
        ThicknessMm = 76,
        RoomEmittance = 0.9,
        Perm = perm,
    };

    private static PlaneSite Site() => new()
    {
        SlopeDegrees = 18,
        Framing = new Framing { WidthMm = 38, SpacingMm = 610, DepthMm = 89 },
        Basis = CalculationBasis.Iso6946,
        Winter = Constructions.At(
            CalculationBasis.Iso6946, 70 / 1.8 - 32 / 1.8, -32 / 1.8, Season.Winter),
        Summer = Constructions.At(CalculationBasis.Iso6946, 25, 60, Season.Summer),
    };

    private static List<OutdoorMonth> Duluth() =>
    [
        .. ReferenceTable.Rows("duluth-year").Select(row => new OutdoorMonth(
            (int)row.Number("month"),
            Temperature.FromCelsius(row.Number("mean_c")),
            row.Number("vapour_pa"))),
    ];
}
