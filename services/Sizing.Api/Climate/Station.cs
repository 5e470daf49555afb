namespace PostFrame.SizingApi.Climate;

/// <summary>
/// A TMY3 station. Temperatures [°C]; degree days [°F·day], base 65, 60, 55, 50 °F.
/// </summary>
public sealed record Station(
    string Wmo, string Name, string State, double Latitude, double Longitude, double ElevationM,
    string Zone, double Heating996C, double Heating99C, double Cooling1C, double Cooling04C,
    double AnnualMeanC, double Hdd65F, double Hdd60F, double Hdd55F, double Hdd50F, double Cdd65F,
    double Cdd50F, IReadOnlyList<StationMonth> Months);
