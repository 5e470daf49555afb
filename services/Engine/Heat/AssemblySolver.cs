using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.Heat;

/// <summary>Solves assemblies: air spaces, framing, ventilation, temperatures.</summary>
public static class AssemblySolver
{
    /// <summary>
    /// The combined method is for an upper limit up to so many times the lower. Source: ISO
    /// 6946:2017 clause 6.7.2.1, from memory.
    /// </summary>
    internal const double MostCombinedRatio = 1.5;

    private const int MostIterations = 400;

    /// <summary>Half way to what the space should have: no overshoot.</summary>
    private const double Pull = 0.5;

    /// <summary>
    /// Resistance, heat flow and temperatures of an assembly.
    /// Air spaces are iterated in the clear section until each has the mean temperature and the
    /// difference its own share of the resistance gives it; the same values serve every section.
    /// A slightly ventilated space (openings 500 to 1500 mm²) takes its share between the
    /// unventilated and the well-ventilated result; at 1500 the space and all outside it are
    /// dropped and the still-air film taken instead.
    /// Source: ISO 6946:2017 clauses 6.7 (bridging) and 6.9 (ventilation, from memory);
    /// ASHRAE HoF 2021 ch. 27 (parallel path, isothermal planes).
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    /// <exception cref="ArgumentException">A layer names a framing that is not given.</exception>
    public static AssemblyHeat Solve(Assembly assembly, Conditions conditions)
    {
        Check(assembly, conditions);
        var vented = VentedAt(assembly);
        if (vented < 0) return SolveClosed(assembly, conditions, stillOutside: false);

        var openings = ((Slab.Air)assembly.Layers[vented].Clear).Space.OpeningsMm2;
        var inner = assembly with { Layers = [.. assembly.Layers.Take(vented)] };
        var open = SolveClosed(inner, conditions, stillOutside: true);
        if (openings >= 1500) return open;

        var closed = Solve(Closed(assembly, vented), conditions);
        var share = (openings - 500) / 1000;
        return Mixed(closed, open, share, vented);
    }

    private static AssemblyHeat SolveClosed(
        Assembly assembly, Conditions conditions, bool stillOutside)
    {
        var flow = FlowThrough(assembly.SlopeDegrees, conditions);
        var outside = stillOutside
            ? Films.Inside(conditions.Basis, flow, 0.9)
            : Films.Outside(conditions.Basis, conditions.Season);
        var film = Films.Inside(conditions.Basis, flow, assembly.RoomEmittance);
        var spaces = Iterate(assembly, conditions, flow, film.TotalSi, outside.TotalSi);

        var sections = new Sections(assembly, conditions.Basis, flow, outside.TotalSi, spaces);
        var (upper, lower) = (sections.UpperLimit(), sections.LowerLimit());
        var method = assembly.Method
            ?? (conditions.Basis == CalculationBasis.Ashrae
                ? BridgeMethod.ParallelPath
                : BridgeMethod.Combined);
        var taken = method switch
        {
            BridgeMethod.ParallelPath => upper,
            BridgeMethod.IsothermalPlanes => lower,
            _ => Combined(upper, lower),
        };
        var clear = sections.Clear().Sum();
        // Wood standing in the room would otherwise lend a thin sheet more than its clear field.
        var r = Math.Min(taken, clear);
        return new AssemblyHeat
        {
            R = ThermalResistance.FromSi(r),
            ClearField = ThermalResistance.FromSi(clear),
            UpperLimit = ThermalResistance.FromSi(upper),
            LowerLimit = ThermalResistance.FromSi(lower),
            Method = method,
            Capped = taken > clear * (1 + 1e-12),
            Direction = flow,
            FluxWPerM2 = conditions.Room.KelvinsAbove(conditions.Outside) / r,
            Profile = Profile(assembly, conditions, sections.Clear()),
            AirSpaces = spaces,
            Sections = sections.All(),
            Planes = sections.Planes(),
            Conditions = conditions,
            RoomEmittance = assembly.RoomEmittance,
        };
    }

    /// <summary>
    /// The mean of both limits. Where they lie too far apart for it, as with blanket squeezed at
    /// its framing, what it takes off the upper limit is held at what it takes off at the bound, a
    /// quarter of the lower limit: no step, so that more insulation never raises U (own).
    /// </summary>
    private static double Combined(double upper, double lower) =>
        upper - Math.Min((upper - lower) / 2, (MostCombinedRatio - 1) / 2 * lower);

    private static List<SolvedAirSpace> Iterate(
        Assembly assembly, Conditions conditions, FlowDirection flow, double film, double outside)
    {
        var airs = assembly.Layers
            .Select((layer, index) => (layer.Name, index, Air: layer.Clear as Slab.Air))
            .Where(x => x.Air is not null)
            .ToList();
        var span = conditions.Room.KelvinsAbove(conditions.Outside);
        var middle = (conditions.Room.TotalCelsius + conditions.Outside.TotalCelsius) / 2;
        var state = airs.Select(x => Solved(
            x.Name, x.Air!.Space, conditions.Basis, flow, middle,
            Math.Abs(span) / (airs.Count + 1))).ToList();
        for (var pass = 0; airs.Count > 0; pass++)
        {
            if (pass == MostIterations)
                throw new InvalidOperationException("The air spaces did not settle.");
            var r = Resistances(assembly, film, outside, state);
            var total = r.Sum();
            var moved = 0.0;
            for (var i = 0; i < airs.Count; i++)
            {
                var before = r.Take(airs[i].index + 1).Sum();
                var own = r[airs[i].index + 1];
                var mean = conditions.Room.TotalCelsius - span * (before + own / 2) / total;
                var difference = Math.Abs(span) * own / total;
                var byMean = Pull * (mean - state[i].Mean.TotalCelsius);
                var byDifference = Pull * (difference - state[i].DifferenceKelvins);
                state[i] = Solved(
                    airs[i].Name, airs[i].Air!.Space, conditions.Basis, flow,
                    state[i].Mean.TotalCelsius + byMean,
                    state[i].DifferenceKelvins + byDifference);
                moved = Math.Max(moved, Math.Max(Math.Abs(byMean), Math.Abs(byDifference)));
            }
            if (moved < 1e-7) break;
        }
        return state;
    }

    private static SolvedAirSpace Solved(
        string name, AirSpace space, CalculationBasis basis, FlowDirection flow, double mean,
        double difference)
    {
        var at = Temperature.FromCelsius(mean);
        return new SolvedAirSpace(name, space, at, difference, AirSpaceHeat.Of(
            basis, flow, space.ThicknessMm, space.EffectiveEmittance, at, difference));
    }

    private static double[] Resistances(
        Assembly assembly, double film, double outside, List<SolvedAirSpace> spaces)
    {
        var next = 0;
        return
        [
            film,
            .. assembly.Layers.Select(layer => layer.Clear is Slab.Solid solid
                ? solid.R.TotalSi
                : spaces[next++].Heat.R.TotalSi),
            outside,
        ];
    }

    private static List<ProfileNode> Profile(
        Assembly assembly, Conditions conditions, double[] resistances)
    {
        var names = (string[])
            ["room film", .. assembly.Layers.Select(layer => layer.Name), "outside film"];
        var flux = conditions.Room.KelvinsAbove(conditions.Outside) / resistances.Sum();
        var nodes = new List<ProfileNode>();
        var at = conditions.Room;
        for (var i = 0; i < resistances.Length; i++)
        {
            var sd = i == 0 || i == resistances.Length - 1 ? 0 : assembly.Layers[i - 1].VapourSdM;
            nodes.Add(new(names[i], at, ThermalResistance.FromSi(resistances[i]), sd));
            at = at.PlusKelvins(-flux * resistances[i]);
        }
        nodes.Add(new("outdoors", at, ThermalResistance.FromSi(0), 0));
        return nodes;
    }

    /// <summary>
    /// The way heat flows: by which side is warmer, and where neither is by the season.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Slope outside 0 to 90°.</exception>
    public static FlowDirection FlowThrough(double slopeDegrees, Conditions conditions)
    {
        ArgumentNullException.ThrowIfNull(conditions);
        var difference = conditions.Room.KelvinsAbove(conditions.Outside);
        var season = difference > 0 || (difference == 0 && conditions.Season == Season.Winter)
            ? Season.Winter
            : Season.Summer;
        return Films.FlowThrough(conditions.Basis, slopeDegrees, season);
    }

    private static int VentedAt(Assembly assembly)
    {
        for (var i = 0; i < assembly.Layers.Count; i++)
            if (assembly.Layers[i].Clear is Slab.Air { Space.OpeningsMm2: > 500 }) return i;
        return -1;
    }

    private static Assembly Closed(Assembly assembly, int index)
    {
        var layer = assembly.Layers[index];
        var space = ((Slab.Air)layer.Clear).Space with { OpeningsMm2 = 0 };
        Layer[] layers = [.. assembly.Layers];
        layers[index] = layer with { Clear = new Slab.Air(space) };
        return assembly with { Layers = layers };
    }

    /// <summary>
    /// Between closed and open: every resistance is mixed; the profile keeps the closed layers,
    /// those from the space outwards scaled so that they end at the mixed total.
    /// </summary>
    private static AssemblyHeat Mixed(
        AssemblyHeat closed, AssemblyHeat open, double share, int vented)
    {
        ThermalResistance Mix(Func<AssemblyHeat, ThermalResistance> of) => ThermalResistance.FromSi(
            (1 - share) * of(closed).TotalSi + share * of(open).TotalSi);
        var (r, clear) = (Mix(heat => heat.R), Mix(heat => heat.ClearField));
        var conditions = closed.Conditions;
        var span = conditions.Room.KelvinsAbove(conditions.Outside);
        var inner = closed.Profile.Take(vented + 1).Sum(node => node.ToNext.TotalSi);
        var outer = closed.ClearField.TotalSi - inner;
        var scale = Math.Max(0, clear.TotalSi - inner) / outer;
        var at = conditions.Room;
        var nodes = closed.Profile.Select((node, i) =>
        {
            var to = node.ToNext.TotalSi * (i > vented ? scale : 1);
            var mixed = node with { Temperature = at, ToNext = ThermalResistance.FromSi(to) };
            at = at.PlusKelvins(-span * to / clear.TotalSi);
            return mixed;
        }).ToList();
        return closed with
        {
            R = r,
            ClearField = clear,
            UpperLimit = Mix(heat => heat.UpperLimit),
            LowerLimit = Mix(heat => heat.LowerLimit),
            Capped = closed.Capped || open.Capped,
            FluxWPerM2 = span / r.TotalSi,
            Profile = nodes,
            Mix = new VentedMix(share, closed, open),
        };
    }

    private static void Check(Assembly assembly, Conditions conditions)
    {
        ArgumentNullException.ThrowIfNull(assembly);
        ArgumentNullException.ThrowIfNull(conditions);
        Limits.Check(conditions.Room.TotalCelsius, -40, 60, "°C", "room temperature");
        Limits.Check(conditions.Outside.TotalCelsius, -65, 130, "°C", "outside temperature");
        foreach (var fraction in assembly.FramingFractions)
            Limits.Check(fraction, 0, 0.5, "(share of area)", "framing fraction");
        Limits.Check(assembly.FramingFractions.Count, 0, 3, "framings", "framing count");
        foreach (var layer in assembly.Layers)
        {
            if (!(layer.VapourSdM >= 0))
                throw new ArgumentOutOfRangeException(
                    nameof(assembly), layer.VapourSdM, $"{layer.Name}: sd must be at least 0 m.");
            if (layer.AtFraming is not null
                && layer.FramingIndex >= assembly.FramingFractions.Count)
                throw new ArgumentException($"{layer.Name} names a framing that is not given.");
        }
    }
}
