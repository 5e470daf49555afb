namespace PostFrame.SizingApi.Climate;

/// <param name="Disagrees">The two county sources give different zone numbers.</param>
/// <param name="StationWmo">Empty in Alaska and Hawaii: no station of the set is near.</param>
public sealed record County(
    string Fips, string State, string Name, double? Latitude, double? Longitude, string Zone,
    string MoistureRegime, bool Disagrees,
    string SecondSourceZoneNumber, string StationWmo, double? StationDistanceKm);
