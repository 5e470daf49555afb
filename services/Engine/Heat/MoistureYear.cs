using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.Heat;

/// <summary>
/// Month-by-month condensation and drying inside an assembly.
/// Source: ISO 13788:2012 clause 6. The year starts, dry, at the first month that condenses after
/// one that does not; a wet place stays at saturation until it has dried, within the month too.
/// </summary>
public sealed record MoistureYear
{
    /// <summary>Below this a year counts as dry [g/m²]: less than is weighed (own).</summary>
    private const double NothingGPerM2 = 0.1;

    /// <summary>Twelve months in order from the first wet one.</summary>
    public required IReadOnlyList<MoistureMonth> Months { get; init; }

    /// <summary>Where the most water gathers; null when none does.</summary>
    public required string? Place { get; init; }

    /// <summary>Most water held at a month's end [g/m²].</summary>
    public double PeakGPerM2 => Months.Max(month => month.HeldGPerM2);

    /// <summary>Water left after twelve months [g/m²].</summary>
    public double CarriedOverGPerM2 => Months[^1].HeldGPerM2;

    /// <summary>What the year amounts to.</summary>
    public MoistureVerdict Verdict => PeakGPerM2 < NothingGPerM2 ? MoistureVerdict.Dry
        : CarriedOverGPerM2 < NothingGPerM2 ? MoistureVerdict.WetsAndDries
        : MoistureVerdict.Accumulates;

    /// <summary>Runs the year.</summary>
    /// <param name="assembly">What is built.</param>
    /// <param name="basis">The system for its films and spaces.</param>
    /// <param name="year">Twelve months outdoors.</param>
    /// <param name="room">How the room is kept.</param>
    /// <param name="skyKelvins">Mean cooling of the outside by the sky [K], 0 to 12.</param>
    /// <exception cref="ArgumentException">Not exactly the months 1 to 12.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    public static MoistureYear Of(
        Assembly assembly, CalculationBasis basis, IReadOnlyList<OutdoorMonth> year,
        RoomAir room, double skyKelvins = 0)
    {
        ArgumentNullException.ThrowIfNull(assembly);
        ArgumentNullException.ThrowIfNull(year);
        Limits.Check(skyKelvins, 0, 12, "K", nameof(skyKelvins));
        var ordered = year.OrderBy(month => month.Month).ToArray();
        if (!ordered.Select(month => month.Month).SequenceEqual(Enumerable.Range(1, 12)))
            throw new ArgumentException("A year has the months 1 to 12, each once.", nameof(year));

        var states = Prepared(assembly, basis, ordered, room, skyKelvins);
        var condenses = states.Select(state => Condenses(state)).ToArray();
        var start = Enumerable.Range(0, 12)
            .Where(i => condenses[i] && !condenses[(i + 11) % 12])
            .DefaultIfEmpty(9)
            .First();
        var held = new double[states[0].Path.Sd.Length];
        var most = new double[held.Length];
        var months = new List<MoistureMonth>();
        for (var step = 0; step < 12; step++)
        {
            var state = states[(start + step) % 12];
            var before = held.Sum();
            Pass(state, held);
            for (var i = 0; i < held.Length; i++) most[i] = Math.Max(most[i], held[i]);
            months.Add(new MoistureMonth(
                state.Month.Month, state.Month.Mean, state.Room,
                state.RoomPa / Vapour.Saturation(state.Room),
                Math.Min(1, state.RoomPa / Vapour.Saturation(state.RoomFace)),
                (held.Sum() - before) * 1000, held.Sum() * 1000));
        }
        var wettest = Array.IndexOf(most, most.Max());
        var path = states[start].Path;
        return new MoistureYear
        {
            Months = months,
            Place = most[wettest] * 1000 < NothingGPerM2
                ? null
                : path.Points[path.ColdestPoint[wettest]].Name,
        };
    }

    private static MonthState[] Prepared(
        Assembly assembly, CalculationBasis basis, OutdoorMonth[] year, RoomAir room, double sky)
    {
        int[]? parts = null;
        return [.. year.Select(month =>
        {
            var at = room.At(month.Mean);
            var heat = AssemblySolver.Solve(assembly, new Conditions
            {
                Room = at,
                Outside = month.Mean.PlusKelvins(-sky),
                Season = Season.Winter,
                Basis = basis,
            });
            // The same cuts in every month, so that a place keeps its water.
            parts ??= VapourPath.PartsOf(heat.Profile);
            return new MonthState(
                month, at, heat.RoomFace, room.VapourPa(month),
                VapourPath.Through(heat.Profile, parts));
        })];
    }

    private static bool Condenses(MonthState state)
    {
        var dry = new bool[state.Path.Sd.Length];
        var solved = Diffusion.Solve(
            state.Path, state.RoomPa, state.Month.VapourPressurePa, dry);
        return solved.Points.Any(point => point.CondensationKgPerM2S > 0);
    }

    /// <summary>Moves the water held [kg/m² per station] through one month.</summary>
    private static void Pass(MonthState state, double[] held)
    {
        var left = Days[state.Month.Month - 1] * 86_400.0;
        // Each pass ends the month or dries at least one station, which cannot wet again in it.
        for (var pass = 0; left > 0 && pass <= 2 * held.Length; pass++)
        {
            var wet = held.Select(mass => mass > 0).ToArray();
            var solved = Diffusion.Solve(
                state.Path, state.RoomPa, state.Month.VapourPressurePa, wet);
            var rates = state.Path.ColdestPoint
                .Select(point => solved.Points[point].CondensationKgPerM2S)
                .ToArray();
            var step = left;
            for (var i = 0; i < held.Length; i++)
                if (rates[i] < 0 && held[i] > 0) step = Math.Min(step, held[i] / -rates[i]);
            for (var i = 0; i < held.Length; i++)
            {
                var next = held[i] + rates[i] * step;
                held[i] = next < 1e-12 ? 0 : next;
            }
            left -= step;
        }
    }

    private static readonly int[] Days = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

    private sealed record MonthState(
        OutdoorMonth Month, Temperature Room, Temperature RoomFace, double RoomPa,
        VapourPath Path);
}
