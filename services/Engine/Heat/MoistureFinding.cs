using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.Heat;

/// <summary>What moisture does to a candidate over a year and on the coldest night.</summary>
public sealed record MoistureFinding
{
    /// <summary>The year.</summary>
    public required MoistureYear Year { get; init; }

    /// <summary>
    /// The year with the outside 4 K colder than the air day and night, as under the usual sky and
    /// without any sun: the wet bound of what monthly means leave out. Null for a wall.
    /// Source: ε·ΔR/ho of a flat surface, ASHRAE HoF 2021 ch. 18, from memory.
    /// </summary>
    public MoistureYear? UnderSky { get; init; }

    /// <summary>The coldest month, 1 to 12.</summary>
    public required int ColdestMonth { get; init; }

    /// <summary>Every boundary between layers in the coldest month.</summary>
    public required IReadOnlyList<InterfaceState> Interfaces { get; init; }

    /// <summary>
    /// Vapour in the coldest month once the state is steady, before anything dries.
    /// </summary>
    public required DiffusionState ColdestFlow { get; init; }

    /// <summary>The assembly in the coldest month.</summary>
    public required AssemblyHeat Coldest { get; init; }

    /// <summary>Room humidity at which it starts at winter design temperature.</summary>
    public required Onset AtDesign { get; init; }

    /// <summary>Class of the facing; null where its permeance is not known.</summary>
    public RetarderClass? Class { get; init; }

    /// <summary>In words, with amounts.</summary>
    public required string Text { get; init; }

    /// <summary>What was tried and what it does; empty for a dry year.</summary>
    public required IReadOnlyList<MoistureCure> Cures { get; init; }

    /// <summary>
    /// Outdoor air at the winter design temperature is taken as damp as winter air usually is:
    /// 80 % (own assumption; the onset hardly depends on it, cold air holds little).
    /// </summary>
    private const double OutdoorRhAtDesign = 0.8;

    private const double TightPerm = 0.02;

    /// <summary>
    /// Water that hangs on a surface without running off [g/m²]. Source: ISO 13788:2012, from
    /// memory.
    /// </summary>
    private const double RunsOffAboveGPerM2 = 200;

    /// <summary>Computes the finding of a candidate whose facts are complete.</summary>
    /// <exception cref="InvalidOperationException">Something needed is missing.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    public static MoistureFinding Of(
        Candidate candidate, PlaneSite site, IReadOnlyList<OutdoorMonth> months, RoomAir room)
    {
        ArgumentNullException.ThrowIfNull(candidate);
        ArgumentNullException.ThrowIfNull(site);
        var assembly = CandidateAssembly.Build(candidate, site);
        var solved = ThermalYear.Of(assembly, site.Basis, months, room, 0);
        var year = solved.Wetted(room);
        var sky = site.IsWall
            ? null
            : MoistureYear.Of(assembly, site.Basis, months, room, SolAir.FlatSkyKelvins);
        var coldest = months.MinBy(month => month.Mean.TotalCelsius)!;
        var then = AssemblySolver.Solve(assembly, site.Winter with
        {
            Room = room.At(coldest.Mean),
            Outside = coldest.Mean,
        });
        return new MoistureFinding
        {
            Year = year,
            UnderSky = sky,
            ColdestMonth = coldest.Month,
            Coldest = then,
            ColdestFlow = Diffusion.Steady(
                then.Profile, room.VapourPa(coldest), coldest.VapourPressurePa),
            Interfaces = InterfaceState.Of(
                then, room.VapourPa(coldest), coldest.VapourPressurePa),
            AtDesign = OnsetAt(assembly, site.Winter),
            Class = candidate.Perm is { } perm ? Vapour.ClassOf(perm) : null,
            Text = TextOf(year) + (sky is null ? "" : SkyText(year, sky, site.Words)),
            Cures = year.Verdict == MoistureVerdict.Dry
                ? []
                : [.. CuresOf(candidate, site, months, room, solved, year)],
        };
    }

    private static Onset OnsetAt(Assembly assembly, Conditions conditions) => Onset.Of(
        AssemblySolver.Solve(assembly, conditions),
        OutdoorRhAtDesign * Vapour.Saturation(conditions.Outside));

    private static string TextOf(MoistureYear year) => VerdictOf(year)
        + (year.Verdict is MoistureVerdict.Dry or MoistureVerdict.Accumulates
            || year.PeakGPerM2 > RunsOffAboveGPerM2
            ? ""
            : FormattableString.Invariant(
                $" Below about {RunsOffAboveGPerM2:0} g/m² water hangs as a film and does not ")
                + "run off.");

    private static string SkyText(MoistureYear year, MoistureYear sky, UnitWords words) =>
        sky.PeakGPerM2 < MoistureYear.NothingGPerM2
            ? $" Nor would it if the roof were {words.Difference(SolAir.FlatSkyKelvins)} colder "
                + "than the air all year, as under a clear sky without sun."
            : " Monthly means leave out sun and night sky; were the roof "
            + $"{words.Difference(SolAir.FlatSkyKelvins)} colder than the "
            + FormattableString.Invariant(
                $"air all year, it would be up to {sky.PeakGPerM2:0.#} g/m² instead of ")
            + FormattableString.Invariant($"{year.PeakGPerM2:0.#}, with ")
            + FormattableString.Invariant($"{sky.CarriedOverGPerM2:0.#} carried over.");

    private static string VerdictOf(MoistureYear year) => year.Verdict switch
    {
        MoistureVerdict.Dry => "Nothing condenses inside by diffusion in an average year.",
        MoistureVerdict.WetsAndDries => FormattableString.Invariant(
            $"Wets and dries: up to {year.PeakGPerM2:0.#} g/m² {year.Place}, dry again within the ")
            + "year.",
        MoistureVerdict.NearlyDries => FormattableString.Invariant(
            $"Dries but for a little: up to {year.PeakGPerM2:0.#} g/m² {year.Place}, of which ")
            + FormattableString.Invariant(
                $"{year.CarriedOverGPerM2:0.#} g/m² are left when the next cold season begins; so ")
            + "little is within what monthly diffusion can tell.",
        _ => FormattableString.Invariant(
            $"Accumulates: in the first year up to {year.PeakGPerM2:0.#} g/m² {year.Place}, of ")
            + FormattableString.Invariant(
                $"which {year.CarriedOverGPerM2:0.#} g/m² are left when the next cold season ")
            + "begins; the years after add to it. "
            + FormattableString.Invariant(
                $"Above about {RunsOffAboveGPerM2:0} g/m² water runs off."),
    };

    private static IEnumerable<MoistureCure> CuresOf(
        Candidate candidate, PlaneSite site, IReadOnlyList<OutdoorMonth> months, RoomAir room,
        ThermalYear solved, MoistureYear now)
    {
        string Amounts(MoistureYear year) => FormattableString.Invariant(
            $"at most {year.PeakGPerM2:0.#} g/m² instead of {now.PeakGPerM2:0.#}")
            + (!Helps(year)
                ? FormattableString.Invariant($", {year.CarriedOverGPerM2:0.#} carried over.")
                : ", dry again within the year.");
        static bool Helps(MoistureYear year) =>
            year.Verdict is MoistureVerdict.Dry or MoistureVerdict.WetsAndDries;

        if (room.BurnerExcessPa > 0)
        {
            var vented = solved.Wetted(room with { BurnerExcessPa = 0 });
            yield return new(
                "vent-the-heater", "A heater with a flue: " + Amounts(vented), Helps(vented))
            { Year = vented };
        }
        if (candidate.Perm is null or > 0.1)
        {
            var tight = MoistureYear.Of(
                CandidateAssembly.Build(candidate with { Perm = TightPerm }, site), site.Basis,
                months, room);
            yield return new(
                "tighter-facing",
                FormattableString.Invariant($"A facing of {TightPerm} perm, laps sealed: ")
                    + Amounts(tight),
                Helps(tight))
            { Year = tight, Perm = TightPerm };
        }
        var drier = solved.Wetted(Scaled(room, 0.5));
        yield return new(
            "drier-room", "Half the moisture in the room, by ventilation or a drier: "
                + Amounts(drier),
            Helps(drier))
        { Year = drier, MoistureShare = 0.5 };
        if (!Helps(now))
        {
            var share = LargestShare(kept => Helps(solved.Wetted(kept)), room);
            var coldest = months.MinBy(month => month.Mean.TotalCelsius)!;
            double Rh(RoomAir kept) => 100 * kept.VapourPa(coldest)
                / Vapour.Saturation(kept.At(coldest.Mean));
            yield return new(
                "humidity-limit",
                share is { } s
                    ? FormattableString.Invariant(
                        $"Room air kept to {Rh(Scaled(room, s)):0} % relative humidity in the ")
                        + FormattableString.Invariant(
                            $"coldest month instead of {Rh(room):0} %: dry again within the year.")
                    : "No drier room cures it: the outdoor air alone wets it.",
                share is not null)
            { MoistureShare = share, RoomRh = share is { } at ? Rh(Scaled(room, at)) / 100 : null };
        }
    }

    private static RoomAir Scaled(RoomAir room, double share) => room with
    {
        ColdExcessPa = room.ColdExcessPa * share,
        BurnerExcessPa = room.BurnerExcessPa * share,
    };

    /// <summary>
    /// The largest share of the room's moisture that still dries, to half a percent.
    /// </summary>
    private static double? LargestShare(Func<RoomAir, bool> dries, RoomAir room)
    {
        if (!dries(Scaled(room, 0))) return null;
        var (good, bad) = (0.0, 1.0);
        for (var step = 0; step < 8; step++)
        {
            var middle = (good + bad) / 2;
            if (dries(Scaled(room, middle))) good = middle;
            else bad = middle;
        }
        return good;
    }
}
