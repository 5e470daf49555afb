namespace PostFrame.Engine.Heat;

/// <summary>The working of the air spaces of a solved assembly.</summary>
internal static class AirSpaceWorking
{
    private const string R = "m²·K/W";
    private const string HeatTransfer = "W/(m²·K)";
    private const string Table = "ASHRAE HoF 2021 (SI) ch. 26 Table 3";
    private const string Share =
        "own share of the whole difference; " + Table + " notes; settled by iteration";

    /// <summary>Every space, from the room outwards.</summary>
    public static IEnumerable<WorkingStep> Of(Assembly assembly, AssemblyHeat heat)
    {
        var nodes = assembly.Layers.Select((layer, i) => (layer, node: i + 1))
            .Where(x => x.layer.Clear is Slab.Air).Select(x => x.node).ToList();
        return heat.AirSpaces.SelectMany(
            (space, i) => Space(space, heat, nodes[i], $"AirSpaces/{i}/"));
    }

    private static IEnumerable<WorkingStep> Space(
        SolvedAirSpace solved, AssemblyHeat heat, int node, string figure)
    {
        var space = solved.Space;
        var name = solved.Name;
        yield return new(
            $"{name}: effective emittance", "E = 1/(1/ε₁ + 1/ε₂ − 1)",
            [new("ε₁", space.InnerEmittance, ""), new("ε₂", space.OuterEmittance, "")],
            space.EffectiveEmittance, "", "ASHRAE HoF 2021 ch. 26 Table 3 note e", "R")
        { Figure = figure + "EffectiveEmittance" };
        yield return new(
            $"{name}: thickness", "d as stated", [], space.ThicknessMm, "mm", "the request", "G")
        { Figure = figure + "Thickness" };
        foreach (var step in Found(solved, heat, node, figure)) yield return step;
        foreach (var step in heat.Conditions.Basis == CalculationBasis.Iso6946
            ? Iso(solved, heat.Direction)
            : Ashrae(solved, heat.Direction))
            yield return step;
        yield return new(
            $"{name}: resistance", "R = 1/(hc + hr)", Coefficients(solved),
            solved.Heat.R.TotalSi, R, "conduction, convection and radiation side by side", "C")
        { Figure = figure + "R" };
        yield return new(
            $"{name}: share of the heat that is radiant", "100·hr/(hc + hr)",
            Coefficients(solved), 100 * solved.Heat.RadiantShare, "%", "definition", "C")
        { Figure = figure + "RadiantShare" };
    }

    /// <summary>What the space has of the whole, of the section between the members.</summary>
    private static IEnumerable<WorkingStep> Found(
        SolvedAirSpace solved, AssemblyHeat heat, int node, string figure)
    {
        var own = heat.Profile[node].ToNext.TotalSi;
        WorkingInput[] inputs =
        [
            new("t_room", heat.Conditions.Room.TotalCelsius, "°C"),
            new("t_out", heat.Conditions.Outside.TotalCelsius, "°C"),
            new("R_before", heat.Profile.Take(node).Sum(at => at.ToNext.TotalSi), R),
            new("R_space", own, R), new("ΣR", heat.ClearField.TotalSi, R),
        ];
        yield return new(
            $"{solved.Name}: mean temperature",
            "t_m = t_room − (t_room − t_out)·(R_before + R_space/2)/ΣR", inputs,
            solved.Mean.TotalCelsius, "°C", Share, "C")
        { Figure = figure + "Mean" };
        yield return new(
            $"{solved.Name}: difference across it", "Δt = |t_room − t_out|·R_space/ΣR", inputs,
            solved.DifferenceKelvins, "K", Share, "C")
        { Figure = figure + "Difference" };
    }

    private static IEnumerable<WorkingStep> Iso(SolvedAirSpace solved, FlowDirection flow)
    {
        var formula = flow.Nearest switch
        {
            HeatFlow.Horizontal => "ha = max(0.025/d, 1.25, 0.73·Δt^(1/3))",
            HeatFlow.Up => "ha = max(0.025/d, 1.95, 1.14·Δt^(1/3))",
            _ => "ha = max(0.025/d, 0.12·d^(−0.44), 0.09·Δt^0.187·d^(−0.44))",
        };
        yield return new(
            $"{solved.Name}: convection, heat {AssemblyWorking.Words(flow)}", formula,
            [
                new("d", solved.Space.ThicknessMm / 1000, "m"),
                new("Δt", solved.DifferenceKelvins, "K"),
            ],
            solved.Heat.ConvectiveWPerM2K, HeatTransfer,
            "ISO 6946:2017 Table D.1; the larger term (own), so that nothing steps at 5 K", "M✓");
        yield return new(
            $"{solved.Name}: radiation", "hr = E·4σT³", RadiationInputs(solved),
            solved.Heat.RadiativeWPerM2K, HeatTransfer, "ISO 6946:2017 Annex D", "R");
    }

    private static IEnumerable<WorkingStep> Ashrae(SolvedAirSpace solved, FlowDirection flow)
    {
        var (d, mean, difference) = (
            solved.Space.ThicknessMm, solved.Mean.TotalCelsius, solved.DifferenceKelvins);
        foreach (var printed in flow.Printed)
        {
            var words = $"{solved.Name}, heat {AssemblyWorking.Words(printed)}";
            var found = AshraeConvection.At(printed, d, mean, difference);
            foreach (var point in found.Points)
            {
                yield return Rayleigh(words, point, mean, difference);
                yield return Nusselt(words, point);
                yield return Coefficient(words, point, mean);
            }
            if (found.Points is [var thin, var thick])
                yield return new(
                    $"{words}: convection", "hc = h₁^(1 − s)·h₂^s, s = ln(d/d₁)/ln(d₂/d₁)",
                    [
                        new("d", d, "mm"),
                        new("d₁", thin.ThicknessMm, "mm"), new("h₁", thin.Hc, HeatTransfer),
                        new("d₂", thick.ThicknessMm, "mm"), new("h₂", thick.Hc, HeatTransfer),
                    ],
                    found.Hc, HeatTransfer,
                    "straight in logarithms between the printed thicknesses (own)", "D");
        }
        if (!flow.IsPrinted)
            yield return FilmWorking.Between(
                $"{solved.Name}: convection, heat {AssemblyWorking.Words(flow)}", flow,
                printed => AshraeConvection.Coefficient(printed, d, mean, difference), Table);
        yield return new(
            $"{solved.Name}: radiation", "hr = E·0.227·((t_m + 273)/100)³",
            RadiationInputs(solved), solved.Heat.RadiativeWPerM2K, HeatTransfer,
            Table + " note a", "R");
    }

    private static WorkingStep Rayleigh(
        string words, ConvectionPoint point, double mean, double difference) => new(
            FormattableString.Invariant($"{words}: Rayleigh number at {point.ThicknessMm:0.#} mm"),
            "Ra = 9.81·Δt·d³/(T·ν·a)",
            [
                new("Δt", difference, "K"), new("d", point.ThicknessMm / 1000, "m"),
                new("T", mean + 273.15, "K"), new("ν", Air.Viscosity(mean), "m²/s"),
                new("a", Air.Diffusivity(mean), "m²/s"),
            ],
            point.Rayleigh, "", "definition; air at t_m and 101 325 Pa, from memory", "M");

    private static WorkingStep Nusselt(string words, ConvectionPoint point)
    {
        var read = point.Read;
        return new(
            FormattableString.Invariant($"{words}: Nusselt number at {point.ThicknessMm:0.#} mm"),
            read.Beyond is null
                ? "Nu = max(1, Nu₁·(Nu₂/Nu₁)^s), s = ln(Ra/Ra₁)/ln(Ra₂/Ra₁)"
                : "Nu = max(1, Nu₁·c)",
            read.Beyond is { } c
                ? [new("Ra₁", read.Low.Ra, ""), new("Nu₁", read.Low.Nu, ""), new("c", c, "")]
                :
                [
                    new("Ra", point.Rayleigh, ""),
                    new("Ra₁", read.Low.Ra, ""), new("Nu₁", read.Low.Nu, ""),
                    new("Ra₂", read.High.Ra, ""), new("Nu₂", read.High.Nu, ""),
                ],
            point.Nusselt, "",
            read.Beyond is null
                ? Table + ", coefficients fitted to it; straight in logarithms (own)"
                : Table + ", beyond its printed conditions: Nu₁ at the last of them, c how the "
                    + "curve of all thicknesses goes on from Ra₁ to Ra (own)",
            "C");
    }

    private static WorkingStep Coefficient(string words, ConvectionPoint point, double mean) => new(
        FormattableString.Invariant($"{words}: convection at {point.ThicknessMm:0.#} mm"),
        "hc = Nu·k/d",
        [
            new("Nu", point.Nusselt, ""), new("k", Air.Conductivity(mean), "W/(m·K)"),
            new("d", point.ThicknessMm / 1000, "m"),
        ],
        point.Hc, HeatTransfer, "definition; k of air from memory", "M");

    private static WorkingInput[] Coefficients(SolvedAirSpace solved) =>
    [
        new("hc", solved.Heat.ConvectiveWPerM2K, HeatTransfer),
        new("hr", solved.Heat.RadiativeWPerM2K, HeatTransfer),
    ];

    private static WorkingInput[] RadiationInputs(SolvedAirSpace solved) =>
    [
        new("E", solved.Space.EffectiveEmittance, ""), new("t_m", solved.Mean.TotalCelsius, "°C"),
    ];
}
