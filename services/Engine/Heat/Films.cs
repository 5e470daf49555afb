using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.Heat;

/// <summary>
/// Surface (film) resistances. A surface has a film or bounds an air space, never both.
/// </summary>
public static class Films
{
    /// <summary>Mean radiant coefficient of a black body at 20 °C [W/(m²·K)], 4·σ·T³.</summary>
    private const double BlackBodyAt20C = 4 * 5.670374419e-8 * 293.15 * 293.15 * 293.15;

    /// <summary>From this emittance on ISO 6946 counts a face as ordinary.</summary>
    internal const double IsoOrdinaryEmittance = 0.8;

    /// <summary>The basis named for print.</summary>
    public static string TitleOf(CalculationBasis basis) => basis switch
    {
        CalculationBasis.Ashrae => "ASHRAE Handbook—Fundamentals 2021, ch. 26 and 27",
        CalculationBasis.Iso6946 => "ISO 6946:2017",
        _ => throw new ArgumentOutOfRangeException(nameof(basis), basis, "Unknown basis."),
    };

    /// <summary>
    /// The direction of heat flow through a plane of this slope [° from horizontal, 0 to 90].
    /// ASHRAE tabulates 0°, 45° and 90°: between them it lies between (own). ISO 6946 counts a flow
    /// within 30° of the horizontal as horizontal, slopes above 60°, and has a step there.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Slope outside 0 to 90°.</exception>
    public static FlowDirection FlowThrough(
        CalculationBasis basis, double slopeDegrees, Season season)
    {
        Limits.Check(slopeDegrees, 0, 90, "°", nameof(slopeDegrees));
        var (flat, steep) = season == Season.Winter
            ? (HeatFlow.Up, HeatFlow.Up45)
            : (HeatFlow.Down, HeatFlow.Down45);
        if (basis == CalculationBasis.Iso6946)
            return slopeDegrees > 60 ? HeatFlow.Horizontal : flat;
        var share = slopeDegrees % 45 / 45;
        return slopeDegrees switch
        {
            >= 90 => HeatFlow.Horizontal,
            >= 45 => FlowDirection.Of(steep, HeatFlow.Horizontal, share),
            _ => FlowDirection.Of(flat, steep, share),
        };
    }

    /// <summary>
    /// Film of the room face. ASHRAE: from the printed conductances at ε 0.90, 0.20 and 0.05,
    /// linear in ε between them (exact at the printed values), straight over the slope between the
    /// printed directions (own). ISO: the printed value for ordinary
    /// surfaces (ε ≥ 0.8), else 1/(hc + ε·4σT³) at 20 °C.
    /// Source: ASHRAE HoF 2021 (SI) ch. 26 Table 10; ISO 6946:2017 Table 7 and Annex C,
    /// hc from ISO 13789:2017 Table 8.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Emittance outside 0.01 to 1.</exception>
    public static ThermalResistance Inside(
        CalculationBasis basis, FlowDirection flow, double emittance)
    {
        Limits.Check(emittance, 0.01, 1, "", nameof(emittance));
        return ThermalResistance.FromSi(basis == CalculationBasis.Ashrae
            ? 1 / flow.Between(printed => AshraeConductance(printed, emittance))
            : IsoInside(flow.Nearest, emittance));
    }

    /// <summary>
    /// Radiation's part in the film of the room face [W/(m²·K)]: ε·hr. ASHRAE: hr is the slope of
    /// its own printed conductances over ε, 5.81; ISO: 4σT³ at 20 °C, 5.71.
    /// </summary>
    public static double RadiantInside(CalculationBasis basis, double emittance) =>
        emittance * (basis == CalculationBasis.Ashrae
            ? (AshraeConductance(HeatFlow.Up, 0.9) - AshraeConductance(HeatFlow.Up, 0.05)) / 0.85
            : BlackBodyAt20C);

    /// <summary>
    /// Film of the outdoor face: ASHRAE 34.0 W/(m²·K) in winter (6.7 m/s), 22.7 in summer
    /// (3.4 m/s); ISO 0.04 m²·K/W in both.
    /// Source: ASHRAE HoF 2021 (SI) ch. 26 Table 10; ISO 6946:2017 Table 7.
    /// </summary>
    public static ThermalResistance Outside(CalculationBasis basis, Season season) =>
        ThermalResistance.FromSi(basis == CalculationBasis.Iso6946
            ? 0.04
            : 1 / (season == Season.Winter ? 34.0 : 22.7));

    /// <summary>
    /// ISO outside film for a wind [m/s, 0 to 40] and emittance: 1/(4 + 4v + ε·4σT³) at 0 °C.
    /// Source: ISO 6946:2017 Annex C (from memory).
    /// </summary>
    public static ThermalResistance OutsideInWind(double metresPerSecond, double emittance)
    {
        Limits.Check(metresPerSecond, 0, 40, "m/s", nameof(metresPerSecond));
        Limits.Check(emittance, 0.01, 1, "", nameof(emittance));
        var radiative = BlackBodyAt20C * Math.Pow(273.15 / 293.15, 3);
        return ThermalResistance.FromSi(
            1 / (4 + 4 * metresPerSecond + emittance * radiative));
    }

    /// <summary>The printed conductance [W/(m²·K)], straight in ε between the printed ε.</summary>
    internal static double AshraeConductance(HeatFlow flow, double emittance)
    {
        var (low, high) = AshraeAround(flow, emittance);
        return low.H + (high.H - low.H) * (emittance - low.Emittance)
            / (high.Emittance - low.Emittance);
    }

    /// <summary>The two printed conductances [W/(m²·K)] an emittance is told from.</summary>
    internal static ((double Emittance, double H) Low, (double Emittance, double H) High)
        AshraeAround(HeatFlow flow, double emittance)
    {
        var (at90, at20, at05) = flow switch
        {
            HeatFlow.Up => (9.26, 5.17, 4.32),
            HeatFlow.Up45 => (9.09, 5.00, 4.15),
            HeatFlow.Horizontal => (8.29, 4.20, 3.35),
            HeatFlow.Down45 => (7.50, 3.41, 2.56),
            HeatFlow.Down => (6.13, 2.10, 1.25),
            _ => throw new ArgumentOutOfRangeException(nameof(flow), flow, "Unknown direction."),
        };
        return emittance >= 0.2 ? ((0.2, at20), (0.9, at90)) : ((0.05, at05), (0.2, at20));
    }

    private static double IsoInside(HeatFlow flow, double emittance) =>
        emittance < IsoOrdinaryEmittance
            ? 1 / (IsoConvection(flow) + emittance * BlackBodyAt20C)
            : flow switch
            {
                HeatFlow.Up or HeatFlow.Up45 => 0.10,
                HeatFlow.Horizontal => 0.13,
                _ => 0.17,
            };

    /// <summary>hci of the room face [W/(m²·K)]. Source: ISO 13789:2017 Table 8.</summary>
    internal static double IsoConvection(HeatFlow flow) => flow switch
    {
        HeatFlow.Up or HeatFlow.Up45 => 5.0,
        HeatFlow.Horizontal => 2.5,
        HeatFlow.Down or HeatFlow.Down45 => 0.7,
        _ => throw new ArgumentOutOfRangeException(nameof(flow), flow, "Unknown direction."),
    };
}
