using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.Heat;

/// <summary>
/// Twelve solved months of an assembly: its temperatures, which no vapour changes. The same months
/// serve every moisture load that is tried on them.
/// </summary>
internal sealed class ThermalYear
{
    private static readonly int[] Days = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

    private readonly ThermalMonth[] months;

    private ThermalYear(ThermalMonth[] months) => this.months = months;

    public static ThermalYear Of(
        Assembly assembly, CalculationBasis basis, IReadOnlyList<OutdoorMonth> year, RoomAir room,
        double skyKelvins)
    {
        ArgumentNullException.ThrowIfNull(assembly);
        ArgumentNullException.ThrowIfNull(year);
        Limits.Check(skyKelvins, 0, 12, "K", nameof(skyKelvins));
        var ordered = year.OrderBy(month => month.Month).ToArray();
        if (!ordered.Select(month => month.Month).SequenceEqual(Enumerable.Range(1, 12)))
            throw new ArgumentException("A year has the months 1 to 12, each once.", nameof(year));
        int[]? parts = null;
        return new ThermalYear([.. ordered.Select(month =>
        {
            var heat = AssemblySolver.Solve(assembly, new Conditions
            {
                Room = room.At(month.Mean),
                Outside = month.Mean.PlusKelvins(-skyKelvins),
                Season = Season.Winter,
                Basis = basis,
            });
            // The same cuts in every month, so that a place keeps its water.
            parts ??= VapourPath.PartsOf(heat.Profile);
            return new ThermalMonth(
                month, heat.Conditions.Room, heat.RoomFace,
                VapourPath.Through(heat.Profile, parts));
        })]);
    }

    /// <summary>The year's water for a room as warm as the months were solved for.</summary>
    public MoistureYear Wetted(RoomAir room)
    {
        var condenses = months.Select(month => Condenses(month, room.VapourPa(month.Outdoors)))
            .ToArray();
        var start = Enumerable.Range(0, 12)
            .Where(i => condenses[i] && !condenses[(i + 11) % 12])
            .DefaultIfEmpty(9)
            .First();
        var held = new double[months[0].Path.Sd.Length];
        var most = new double[held.Length];
        var passed = new List<(ThermalMonth Month, double Change, double Held,
            List<VapourSpell> Spells)>();
        for (var step = 0; step < 12; step++)
        {
            var month = months[(start + step) % 12];
            var before = held.Sum();
            var through = Pass(month, room.VapourPa(month.Outdoors), held);
            for (var i = 0; i < held.Length; i++) most[i] = Math.Max(most[i], held[i]);
            passed.Add((month, held.Sum() - before, held.Sum(), through));
        }
        var wettest = Array.IndexOf(most, most.Max());
        var path = months[start].Path;
        return new MoistureYear
        {
            Months = [.. passed.Select(p => MonthOf(
                p.Month, room.VapourPa(p.Month.Outdoors), p.Change, p.Held, p.Spells))],
            Place = most[wettest] * 1000 < MoistureYear.NothingGPerM2
                ? null
                : path.Points[path.ColdestPoint[wettest]].Name,
        };
    }

    private static MoistureMonth MonthOf(
        ThermalMonth month, double roomPa, double change, double held,
        List<VapourSpell> spells) => new(
        month.Outdoors.Month, month.Outdoors.Mean, month.Room,
        roomPa / Vapour.Saturation(month.Room),
        Math.Min(1, roomPa / Vapour.Saturation(month.RoomFace)), change * 1000, held * 1000)
        {
            RoomPa = roomPa,
            OutdoorPa = month.Outdoors.VapourPressurePa,
            RoomFace = month.RoomFace,
            FromRoomGPerM2 = Grams(spells, spell => spell.In),
            ToOutdoorsGPerM2 = Grams(spells, spell => spell.Out),
            Spells = spells,
        };

    private static bool Condenses(ThermalMonth month, double roomPa)
    {
        var rates = Diffusion.Rates(
            month.Path,
            Diffusion.Pressures(
                month.Path, roomPa, month.Outdoors.VapourPressurePa,
                new bool[month.Path.Sd.Length]));
        return rates.Any(rate => rate > 0);
    }

    private static double Grams(List<VapourSpell> spells, Func<VapourSpell, VapourLeg> of) =>
        spells.Sum(spell => of(spell).Flow * spell.Days) * DiffusionState.GramsPerDay;

    /// <summary>Moves the water held [kg/m² per station] through one month.</summary>
    private static List<VapourSpell> Pass(ThermalMonth month, double roomPa, double[] held)
    {
        var left = Days[month.Outdoors.Month - 1] * 86_400.0;
        var spells = new List<VapourSpell>();
        // Each pass ends the month or dries at least one station, which cannot wet again in it.
        for (var pass = 0; left > 0 && pass <= 2 * held.Length; pass++)
        {
            var wet = Array.ConvertAll(held, mass => mass > 0);
            var pressures = Diffusion.Pressures(
                month.Path, roomPa, month.Outdoors.VapourPressurePa, wet);
            var rates = Diffusion.Rates(month.Path, pressures);
            var step = left;
            for (var i = 0; i < held.Length; i++)
                if (rates[i] < 0 && held[i] > 0) step = Math.Min(step, held[i] / -rates[i]);
            for (var i = 0; i < held.Length; i++)
            {
                var next = held[i] + rates[i] * step;
                held[i] = next < 1e-12 ? 0 : next;
            }
            if (Diffusion.FirstLeg(month.Path, pressures) is { } first
                && Diffusion.LastLeg(month.Path, pressures) is { } last)
                spells.Add(new(step / 86_400, first, last));
            left -= step;
        }
        return spells;
    }

    private sealed record ThermalMonth(
        OutdoorMonth Outdoors, Temperature Room, Temperature RoomFace, VapourPath Path);
}
