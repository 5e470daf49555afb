using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.Heat;

/// <summary>
/// Surface (film) resistances. A surface has a film or bounds an air space, never both.
/// </summary>
public static class Films
{
    /// <summary>Mean radiant coefficient of a black body at 20 °C [W/(m²·K)], 4·σ·T³.</summary>
    private const double BlackBodyAt20C = 4 * 5.670374419e-8 * 293.15 * 293.15 * 293.15;

    /// <summary>The basis named for print.</summary>
    public static string TitleOf(CalculationBasis basis) => basis switch
    {
        CalculationBasis.Ashrae => "ASHRAE Handbook—Fundamentals 2021, ch. 26 and 27",
        CalculationBasis.Iso6946 => "ISO 6946:2017",
        _ => throw new ArgumentOutOfRangeException(nameof(basis), basis, "Unknown basis."),
    };

    /// <summary>
    /// The direction of heat flow through a plane of this slope [° from horizontal, 0 to 90].
    /// ASHRAE tabulates 0°, 45° and 90°: the nearest is taken (own rule). ISO 6946 counts a flow
    /// within 30° of the horizontal as horizontal: slopes above 60°.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Slope outside 0 to 90°.</exception>
    public static HeatFlow FlowThrough(
        CalculationBasis basis, double slopeDegrees, Season season)
    {
        Limits.Check(slopeDegrees, 0, 90, "°", nameof(slopeDegrees));
        var winter = season == Season.Winter;
        var iso = basis == CalculationBasis.Iso6946;
        if (slopeDegrees > (iso ? 60 : 67.5)) return HeatFlow.Horizontal;
        if (slopeDegrees > 22.5 && !iso) return winter ? HeatFlow.Up45 : HeatFlow.Down45;
        return winter ? HeatFlow.Up : HeatFlow.Down;
    }

    /// <summary>
    /// Film of the room face. ASHRAE: from the printed conductances at ε 0.90, 0.20 and 0.05,
    /// linear in ε between them (exact at the printed values). ISO: the printed value for ordinary
    /// surfaces (ε ≥ 0.8), else 1/(hc + ε·4σT³) at 20 °C.
    /// Source: ASHRAE HoF 2021 (SI) ch. 26 Table 10; ISO 6946:2017 Table 7 and Annex C,
    /// hc from ISO 13789:2017 Table 8.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Emittance outside 0.01 to 1.</exception>
    public static ThermalResistance Inside(
        CalculationBasis basis, HeatFlow flow, double emittance)
    {
        Limits.Check(emittance, 0.01, 1, "", nameof(emittance));
        return ThermalResistance.FromSi(basis == CalculationBasis.Ashrae
            ? 1 / AshraeConductance(flow, emittance)
            : IsoInside(flow, emittance));
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

    private static double AshraeConductance(HeatFlow flow, double emittance)
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
        return emittance >= 0.2
            ? at20 + (at90 - at20) * (emittance - 0.2) / 0.7
            : at05 + (at20 - at05) * (emittance - 0.05) / 0.15;
    }

    private static double IsoInside(HeatFlow flow, double emittance)
    {
        var (printed, convective) = flow switch
        {
            HeatFlow.Up or HeatFlow.Up45 => (0.10, 5.0),
            HeatFlow.Horizontal => (0.13, 2.5),
            HeatFlow.Down or HeatFlow.Down45 => (0.17, 0.7),
            _ => throw new ArgumentOutOfRangeException(nameof(flow), flow, "Unknown direction."),
        };
        return emittance >= 0.8 ? printed : 1 / (convective + emittance * BlackBodyAt20C);
    }
}
