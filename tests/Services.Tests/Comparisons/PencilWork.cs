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
        "of the station", "assumed", "monthly mean of station", "great circle", "a wall is upright",
        "found by iteration", "hc by Nu(Ra)", "ha by ISO", "d as stated", "a foil has no body",
        "nothing heats it", "the largest share", "g_in = δ₀", "g_out = δ₀",
        "p straight over sd", "R as given", "nominal table at d",
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
            "Rsi = 1/h, h of the table for ε" or "Rse = 1/h" => 1 / At("h"),
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
            _ => OfMoistureOrMoney(formula, At, inputs),
        };
    }

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
            "psat(t)" => Saturation(at("t")),
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
