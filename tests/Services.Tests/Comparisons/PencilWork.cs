using static System.Math;

namespace PostFrame.ServicesTests.Comparisons;

/// <summary>
/// The formulas of the working, written down a second time. ISO 13788 saturation and dew point,
/// films, sections and money are each worked from the inputs a step shows and nothing else.
/// </summary>
internal static class PencilWork
{
    /// <summary>What comes from a table, a station, the caller, or an iteration.</summary>
    private static readonly string[] LookedUp =
    [
        "as given", "as listed", "as typed", "as tabulated", "as tried", "as claimed, within what",
        "of the station", "assumed", "monthly mean of station", "a wall is upright",
        "d as stated", "a foil has no body", "nothing heats it", "R as given",
    ];

    public static bool IsLookedUp(string formula) =>
        LookedUp.Any(known => formula.StartsWith(known, StringComparison.Ordinal));

    public static double Of(string formula, (string Symbol, double Value)[] inputs)
    {
        double At(string symbol) => inputs.First(i => i.Symbol == symbol).Value;
        double[] Each(string symbol) =>
            [.. inputs.Where(i => i.Symbol == symbol).Select(i => i.Value)];
        double Sum() => inputs.Sum(i => i.Value);
        double Ratio(string above, string below) => At(above) / At(below);
        return formula switch
        {
            "Rsi = 1/h" or "Rse = 1/h" => 1 / At("h"),
            "E = 1/(1/ε₁ + 1/ε₂ − 1)" => 1 / (1 / At("ε₁") + 1 / At("ε₂") - 1),
            "hr = E·4σT³" => At("E") * 4 * 5.670374e-8 * Pow(At("t_m") + 273.15, 3),
            "hr = E·0.227·((t_m + 273)/100)³" => At("E") * 0.227 * Pow((At("t_m") + 273) / 100, 3),
            "R = 1/(hc + hr)" => 1 / (At("hc") + At("hr")),
            "100·hr/(hc + hr)" => 100 * At("hr") / (At("hc") + At("hr")),
            "R = d/λ" => At("d") / 1000 / At("λ"),
            "R_clear = Σ R" or "R = Σ R" => Sum(),
            "R″ = Σ R_plane, a bridged plane being 1/Σ(f/R)" => Sum(),
            "R′ = 1/Σ(f/R_section)" =>
                1 / Each("f").Zip(Each("R_section"), (f, r) => f / r).Sum(),
            "R = R′" => At("R′"),
            "R = (R′ + R″)/2" => (At("R′") + At("R″")) / 2,
            "R = R′ − R″/4, as R′ is above 1.5·R″" => At("R′") - At("R″") / 4,
            "100·ε·hr·Rsi" => 100 * At("ε") * At("hr") * At("Rsi"),
            "R = R_clear: framing in the room is no insulation" => At("R_clear"),
            "R = (1 − s)·R_closed + s·R_open" =>
                (1 - At("s")) * At("R_closed") + At("s") * At("R_open"),
            "U = 1/R" => 1 / At("R"),
            "R = 1/U" => 1 / At("U"),
            "q = U·(t_room − t_out)" => At("U") * (At("t_room") - At("t_out")),
            "t = t_room − (t_room − t_out)·Rsi/R_clear" =>
                At("t_room") - (At("t_room") - At("t_out")) * Ratio("Rsi", "R_clear"),
            "R = r·d" => At("r") * At("d"),
            "R = R_sheet·max(1, d/d_double)" =>
                At("R_sheet") * Max(1, Ratio("d", "d_double")),
            "100·(1 − least of E/E_painted, ε/ε_painted)" => 100 * (1 - Each("E")
                .Select(e => e / At("E_painted")).Append(Ratio("ε", "ε_painted")).Min()),
            "100·(1 − R_painted/R_bright)" => 100 * (1 - Ratio("R_painted", "R_bright")),
            "t = t_room − (t_room − t_out)·ΣR/R_clear" =>
                At("t_room") - (At("t_room") - At("t_out")) * Ratio("ΣR", "R_clear"),
            "t = t_out" => At("t_out"),
            "t = max(t_out, t_heated)" => Max(At("t_out"), At("t_heated")),
            "θ = atan(rise/run)" => Atan(At("rise/run")) * 180 / PI,
            "f = w/s" => Ratio("w", "s"),
            "t = t_out + (α/ho)·I − ε·ΔR/ho" =>
                At("t_out") + At("α/ho") * At("I") - At("ε·ΔR/ho"),
            "great circle from the county's centre, to the km" => Round(GreatCircleKm(
                At("county, north"), At("county, east"), At("station, north"),
                At("station, east"))),
            _ => OfAir(formula, At) ?? OfMoistureOrMoney(formula, At, inputs),
        };
    }

    /// <summary>Films, and air spaces between the printed conditions.</summary>
    private static double? OfAir(string formula, Func<string, double> at) => formula switch
    {
        "Rsi = 1/(hc + ε·4σT³), T = 293.15 K" or "Rse = 1/(hc + ε·4σT³), T = 293.15 K" =>
            1 / (at("hc") + at("ε") * 4 * 5.670374e-8 * Pow(293.15, 3)),
        "h = h₁ + (h₂ − h₁)·(ε − ε₁)/(ε₂ − ε₁)" => Line(
            at("ε"), at("ε₁"), at("h₁"), at("ε₂"), at("h₂")),
        "h = (1 − s)·h_flatter + s·h_steeper, s = (slope − flatter)/45" => Line(
            at("slope"), at("flatter"), at("h_flatter"), at("flatter") + 45, at("h_steeper")),
        "t_m = t_room − (t_room − t_out)·(R_before + R_space/2)/ΣR" => at("t_room")
            - (at("t_room") - at("t_out")) * (at("R_before") + at("R_space") / 2) / at("ΣR"),
        "Δt = |t_room − t_out|·R_space/ΣR" =>
            Abs(at("t_room") - at("t_out")) * at("R_space") / at("ΣR"),
        "Ra = 9.81·Δt·d³/(T·ν·a)" =>
            9.81 * at("Δt") * Pow(at("d"), 3) / (at("T") * at("ν") * at("a")),
        "Nu = max(1, Nu₁·(Nu₂/Nu₁)^s), s = ln(Ra/Ra₁)/ln(Ra₂/Ra₁)" => Max(1, Exp(Line(
            Log(at("Ra")), Log(at("Ra₁")), Log(at("Nu₁")), Log(at("Ra₂")), Log(at("Nu₂"))))),
        "Nu = max(1, Nu₁·c)" => Max(1, at("Nu₁") * at("c")),
        "hc = Nu·k/d" => at("Nu") * at("k") / at("d"),
        "hc = h₁^(1 − s)·h₂^s, s = ln(d/d₁)/ln(d₂/d₁)" => Exp(Line(
            Log(at("d")), Log(at("d₁")), Log(at("h₁")), Log(at("d₂")), Log(at("h₂")))),
        "ha = max(0.025/d, 1.25, 0.73·Δt^(1/3))" =>
            Max(0.025 / at("d"), Max(1.25, 0.73 * Cbrt(at("Δt")))),
        "ha = max(0.025/d, 1.95, 1.14·Δt^(1/3))" =>
            Max(0.025 / at("d"), Max(1.95, 1.14 * Cbrt(at("Δt")))),
        "ha = max(0.025/d, 0.12·d^(−0.44), 0.09·Δt^0.187·d^(−0.44))" => Max(
            0.025 / at("d"),
            Pow(at("d"), -0.44) * Max(0.12, 0.09 * Pow(at("Δt"), 0.187))),
        "R = R₁·d/d₁" => at("R₁") * at("d") / at("d₁"),
        "R = R₁ + (R₂ − R₁)·(d − d₁)/(d₂ − d₁)" =>
            Line(at("d"), at("d₁"), at("R₁"), at("d₂"), at("R₂")),
        "R = R_nominal·(d_left/d)^0.5" => at("R_nominal") * Sqrt(at("d_left") / at("d")),
        _ => null,
    };

    /// <summary>The straight line through two points.</summary>
    private static double Line(double x, double x1, double y1, double x2, double y2) =>
        y1 + (y2 - y1) * (x - x1) / (x2 - x1);

    private static double OfMoistureOrMoney(
        string formula, Func<string, double> at, (string Symbol, double Value)[] inputs) =>
        formula switch
        {
            "p_room = p_out + (psat − p_out)·Sd/(Sd − sd), over psat(t_room)" => 100 * Clamp(
                (at("p_out") + (at("psat") - at("p_out")) * at("Sd") / (at("Sd") - at("sd")))
                    / at("psat(t_room)"),
                0, 1),
            "HDD = (straight between the bases at t_balance)/1.8" =>
                Straight(at("t_balance"), inputs) / 1.8,
            "g = 86 400 000·Σ δ₀·(p₁ − p₂)/(sd₂ − sd₁)·n" => Passed(inputs),
            "p = p_air" => at("p_air"),
            "p = psat" => at("psat"),
            "p = min(p_air, psat)" => Min(at("p_air"), at("psat")),
            "p = p₁ + (p₂ − p₁)·(sd − sd₁)/(sd₂ − sd₁)" =>
                Line(at("sd"), at("sd₁"), at("p₁"), at("sd₂"), at("p₂")),
            "psat = 610.5·exp(21.875·t/(265.5 + t))" or "psat = 610.5·exp(17.269·t/(237.3 + t))" =>
                Saturation(at("t")),
            "φ = 100·min(1, (p_out + s·Δp·clamp(1 − t_out/20, 0, 1))/psat(t_room))" =>
                100 * Min(1, (at("p_out") + at("s") * at("Δp")
                    * Clamp(1 - at("t_out") / 20, 0, 1)) / at("psat(t_room)")),
            "φ = 100·min(1, psat(t_face)/psat(t_room))" =>
                100 * Min(1, Saturation(at("t_face")) / Saturation(at("t_room"))),
            "φ = 100·min(1, p_room/psat(t_face))" =>
                100 * Min(1, at("p_room") / Saturation(at("t_face"))),
            "φ = 100·p_room/psat(t_room)" => 100 * at("p_room") / Saturation(at("t_room")),
            "φ = 100·p/psat(t_room)" => 100 * at("p") / at("psat(t_room)"),
            "θ = 265.5·L/(21.875 − L), L = ln(p/610.5)" =>
                265.5 * Log(at("p") / 610.5) / (21.875 - Log(at("p") / 610.5)),
            "θ = 237.3·L/(17.269 − L), L = ln(p/610.5)" =>
                237.3 * Log(at("p") / 610.5) / (17.269 - Log(at("p") / 610.5)),
            "p = min(p_out + (Δp_use + Δp_burner)·clamp(1 − t_out/20, 0, 1), psat(t_room))" => Min(
                at("p_out") + (at("Δp_use") + at("Δp_burner"))
                    * Clamp(1 - at("t_out") / 20, 0, 1),
                at("psat(t_room)")),
            "Δm = g_in − g_out" or "g = g_in − g_out" => at("g_in") - at("g_out"),
            "m = m_before + Δm" => at("m_before") + at("Δm"),
            "max(m)" => inputs.Max(i => i.Value),
            "m at the end of the last month" => at("m"),
            "G = w·P·3600/10⁶/1000" => at("w") * at("P") * 3600 / 1e6 / 1000,
            "Δp = min(4000, G·Rv·T/(n·V))" =>
                Min(4000, at("G") * at("Rv") * at("T") / (at("n") * at("V"))),
            "ΔU = U_limit − U" => at("U_limit") - at("U"),
            "price/area" => at("price") / at("area"),
            "price·d" => at("price") * at("d"),
            "price/covers" => at("price") / at("covers"),
            "price·width/coverage" => at("price") * at("width") / at("coverage"),
            "Q = 24·U·A·HDD/1000" => 24 * at("U") * at("A") * at("HDD") / 1000,
            "Q = 24·H·HDD/1000" => 24 * at("H") * at("HDD") / 1000,
            "fuel = Q/(η·HV)" => at("Q") / (at("η") * at("HV")),
            "cost = fuel·price" => at("fuel") * at("price"),
            "H = Σ U·A + 1.2/3.6·V̇ + 1.4·P" =>
                inputs.Where(i => i.Symbol.StartsWith("U·A", StringComparison.Ordinal))
                    .Sum(i => i.Value)
                + 1.2 / 3.6 * at("V̇") + 1.4 * at("P"),
            "Φ = H·(t_room − t_out)" => at("H") * (at("t_room") - at("t_out")),
            "(price − price_other)·A" => (at("price") - at("price_other")) * at("A"),
            "(fuel_other − fuel)·price" => (at("fuel_other") - at("fuel")) * at("price"),
            "years = extra/saving" => at("extra") / at("saving"),
            _ => throw new InvalidOperationException($"No pencil work is known for: {formula}"),
        };

    /// <summary>Vapour [g/m²] of all spells: p₁, p₂, sd₁, sd₂, n each.</summary>
    private static double Passed((string Symbol, double Value)[] inputs) => inputs.Skip(1).Chunk(5)
        .Sum(spell => 86_400_000 * inputs[0].Value * (spell[0].Value - spell[1].Value)
            / (spell[3].Value - spell[2].Value) * spell[4].Value);

    private static double GreatCircleKm(double lat1, double lon1, double lat2, double lon2)
    {
        double Half(double from, double to) => Pow(Sin((to - from) * PI / 360), 2);
        return 2 * 6371 * Asin(Sqrt(Half(lat1, lat2)
            + Cos(lat1 * PI / 180) * Cos(lat2 * PI / 180) * Half(lon1, lon2)));
    }

    /// <summary>Degree days between the two bases around a temperature.</summary>
    private static double Straight(double at, (string Symbol, double Value)[] inputs)
    {
        (double Base, double Days)[] known = [.. inputs
            .Where(i => i.Symbol.StartsWith("HDD", StringComparison.Ordinal))
            .Select(i => (double.Parse(i.Symbol[3..],
                System.Globalization.CultureInfo.InvariantCulture), i.Value))
            .OrderBy(x => x.Item1)];
        var (low, high) = known.Zip(known.Skip(1)).First(pair => at <= pair.Second.Base);
        return low.Days + (high.Days - low.Days) * (at - low.Base) / (high.Base - low.Base);
    }

    /// <summary>ISO 13788:2012 equations E.7 and E.8, as thermal.md 7.1 has them.</summary>
    private static double Saturation(double celsius) => celsius >= 0
        ? 610.5 * Exp(17.269 * celsius / (237.3 + celsius))
        : 610.5 * Exp(21.875 * celsius / (265.5 + celsius));
}
