namespace PostFrame.SizingApi.Climate;

/// <summary>
/// Monthly means: temperature [°C], vapour pressure [Pa], RH [%], sun [kWh/m²], wind.
/// </summary>
public sealed record StationMonth(
    int Month, double MeanC, double VapourPressurePa, double RelativeHumidityPercent,
    double HorizontalSolarKwhM2, double WindMPerS);
