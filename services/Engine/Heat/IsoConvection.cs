namespace PostFrame.Engine.Heat;

/// <summary>Convection in an unventilated air space by ISO 6946:2017 Annex D.</summary>
internal static class IsoConvection
{
    /// <summary>
    /// ha [W/(m²·K)] = max(0.025/d, the convective term of the direction). Thickness 1 to 300 mm,
    /// difference 0 to 120 K.
    /// Source: ISO 6946:2017 Table D.1 (Annex B of 2007), from memory; reproduces all 24 printed
    /// values of its Table 8.
    /// </summary>
    /// <remarks>
    /// The standard takes the first term up to 5 K and the second above. With its rounded
    /// coefficients the two meet at 4.7 K (down) to 5.02 K (sideways), which would leave a step of
    /// up to 1.3 % at 5 K and a hair more insulation could raise U: the larger is taken (own).
    /// </remarks>
    public static double Coefficient(HeatFlow flow, double thicknessMm, double differenceKelvins)
    {
        Limits.Check(thicknessMm, 1, 300, "mm (ISO 6946)", nameof(thicknessMm));
        var d = thicknessMm / 1000;
        var convective = flow switch
        {
            HeatFlow.Horizontal => Math.Max(1.25, 0.73 * Math.Cbrt(differenceKelvins)),
            HeatFlow.Up or HeatFlow.Up45 => Math.Max(1.95, 1.14 * Math.Cbrt(differenceKelvins)),
            HeatFlow.Down or HeatFlow.Down45 =>
                Math.Max(0.12, 0.09 * Math.Pow(differenceKelvins, 0.187)) * Math.Pow(d, -0.44),
            _ => throw new ArgumentOutOfRangeException(nameof(flow), flow, "Unknown direction."),
        };
        return Math.Max(0.025 / d, convective);
    }
}
