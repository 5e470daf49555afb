using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.Heat;

/// <summary>The resistance a material reaches by itself, per inch of its thickness.</summary>
/// <param name="LowPerInch">The least usual R per inch [h·ft²·°F/Btu per in].</param>
/// <param name="HighPerInch">The most the material reaches.</param>
/// <param name="VapourFactor">Vapour resistance factor μ; a stated permeance replaces it.</param>
/// <param name="Mark">R read, M from memory.</param>
/// <param name="Source">Where it is from.</param>
public sealed record MaterialBand(
    double LowPerInch, double HighPerInch, double VapourFactor, string Mark, string Source)
{
    private const string Solids = "ASHRAE HoF 2021 ch. 26 Table 1";

    /// <summary>
    /// A bubble sheet of about 8 mm is R 1.0 to 1.1 by itself (two independent building-science
    /// articles), 1.2 in the trade; Natural Resources Canada models at most R 1.5 without a space.
    /// </summary>
    public const double BubbleSheetMost = 1.5;

    /// <summary>The value a bubble sheet of about 8 mm is rebuilt with [h·ft²·°F/Btu].</summary>
    public const double BubbleSheetUsual = 1.1;

    /// <summary>Thickness of a sheet of one layer [mm].</summary>
    public const double BubbleSheetMm = 8;

    /// <summary>
    /// Nominal R of blanket at its nominal recovered thickness [in]. Source: NAIMA 202-96 (Rev.
    /// 2000), from memory; all but R-16 seen in a trade table.
    /// </summary>
    private static readonly (double Inches, double R)[] BlanketNominal =
    [
        (2, 7), (2.75, 8), (3, 10), (3.5, 11), (4, 13), (5, 16), (6, 19), (8, 25), (9.5, 30),
    ];

    /// <summary>The band of a kind.</summary>
    public static MaterialBand Of(MaterialKind kind) => kind switch
    {
        MaterialKind.Blanket => new(2.9, 3.5, 1, "M",
            "NAIMA 202-96, R 7 in 2 in to R 30 in 9½ in; all but R-16 seen in a trade table"),
        MaterialKind.Batt => new(3.0, 4.3, 1, "R",
            "published chart, R-15 and R-21 in 3½ and 5½ in"),
        MaterialKind.ClosedCellFoam => new(5.0, 7.2, 60, "R", Solids + ", aged 180 days"),
        MaterialKind.OpenCellFoam => new(3.4, 3.9, 3, "R", Solids),
        MaterialKind.PolyisoBoard => new(5.8, 6.6, 60, "R", Solids + ", aged"),
        MaterialKind.XpsBoard => new(4.6, 5.0, 150, "M", "trade rating 5 per inch"),
        MaterialKind.EpsBoard => new(3.6, 4.4, 60, "M", "trade rating 3.6 to 4.4 per inch"),
        MaterialKind.Cellulose => new(3.2, 3.6, 2, "R", Solids),
        MaterialKind.BubbleSheet => new(3.2, 3.5, 1, "R",
            "R 1.0 to 1.1 for about 8 mm, two building-science articles"),
        MaterialKind.FoilSheet => new(0, 0, 1, "R", "no body, no resistance of its own"),
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Unknown material."),
    };

    /// <summary>
    /// The thickest a sheet of this kind is sold [mm], beyond which it is no longer one sheet;
    /// null where the material itself sets no bound. Common practice, no source.
    /// </summary>
    public static double? ThickestMm(MaterialKind kind) => kind switch
    {
        MaterialKind.BubbleSheet => 25,
        MaterialKind.FoilSheet => 3,
        _ => null,
    };

    /// <summary>
    /// The most a material of this thickness [mm] reaches; null where it hangs on a thickness that
    /// is not known. Blanket by its table, straight between the rows and by the first and the last
    /// row's R per inch beyond them.
    /// </summary>
    public static ThermalResistance? MostOf(MaterialKind kind, double? thicknessMm)
    {
        if (kind == MaterialKind.FoilSheet) return ThermalResistance.FromSi(0);
        if (kind == MaterialKind.BubbleSheet)
        {
            // Two layers of bubble stay within the public maximum; thicker sheets grow with it.
            var layers = Math.Max(1, (thicknessMm ?? 0) / (2 * BubbleSheetMm));
            return ThermalResistance.FromRValue(BubbleSheetMost * layers);
        }
        if (thicknessMm is not { } mm) return null;
        var inches = mm / 25.4;
        return ThermalResistance.FromRValue(kind == MaterialKind.Blanket
            ? BlanketR(inches)
            : Of(kind).HighPerInch * inches);
    }

    /// <summary>
    /// What a reflective sheet of this thickness [mm] is rebuilt with when nothing was claimed or
    /// more than it reaches; null where the thickness is not known.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Not a reflective sheet.</exception>
    public static ThermalResistance? UsualOf(MaterialKind kind, double? thicknessMm) => kind switch
    {
        MaterialKind.FoilSheet => ThermalResistance.FromSi(0),
        MaterialKind.BubbleSheet => thicknessMm is { } mm
            ? ThermalResistance.FromRValue(
                BubbleSheetUsual * Math.Max(1, mm / (2 * BubbleSheetMm)))
            : null,
        _ => throw new ArgumentOutOfRangeException(
            nameof(kind), kind, "Only a reflective sheet has a usual resistance."),
    };

    /// <summary>
    /// The rows of the blanket table a thickness [in] lies between; the same row twice beyond them.
    /// </summary>
    public static ((double Inches, double R) Thin, (double Inches, double R) Thick) BlanketAround(
        double inches)
    {
        var (first, last) = (BlanketNominal[0], BlanketNominal[^1]);
        if (inches <= first.Inches) return (first, first);
        if (inches >= last.Inches) return (last, last);
        var upper = Array.FindIndex(BlanketNominal, row => row.Inches >= inches);
        return (BlanketNominal[upper - 1], BlanketNominal[upper]);
    }

    private static double BlanketR(double inches)
    {
        var (thin, thick) = BlanketAround(inches);
        return thin == thick
            ? inches * thin.R / thin.Inches
            : thin.R
                + (thick.R - thin.R) * (inches - thin.Inches) / (thick.Inches - thin.Inches);
    }
}
