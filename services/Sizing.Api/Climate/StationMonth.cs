using PostFrame.Engine.Heat;
using PostFrame.Engine.Quantities;

namespace PostFrame.SizingApi.Climate;

/// <summary>
/// Monthly means: temperature [°C], vapour pressure [Pa], RH [%], sun [kWh/m²], wind.
/// </summary>
public sealed record StationMonth(
    int Month, double MeanC, double VapourPressurePa, double RelativeHumidityPercent,
    double HorizontalSolarKwhM2, double WindMPerS)
{
    /// <summary>
    /// Saturation at the mean temperature [Pa], over ice below freezing. In a cold month of wide
    /// swings the mean vapour pressure can lie above it: most vapour comes with the warm hours.
    /// </summary>
    public double SaturationPa => Vapour.Saturation(Temperature.FromCelsius(MeanC));

    /// <summary>True where air of the mean temperature cannot hold the mean vapour.</summary>
    public bool IsSaturated => VapourPressurePa > SaturationPa;
}
