using System.Globalization;
using System.Reflection;

namespace PostFrame.SizingApi.Climate;

/// <summary>
/// Counties, ZIPs and stations of the United States, read once from the embedded tables.
/// Sources and licences: <c>Data/SOURCES.md</c> beside this file.
/// </summary>
public sealed class ClimateAtlas
{
    public const string ZoneEdition = "IECC 2006–2018 / ASHRAE 169-2006";

    private static readonly Lazy<ClimateAtlas> Loaded = new(() => new ClimateAtlas());

    private readonly Dictionary<string, County> _counties;
    private readonly Dictionary<string, Zip> _zips;
    private readonly Dictionary<string, Station> _stations;

    private ClimateAtlas()
    {
        var months = Rows("stations_monthly.csv")
            .Select(row => (Station: row.Text("wmo"), Month: MonthOf(row)))
            .ToLookup(pair => pair.Station, pair => pair.Month);
        _stations = Rows("stations.csv")
            .Select(row => StationOf(row, [.. months[row.Text("wmo")].OrderBy(m => m.Month)]))
            .ToDictionary(station => station.Wmo);
        _counties = Rows("counties.csv").Select(CountyOf).ToDictionary(county => county.Fips);
        _zips = Rows("zips.csv").Select(ZipOf).ToDictionary(zip => zip.Code);
    }

    public static ClimateAtlas Instance => Loaded.Value;

    public IReadOnlyCollection<Station> Stations => _stations.Values;

    public IReadOnlyCollection<County> Counties => _counties.Values;

    public Zip? FindZip(string code) => _zips.GetValueOrDefault(code);

    /// <summary>Zones of the ZIPs that begin alike, the one of most ZIPs first.</summary>
    public IReadOnlyList<string> ZonesBeginning(string threeDigits) =>
    [
        .. _zips.Values.Where(zip => zip.Code.StartsWith(threeDigits, StringComparison.Ordinal))
            .GroupBy(zip => _counties[zip.CountyFips].Zone)
            .OrderByDescending(zone => zone.Count())
            .ThenBy(zone => zone.Key, StringComparer.Ordinal)
            .Select(zone => zone.Key),
    ];

    public County? FindCounty(string fips) => _counties.GetValueOrDefault(fips);

    public Station? FindStation(string wmo) => _stations.GetValueOrDefault(wmo);

    private static County CountyOf(Row row) => new(
        row.Text("fips"), row.Text("state"), row.Text("county"),
        row.Perhaps("lat"), row.Perhaps("lon"), row.Text("zone_code"),
        row.Text("moisture_regime"), row.Text("sources_agree") is "0",
        row.Text("second_source_zone_number"), row.Text("nearest_station_wmo"),
        row.Perhaps("nearest_station_km"));

    private static Zip ZipOf(Row row) => new(
        row.Text("zip"), row.Text("fips"), row.Number("population_share_in_county"),
        row.Text("zone_ambiguous") is "1",
        row.Text("zones_if_ambiguous").Split(
            [' ', '|', ';', '/'], StringSplitOptions.RemoveEmptyEntries));

    private static Station StationOf(Row row, IReadOnlyList<StationMonth> months) => new(
        row.Text("wmo"), row.Text("name"), row.Text("state"), row.Number("lat"),
        row.Number("lon"), row.Number("elevation_m"), row.Text("zone_code_of_nearest_county"),
        row.Number("heat_99_6_c"), row.Number("heat_99_c"), row.Number("cool_1_c"),
        row.Number("cool_0_4_c"), row.Number("annual_mean_c"), row.Number("hdd65_f"),
        row.Number("hdd60_f"), row.Number("hdd55_f"), row.Number("hdd50_f"),
        row.Number("cdd65_f"), row.Number("cdd50_f"), months);

    private static StationMonth MonthOf(Row row) => new(
        (int)row.Number("month"), row.Number("mean_t_c"), row.Number("mean_vapour_pressure_pa"),
        row.Number("rh_from_means_pct"), row.Number("horizontal_solar_kwh_m2"),
        row.Number("mean_wind_m_s"));

    private static IEnumerable<Row> Rows(string file)
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(
            "Climate.Data." + file) ?? throw new InvalidOperationException(file + " is missing");
        using var reader = new StreamReader(stream);
        var names = reader.ReadLine()!.Split(',');
        while (reader.ReadLine() is { } line)
        {
            yield return new Row(names, line.Split(','));
        }
    }

    /// <summary>
    /// The tables hold no quoted cell: a line with another count of cells throws.
    /// </summary>
    private sealed record Row(string[] Names, string[] Cells)
    {
        public string Text(string name) => Cells.Length == Names.Length
            ? Cells[Array.IndexOf(Names, name)]
            : throw new InvalidDataException(string.Join(',', Cells));

        public double? Perhaps(string name) =>
            Text(name).Length == 0 ? null : Number(name);

        public double Number(string name) =>
            double.Parse(Text(name), NumberStyles.Float, CultureInfo.InvariantCulture);
    }
}
