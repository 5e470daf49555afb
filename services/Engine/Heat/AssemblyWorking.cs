using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.Heat;

/// <summary>The working of a solved assembly, from films to heat flow.</summary>
public static class AssemblyWorking
{
    private const string R = "m²·K/W";
    private const string HeatTransfer = "W/(m²·K)";
    private const string AshraeFilms = "ASHRAE HoF 2021 (SI) ch. 26 Table 10";
    private const string IsoFilms = "ISO 6946:2017 Table 7 and Annex C";

    /// <summary>Every step, in the order they are computed.</summary>
    public static IReadOnlyList<WorkingStep> Of(Assembly assembly, AssemblyHeat heat)
    {
        ArgumentNullException.ThrowIfNull(assembly);
        ArgumentNullException.ThrowIfNull(heat);
        return heat.Mix is { } mix
            ? [.. Mixed(assembly, heat, mix), .. Flow(heat)]
            : [.. Steps(assembly, heat), .. Flow(heat)];
    }

    private static IEnumerable<WorkingStep> Steps(Assembly assembly, AssemblyHeat heat)
    {
        // What lies outside a well-ventilated space is dropped, and so are its layers.
        var layers = assembly.Layers.Take(heat.Profile.Count - 3).ToList();
        return
        [
            .. Films(assembly, heat, isCut: layers.Count < assembly.Layers.Count),
            .. heat.AirSpaces.SelectMany((space, i) => Space(space, heat, $"AirSpaces/{i}/")),
            .. layers.Where(layer => layer.AtFraming is not null).Select(Bridge),
            .. Totals(assembly, heat),
        ];
    }

    /// <summary>
    /// A slightly ventilated space: what it is closed and what it is open, and the share of each.
    /// </summary>
    private static IEnumerable<WorkingStep> Mixed(
        Assembly assembly, AssemblyHeat heat, VentedMix mix)
    {
        const string Openings = "ISO 6946:2017 clause 6.9.3";
        IEnumerable<WorkingStep> Side(string name, AssemblyHeat side, bool keepsSpaces) =>
            (side.Mix is { } inner ? Mixed(assembly, side, inner) : Steps(assembly, side))
            .Select(step => step with
            {
                Quantity = $"{name}: {step.Quantity}",
                Figure = keepsSpaces && (step.Figure?.Contains('/') ?? false) ? step.Figure : null,
            });
        WorkingStep Of(string quantity, string figure, Func<AssemblyHeat, ThermalResistance> of) =>
            new(
                quantity, "R = (1 − s)·R_closed + s·R_open",
                [
                    new("s", mix.Share, ""),
                    new("R_closed", of(mix.Closed).TotalSi, R),
                    new("R_open", of(mix.Open).TotalSi, R),
                ],
                of(heat).TotalSi, R, Openings, "M")
            { Figure = figure };
        return
        [
            .. Side("space closed", mix.Closed, keepsSpaces: true),
            .. Side("space open", mix.Open, keepsSpaces: false),
            Of("section between the members, slightly ventilated", "ClearField",
                side => side.ClearField),
            Of("assembly, slightly ventilated", "R", side => side.R),
            UFactor(heat),
        ];
    }

    private static IEnumerable<WorkingStep> Films(
        Assembly assembly, AssemblyHeat heat, bool isCut)
    {
        var iso = heat.Conditions.Basis == CalculationBasis.Iso6946;
        var source = iso ? IsoFilms : AshraeFilms;
        var (inside, outside) = (heat.Profile[0].ToNext.TotalSi, heat.Profile[^2].ToNext.TotalSi);
        yield return new(
            $"room film, heat {Words(heat.Direction)}", "Rsi = 1/h, h of the table for ε",
            [new("ε", assembly.RoomEmittance, ""), new("h", 1 / inside, HeatTransfer)],
            inside, R, source, "R");
        yield return new(
            isCut ? "outside film, still air of the ventilated space" : "outside film",
            "Rse = 1/h", [new("h", 1 / outside, HeatTransfer)], outside, R,
            isCut ? "ISO 6946:2017 clause 6.9.4, from memory" : source, isCut ? "M" : "R");
    }

    private static IEnumerable<WorkingStep> Space(
        SolvedAirSpace solved, AssemblyHeat heat, string figure)
    {
        var iso = heat.Conditions.Basis == CalculationBasis.Iso6946;
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
        yield return Found("mean temperature", solved.Mean.TotalCelsius, "°C", "Mean");
        yield return Found("difference across it", solved.DifferenceKelvins, "K", "Difference");
        yield return new(
            $"{name}: convection", iso ? "ha by ISO 6946 Annex D" : "hc by Nu(Ra) through Table 3",
            [
                new("d", space.ThicknessMm, "mm"),
                new("t_m", solved.Mean.TotalCelsius, "°C"),
                new("Δt", solved.DifferenceKelvins, "K"),
            ],
            solved.Heat.ConvectiveWPerM2K, HeatTransfer,
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
            solved.Heat.RadiativeWPerM2K, HeatTransfer,
            iso ? "ISO 6946:2017 Annex D" : "ASHRAE HoF 2021 (SI) ch. 26 Table 3 note a", "R");
        yield return new(
            $"{name}: resistance", "R = 1/(hc + hr)",
            [
                new("hc", solved.Heat.ConvectiveWPerM2K, HeatTransfer),
                new("hr", solved.Heat.RadiativeWPerM2K, HeatTransfer),
            ],
            solved.Heat.R.TotalSi, R,
            "found by iteration: the space has its own share of the difference", "C")
        { Figure = figure + "R" };
        yield return new(
            $"{name}: share of the heat that is radiant", "100·hr/(hc + hr)",
            [
                new("hc", solved.Heat.ConvectiveWPerM2K, HeatTransfer),
                new("hr", solved.Heat.RadiativeWPerM2K, HeatTransfer),
            ],
            100 * solved.Heat.RadiantShare, "%", "definition", "C")
        { Figure = figure + "RadiantShare" };

        WorkingStep Found(string what, double value, string unit, string of) => new(
            $"{name}: {what}", "found by iteration: Δt_space = Δt·R_space/ΣR", [], value, unit,
            "own share of the whole difference; ASHRAE HoF 2021 ch. 26 Table 3 notes", "C")
        { Figure = figure + of };
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
            heat.ClearField.TotalSi, R, "resistances in series", "C")
        { Figure = "ClearField" };
        if (assembly.FramingFractions.Count > 0)
        {
            foreach (var (section, i) in heat.Sections.Skip(1).Select((s, i) => (s, i + 1)))
                yield return new(
                    heat.Sections.Count == 2 ? "section at the framing" : $"section {i}",
                    "R = Σ R", section.Parts, section.R.TotalSi, R, "resistances in series", "C");
            yield return new(
                "upper limit, parallel path", "R′ = 1/Σ(f/R_section)",
                [.. heat.Sections.SelectMany(section => (WorkingInput[])
                [
                    new("f", section.Share, ""), new("R_section", section.R.TotalSi, R),
                ])],
                heat.UpperLimit.TotalSi, R,
                "ASHRAE HoF 2021 ch. 27; ISO 6946:2017 clause 6.7.2.2", "R");
            yield return new(
                "lower limit, isothermal planes",
                "R″ = Σ R_plane, a bridged plane being 1/Σ(f/R)", heat.Planes,
                heat.LowerLimit.TotalSi, R,
                "ASHRAE HoF 2021 ch. 27; ISO 6946:2017 clause 6.7.2.3", "R");
        }
        yield return new(
            $"assembly, {Words(heat)}",
            heat.Capped
                ? "R = R_clear: framing in the room is no insulation"
                : Formula(heat),
            [
                new("R′", heat.UpperLimit.TotalSi, R),
                new("R″", heat.LowerLimit.TotalSi, R),
                new("R_clear", heat.ClearField.TotalSi, R),
            ],
            heat.R.TotalSi, R, Engine.Heat.Films.TitleOf(heat.Conditions.Basis), "R")
        { Figure = "R" };
        yield return UFactor(heat);
    }

    private static WorkingStep UFactor(AssemblyHeat heat) => new(
        "U-factor", "U = 1/R", [new("R", heat.R.TotalSi, R)], heat.U.TotalSi, HeatTransfer,
        "definition", "C")
    { Figure = "U" };

    private static IEnumerable<WorkingStep> Flow(AssemblyHeat heat)
    {
        var conditions = heat.Conditions;
        yield return new(
            "heat flow, outwards positive", "q = U·(t_room − t_out)",
            [
                new("U", heat.U.TotalSi, HeatTransfer),
                new("t_room", conditions.Room.TotalCelsius, "°C"),
                new("t_out", conditions.Outside.TotalCelsius, "°C"),
            ],
            heat.FluxWPerM2, "W/m²", "definition", "C")
        { Figure = "Flux" };
        yield return new(
            "room face between the members", "t = t_room − (t_room − t_out)·Rsi/R_clear",
            [
                new("t_room", conditions.Room.TotalCelsius, "°C"),
                new("t_out", conditions.Outside.TotalCelsius, "°C"),
                new("Rsi", heat.Profile[0].ToNext.TotalSi, R),
                new("R_clear", heat.ClearField.TotalSi, R),
            ],
            heat.RoomFace.TotalCelsius, "°C", "resistances in series", "C")
        { Figure = "RoomFace" };
        yield return new(
            "share of the heat at the room face that is radiant", "100·ε·hr·Rsi",
            [
                new("ε", heat.RoomEmittance, ""),
                new("hr", Engine.Heat.Films.RadiantInside(conditions.Basis, 1), HeatTransfer),
                new("Rsi", heat.Profile[0].ToNext.TotalSi, R),
            ],
            100 * heat.RoomFaceRadiantShare, "%",
            conditions.Basis == CalculationBasis.Ashrae
                ? AshraeFilms + ", slope of its conductances over ε"
                : IsoFilms + ", 4σT³ at 20 °C",
            "C")
        { Figure = "RoomFaceRadiantShare" };
    }

    private static string Formula(AssemblyHeat heat) => heat.Method switch
    {
        BridgeMethod.ParallelPath => "R = R′",
        BridgeMethod.IsothermalPlanes => "R = R″",
        _ when LimitsLieApart(heat) => "R = R′ − R″/4, as R′ is above 1.5·R″",
        _ => "R = (R′ + R″)/2",
    };

    private static bool LimitsLieApart(AssemblyHeat heat) => heat.UpperLimit.TotalSi
        > AssemblySolver.MostCombinedRatio * heat.LowerLimit.TotalSi * (1 + 1e-12);

    /// <summary>The method in words.</summary>
    public static string Words(AssemblyHeat heat)
    {
        ArgumentNullException.ThrowIfNull(heat);
        return heat.Method switch
        {
            BridgeMethod.ParallelPath => "parallel path",
            BridgeMethod.IsothermalPlanes => "isothermal planes",
            _ when LimitsLieApart(heat) => "upper limit less a quarter of the lower",
            _ => "mean of upper and lower limit",
        };
    }

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
