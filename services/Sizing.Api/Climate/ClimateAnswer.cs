namespace PostFrame.SizingApi.Climate;

/// <summary>The climate of a place. Every number carries its unit in its name.</summary>
public sealed record ClimateAnswer
{
    public string? PostalCode { get; init; }

    public ClimateCounty? County { get; init; }

    /// <summary>Zone of the county with the most people of the postal code, such as 5A.</summary>
    public required string Zone { get; init; }

    public required string ZoneEdition { get; init; }

    /// <summary>True when the place touches a county of another zone: ask which it is.</summary>
    public required bool Ambiguous { get; init; }

    public IReadOnlyList<string>? ZonesIfAmbiguous { get; init; }

    public required ClimateStation? Station { get; init; }

    /// <summary>From the county's centre [km].</summary>
    public double? StationDistanceKm { get; init; }

    public DesignTemperatures? DesignTemperatures { get; init; }

    public DegreeDays? DegreeDays { get; init; }

    public IReadOnlyList<ClimateMonth>? Months { get; init; }

    /// <summary>What to know before relying on the figures.</summary>
    public required IReadOnlyList<string> Notes { get; init; }

    public required IReadOnlyList<string> Sources { get; init; }
}

/// <param name="PopulationShare">Part of the postal code's people in this county, 0 to 1.</param>
public sealed record ClimateCounty(
    string Fips, string Name, string State, string? MoistureRegime, double? PopulationShare);

public sealed record ClimateStation(
    string Wmo, string Name, string State, double LatitudeDeg, double LongitudeDeg,
    double ElevationM, string Zone);

/// <summary>
/// Dry bulb exceeded 99.6 and 99 % (heating), 1 and 0.4 % (cooling) of the hours.
/// </summary>
public sealed record DesignTemperatures(
    double Heating996F, double Heating99F, double Cooling1F, double Cooling04F,
    double Heating996C, double Heating99C, double Cooling1C, double Cooling04C);

public sealed record DegreeDays(
    double Heating65FDays, double Heating60FDays, double Heating55FDays, double Heating50FDays,
    double Cooling65FDays, double Cooling50FDays);

public sealed record ClimateMonth(
    int Month, double MeanTemperatureC, double MeanTemperatureF, double MeanVapourPressurePa,
    double RelativeHumidityPercent, double HorizontalSolarKwhM2, double MeanWindMPerS);
