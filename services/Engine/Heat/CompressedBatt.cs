using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.Heat;

/// <summary>Glass-fibre batts squeezed evenly into a shallower cavity.</summary>
public static class CompressedBatt
{
    /// <summary>The least share of its thickness a batt may be squeezed to.</summary>
    public const double LeastShare = 0.4;

    /// <summary>
    /// Resistance after uniform compression: R·(t_c/t)^0.5, the thinner the batt the lower its R,
    /// though by less than its thickness. Down to 40 % of the thickness; below, as at purlins, it
    /// is refused.
    /// Source: fitted to a published trade chart (read), within R 1.2 for light batts and up to
    /// R 2.5 too high for dense ones.
    /// </summary>
    /// <param name="nominal">At the nominal thickness.</param>
    /// <param name="thicknessMm">Nominal thickness [mm].</param>
    /// <param name="compressedMm">Thickness it is squeezed to [mm]; not above the nominal.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that range.</exception>
    public static ThermalResistance R(
        ThermalResistance nominal, double thicknessMm, double compressedMm)
    {
        Limits.Check(
            compressedMm, LeastShare * thicknessMm, thicknessMm, "mm, 40 to 100 % of the thickness",
            nameof(compressedMm));
        return ThermalResistance.FromSi(
            nominal.TotalSi * Math.Sqrt(compressedMm / thicknessMm));
    }
}
