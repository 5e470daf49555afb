using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.Heat;

/// <summary>
/// The resistance of an air space under stated conditions: R = 1/(hc + E·hr0). It belongs to one
/// thickness, direction, mean temperature and difference across the space itself.
/// </summary>
/// <param name="ConvectiveWPerM2K">Convection and conduction of the air [W/(m²·K)].</param>
/// <param name="RadiativeWPerM2K">Radiation between the faces, E·hr0 [W/(m²·K)].</param>
/// <param name="Extrapolated">True outside the conditions the table prints.</param>
public sealed record AirSpaceHeat(
    double ConvectiveWPerM2K, double RadiativeWPerM2K, bool Extrapolated)
{
    /// <summary>The resistance of the space, face to face.</summary>
    public ThermalResistance R =>
        ThermalResistance.FromSi(1 / (ConvectiveWPerM2K + RadiativeWPerM2K));

    /// <summary>The share of the heat that crosses as radiation, 0 to 1.</summary>
    public double RadiantShare =>
        RadiativeWPerM2K / (ConvectiveWPerM2K + RadiativeWPerM2K);

    /// <summary>
    /// Computes an unventilated space.
    /// Range: ΔT 0 to 120 K; mean −65 to 115 °C; thickness 1 to 300 mm (ISO), 12.5 to 150 (ASHRAE).
    /// Source: ISO: <see cref="IsoConvection"/>, hr0 = 4σT³. ASHRAE: <see
    /// cref="AshraeConvection"/>, hr0 = 0.227·((t + 273)/100)³, ASHRAE HoF 2021 (SI) ch. 26 Table 3
    /// note a.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    public static AirSpaceHeat Of(
        CalculationBasis basis,
        FlowDirection flow,
        double thicknessMm,
        double effectiveEmittance,
        Temperature mean,
        double differenceKelvins)
    {
        Limits.Check(effectiveEmittance, 0.005, 1, "(emittance)", nameof(effectiveEmittance));
        Limits.Check(mean.TotalCelsius, -65, 115, "°C", nameof(mean));
        Limits.Check(differenceKelvins, 0, 120, "K", nameof(differenceKelvins));
        if (basis == CalculationBasis.Iso6946)
        {
            var hc = IsoConvection.Coefficient(flow.Nearest, thicknessMm, differenceKelvins);
            var hr0 = 4 * 5.670374419e-8 * Math.Pow(mean.TotalKelvin, 3);
            return new AirSpaceHeat(hc, effectiveEmittance * hr0, Extrapolated: false);
        }
        var convective = flow.Between(printed => AshraeConvection.Coefficient(
            printed, thicknessMm, mean.TotalCelsius, differenceKelvins));
        var radiative =
            effectiveEmittance * 0.227 * Math.Pow((mean.TotalCelsius + 273) / 100, 3);
        return new AirSpaceHeat(
            convective,
            radiative,
            flow.Printed.Any(printed => AshraeConvection.Extrapolates(
                printed, thicknessMm, mean.TotalCelsius, differenceKelvins)));
    }
}
