namespace PostFrame.Engine.Heat;

/// <summary>The working of a solved assembly, from films to heat flow.</summary>
public static class AssemblyWorking
{
    private const string R = "m²·K/W";
    private const string AshraeFilms = "ASHRAE HoF 2021 (SI) ch. 26 Table 10";
    private const string IsoFilms = "ISO 6946:2017 Table 7 and Annex C";

    /// <summary>Every step, in the order they are computed.</summary>
    public static IReadOnlyList<WorkingStep> Of(Assembly assembly, AssemblyHeat heat)
    {
        ArgumentNullException.ThrowIfNull(assembly);
        ArgumentNullException.ThrowIfNull(heat);
        return
        [
            .. Films(assembly, heat),
            .. heat.AirSpaces.SelectMany(space => Space(space, heat)),
            .. assembly.Layers.Where(layer => layer.AtFraming is not null).Select(Bridge),
            .. Totals(assembly, heat),
            .. Flow(heat),
        ];
    }

    private static IEnumerable<WorkingStep> Films(Assembly assembly, AssemblyHeat heat)
    {
        var iso = heat.Conditions.Basis == CalculationBasis.Iso6946;
        var source = iso ? IsoFilms : AshraeFilms;
        yield return new(
            $"room film, heat {Words(heat.Direction)}", "Rsi(ε, direction)",
            [new("ε", assembly.RoomEmittance, "")],
            heat.Profile[0].ToNext.TotalSi, R, source, "R");
        yield return new(
            "outside film", iso ? "Rse" : "1/h", [],
            heat.Profile[^2].ToNext.TotalSi, R, source, "R");
    }

    private static IEnumerable<WorkingStep> Space(SolvedAirSpace solved, AssemblyHeat heat)
    {
        var iso = heat.Conditions.Basis == CalculationBasis.Iso6946;
        var space = solved.Space;
        var name = solved.Name;
        yield return new(
            $"{name}: effective emittance", "E = 1/(1/ε₁ + 1/ε₂ − 1)",
            [new("ε₁", space.InnerEmittance, ""), new("ε₂", space.OuterEmittance, "")],
            space.EffectiveEmittance, "", "ASHRAE HoF 2021 ch. 26 Table 3 note e", "R");
        yield return new(
            $"{name}: convection", iso ? "ha by ISO 6946 Annex D" : "hc by Nu(Ra) through Table 3",
            [
                new("d", space.ThicknessMm, "mm"),
                new("t_m", solved.Mean.TotalCelsius, "°C"),
                new("Δt", solved.DifferenceKelvins, "K"),
            ],
            solved.Heat.ConvectiveWPerM2K, "W/(m²·K)",
            iso
                ? "ISO 6946:2017 Table D.1"
                : "ASHRAE HoF 2021 (SI) ch. 26 Table 3, coefficients fitted to it"
                    + (solved.Heat.Extrapolated ? "; outside its printed conditions" : ""),
            iso ? "M✓" : "C");
        yield return new(
            $"{name}: radiation", iso ? "hr = E·4σT³" : "hr = E·0.227·((t_m + 273)/100)³",
            [
                new("E", space.EffectiveEmittance, ""),
                new("t_m", solved.Mean.TotalCelsius, "°C"),
            ],
            solved.Heat.RadiativeWPerM2K, "W/(m²·K)",
            iso ? "ISO 6946:2017 Annex D" : "ASHRAE HoF 2021 (SI) ch. 26 Table 3 note a", "R");
        yield return new(
            $"{name}: resistance", "R = 1/(hc + hr)",
            [
                new("hc", solved.Heat.ConvectiveWPerM2K, "W/(m²·K)"),
                new("hr", solved.Heat.RadiativeWPerM2K, "W/(m²·K)"),
            ],
            solved.Heat.R.TotalSi, R,
            "found by iteration: the space has its own share of the difference", "C");
    }

    private static WorkingStep Bridge(Layer layer)
    {
        var solid = layer.AtFraming!;
        var isWood = solid.ConductivityWPerMK is > 0.05;
        return new(
            $"{layer.Name}: at the framing",
            solid.ThicknessMm is null ? "R as given" : "R = d/λ",
            solid is { ThicknessMm: { } d, ConductivityWPerMK: { } conductivity }
                ? [new("d", d, "mm"), new("λ", conductivity, "W/(m·K)")]
                : [],
            solid.R.TotalSi, R,
            isWood
                ? "ASHRAE HoF 2021 ch. 26 Table 1, wood"
                : "product squeezed under the cladding, common practice, no source",
            isWood ? "R" : "A");
    }

    private static IEnumerable<WorkingStep> Totals(Assembly assembly, AssemblyHeat heat)
    {
        yield return new(
            "section between the members", "R_clear = Σ R",
            [.. heat.Profile.SkipLast(1).Select(node =>
                new WorkingInput(node.Name, node.ToNext.TotalSi, R))],
            heat.ClearField.TotalSi, R, "resistances in series", "C");
        if (assembly.FramingFractions.Count > 0)
        {
            var fractions = assembly.FramingFractions
                .Select((fraction, i) => new WorkingInput($"f{i + 1}", fraction, "")).ToArray();
            yield return new(
                "upper limit, parallel path", "R′ = 1/Σ(f/R_section)", fractions,
                heat.UpperLimit.TotalSi, R,
                "ASHRAE HoF 2021 ch. 27; ISO 6946:2017 clause 6.7.2.2", "R");
            yield return new(
                "lower limit, isothermal planes", "R″ = Σ 1/Σ(f/R_layer)", fractions,
                heat.LowerLimit.TotalSi, R,
                "ASHRAE HoF 2021 ch. 27; ISO 6946:2017 clause 6.7.2.3", "R");
        }
        yield return new(
            $"assembly, {Words(heat.Method)}",
            heat.Capped
                ? "R = R_clear: framing in the room is no insulation"
                : Formula(heat.Method),
            [
                new("R′", heat.UpperLimit.TotalSi, R),
                new("R″", heat.LowerLimit.TotalSi, R),
                new("R_clear", heat.ClearField.TotalSi, R),
            ],
            heat.R.TotalSi, R, Engine.Heat.Films.TitleOf(heat.Conditions.Basis), "R");
        yield return new(
            "U-factor", "U = 1/R", [new("R", heat.R.TotalSi, R)], heat.U.TotalSi, "W/(m²·K)",
            "definition", "C");
    }

    private static IEnumerable<WorkingStep> Flow(AssemblyHeat heat)
    {
        var conditions = heat.Conditions;
        yield return new(
            "heat flow, outwards positive", "q = U·(t_room − t_out)",
            [
                new("U", heat.U.TotalSi, "W/(m²·K)"),
                new("t_room", conditions.Room.TotalCelsius, "°C"),
                new("t_out", conditions.Outside.TotalCelsius, "°C"),
            ],
            heat.FluxWPerM2, "W/m²", "definition", "C");
        yield return new(
            "room face between the members", "t = t_room − q_clear·Rsi",
            [
                new("t_room", conditions.Room.TotalCelsius, "°C"),
                new("Rsi", heat.Profile[0].ToNext.TotalSi, R),
                new("R_clear", heat.ClearField.TotalSi, R),
            ],
            heat.RoomFace.TotalCelsius, "°C", "resistances in series", "C");
    }

    private static string Formula(BridgeMethod method) => method switch
    {
        BridgeMethod.ParallelPath => "R = R′",
        BridgeMethod.IsothermalPlanes => "R = R″",
        _ => "R = (R′ + R″)/2",
    };

    /// <summary>The method in words.</summary>
    public static string Words(BridgeMethod method) => method switch
    {
        BridgeMethod.ParallelPath => "parallel path",
        BridgeMethod.IsothermalPlanes => "isothermal planes",
        _ => "mean of upper and lower limit",
    };

    /// <summary>The direction in words.</summary>
    public static string Words(HeatFlow flow) => flow switch
    {
        HeatFlow.Up => "up",
        HeatFlow.Up45 => "up at 45°",
        HeatFlow.Horizontal => "sideways",
        HeatFlow.Down45 => "down at 45°",
        _ => "down",
    };
}
