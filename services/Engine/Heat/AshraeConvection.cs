namespace PostFrame.Engine.Heat;

/// <summary>
/// Convection in a plane air space as the ASHRAE table implies it. One coefficient hc per
/// thickness, direction, mean temperature and difference reproduces the table's five emittances
/// within its rounding; here those coefficients are the data.
/// </summary>
/// <remarks>
/// Between and beyond the printed conditions hc follows Nu(Ra): written as Nu = hc·d/k against the
/// Rayleigh number, the printed values of one direction fall on one curve (own derivation; each
/// set left out and told from the rest comes back within 3.5 % of R, all but one within 3.3 %; the
/// two larger differences told from the two smaller alone within 6.5 %: tests do so).
/// </remarks>
internal static class AshraeConvection
{
    /// <summary>Mean temperature [°C] and difference [K] of the four printed conditions.</summary>
    internal static readonly (double Mean, double Difference)[] Conditions =
        [(32.2, 5.6), (10.0, 5.6), (10.0, 16.7), (-17.8, 11.1)];

    /// <summary>
    /// hc [W/(m²·K)] per direction and thickness [mm], one per condition above. Fitted to
    /// ASHRAE HoF 2021 (SI) ch. 26 Table 3 (a public copy), ± 0.0065 m²·K/W.
    /// </summary>
    internal static readonly (HeatFlow Flow, double ThicknessMm, double[] Hc)[] Printed =
    [
        (HeatFlow.Up, 13, [2.484, 2.522, 3.324, 3.166]),
        (HeatFlow.Up, 20, [2.257, 2.332, 3.159, 2.987]),
        (HeatFlow.Up, 40, [2.039, 2.124, 2.872, 2.726]),
        (HeatFlow.Up, 90, [1.814, 1.870, 2.590, 2.413]),
        (HeatFlow.Up, 143, [1.696, 1.756, 2.393, 2.252]),
        (HeatFlow.Up45, 20, [1.728, 1.809, 2.720, 2.555]),
        (HeatFlow.Up45, 40, [1.759, 1.809, 2.500, 2.359]),
        (HeatFlow.Up45, 90, [1.607, 1.654, 2.371, 2.236]),
        (HeatFlow.Horizontal, 13, [2.107, 1.978, 2.058, 1.902]),
        (HeatFlow.Horizontal, 20, [1.431, 1.391, 1.798, 1.698]),
        (HeatFlow.Horizontal, 40, [1.235, 1.344, 2.058, 1.935]),
        (HeatFlow.Horizontal, 90, [1.343, 1.404, 1.978, 1.857]),
        (HeatFlow.Horizontal, 143, [1.323, 1.371, 1.861, 1.728]),
        (HeatFlow.Down45, 20, [1.417, 1.331, 1.512, 1.407]),
        (HeatFlow.Down45, 40, [0.929, 0.960, 1.429, 1.366]),
        (HeatFlow.Down45, 90, [0.987, 1.046, 1.456, 1.378]),
        (HeatFlow.Down, 13, [2.102, 1.978, 1.978, 1.822]),
        (HeatFlow.Down, 20, [1.417, 1.326, 1.366, 1.240]),
        (HeatFlow.Down, 40, [0.738, 0.708, 0.754, 0.695]),
        (HeatFlow.Down, 90, [0.371, 0.356, 0.439, 0.408]),
        (HeatFlow.Down, 143, [0.292, 0.293, 0.380, 0.356]),
    ];

    private static readonly Dictionary<HeatFlow, NusseltCurve[]> Curves = Printed
        .GroupBy(row => row.Flow)
        .ToDictionary(
            group => group.Key,
            group => group.Select(r => NusseltCurve.Through(r.ThicknessMm, Knots(r))).ToArray());

    private static readonly Dictionary<HeatFlow, NusseltCurve> Pooled = Curves.ToDictionary(
        pair => pair.Key,
        pair => NusseltCurve.Through(0, pair.Value.SelectMany(curve => curve.Knots)));

    /// <summary>
    /// True where the table prints nothing near: outside −45.6…32.2 °C or 5.6…16.7 K, or a
    /// thickness beyond the printed ones of the direction (13 to 143 mm; 20 to 90 at 45°).
    /// </summary>
    public static bool Extrapolates(
        HeatFlow flow, double thicknessMm, double meanCelsius, double differenceKelvins) =>
        meanCelsius is < -46 or > 33 || differenceKelvins is < 5 or > 17
        || thicknessMm < 0.95 * Curves[flow][0].ThicknessMm
        || thicknessMm > 1.05 * Curves[flow][^1].ThicknessMm;

    /// <summary>
    /// hc [W/(m²·K)]; thickness 12.5 to 150 mm. Log-log interpolation in thickness.
    /// </summary>
    public static double Coefficient(
        HeatFlow flow, double thicknessMm, double meanCelsius, double differenceKelvins) =>
        At(flow, thicknessMm, meanCelsius, differenceKelvins).Hc;

    /// <summary>The same with the one or two printed thicknesses it is told from.</summary>
    public static ConvectionFound At(
        HeatFlow flow, double thicknessMm, double meanCelsius, double differenceKelvins)
    {
        Limits.Check(
            thicknessMm, 12.5, 150, "mm (ASHRAE table; 1 to 300 by ISO 6946)",
            nameof(thicknessMm));
        var curves = Curves[flow];
        var last = curves.Length - 1;
        ConvectionPoint Point(NusseltCurve curve, double d)
        {
            var rayleigh = Air.Rayleigh(d, meanCelsius, Math.Max(differenceKelvins, 0.01));
            var read = curve.Read(rayleigh, Pooled[flow]);
            return new(
                d, rayleigh, read, read.Nu * Air.Conductivity(meanCelsius) / (d / 1000));
        }
        ConvectionFound Alone(NusseltCurve curve)
        {
            var point = Point(curve, thicknessMm);
            return new([point], point.Hc);
        }
        if (thicknessMm <= curves[0].ThicknessMm) return Alone(curves[0]);
        if (thicknessMm >= curves[last].ThicknessMm) return Alone(curves[last]);
        var upper = Array.FindIndex(curves, curve => curve.ThicknessMm >= thicknessMm);
        var (thin, thick) = (
            Point(curves[upper - 1], curves[upper - 1].ThicknessMm),
            Point(curves[upper], curves[upper].ThicknessMm));
        var share = Math.Log(thicknessMm / thin.ThicknessMm)
            / Math.Log(thick.ThicknessMm / thin.ThicknessMm);
        return new([thin, thick], Math.Pow(thin.Hc, 1 - share) * Math.Pow(thick.Hc, share));
    }

    /// <summary>The printed sets of a row as points of its curve.</summary>
    internal static IEnumerable<(double LnRa, double LnNu)> Knots(
        (HeatFlow Flow, double ThicknessMm, double[] Hc) row) =>
        Conditions.Zip(row.Hc, (at, hc) => (
            Math.Log(Air.Rayleigh(row.ThicknessMm, at.Mean, at.Difference)),
            Math.Log(hc * row.ThicknessMm / 1000 / Air.Conductivity(at.Mean))));
}

/// <summary>Convection at one thickness.</summary>
/// <param name="ThicknessMm">A printed one, or beyond the printed ones the own [mm].</param>
/// <param name="Rayleigh">The Rayleigh number there.</param>
/// <param name="Read">The Nusselt number and what it is told from.</param>
/// <param name="Hc">Convection there [W/(m²·K)].</param>
internal sealed record ConvectionPoint(
    double ThicknessMm, double Rayleigh, NusseltReading Read, double Hc)
{
    public double Nusselt => Read.Nu;
}

/// <summary>Convection of a space [W/(m²·K)] and the thicknesses it is told from.</summary>
internal sealed record ConvectionFound(IReadOnlyList<ConvectionPoint> Points, double Hc);
