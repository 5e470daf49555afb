using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.Heat;

/// <summary>The working of a solved assembly, from films to heat flow.</summary>
public static class AssemblyWorking
{
    private const string R = "m²·K/W";
    private const string HeatTransfer = "W/(m²·K)";

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
            .. FilmWorking.Of(assembly, heat, isCut: layers.Count < assembly.Layers.Count),
            .. AirSpaceWorking.Of(assembly, heat),
            .. layers.Select(layer => (layer.Name, (layer.Clear as Slab.Solid)?.From))
                .Where(x => x.From is not null).Select(x => Squeezed(x.Name, x.From!)),
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

    private static WorkingStep Squeezed(string name, Slab.SqueezedFrom from) => new(
        $"{name}: squeezed into its cavity", "R = R_nominal·(d_left/d)^0.5",
        [
            new("R_nominal", from.R.TotalSi, R), new("d", from.ThicknessMm, "mm"),
            new("d_left", from.LeftMm, "mm"),
        ],
        CompressedBatt.R(from.R, from.ThicknessMm, from.LeftMm).TotalSi, R,
        "fitted to a published trade chart: within R 1.2 for light batts, up to R 2.5 too high for "
            + "dense ones", "C");

    private static WorkingStep Bridge(Layer layer)
    {
        var solid = layer.AtFraming!;
        var isWood = solid.ConductivityWPerMK is > 0.05;
        return new(
            $"{layer.Name}: at the framing",
            solid.ThicknessMm is null
                ? "R as given: no thicker than what is left of it squeezed" : "R = d/λ",
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
            heat.R.TotalSi, R, Films.TitleOf(heat.Conditions.Basis), "R")
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
                new("hr", Films.RadiantInside(conditions.Basis, 1), HeatTransfer),
                new("Rsi", heat.Profile[0].ToNext.TotalSi, R),
            ],
            100 * heat.RoomFaceRadiantShare, "%",
            conditions.Basis == CalculationBasis.Ashrae
                ? FilmWorking.AshraeSource + ", slope of its conductances over ε"
                : FilmWorking.IsoSource + ", 4σT³ at 20 °C",
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
    public static string Words(FlowDirection flow) => flow.SlopeDegrees switch
    {
        >= 89.95 => "sideways",
        0 => PlainWords(flow),
        var slope => FormattableString.Invariant($"{PlainWords(flow)} at {slope:0.#}°"),
    };

    private static string PlainWords(FlowDirection flow) =>
        flow.Flatter is HeatFlow.Down or HeatFlow.Down45 ? "down" : "up";
}
