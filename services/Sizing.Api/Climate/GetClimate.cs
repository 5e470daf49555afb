using System.Globalization;
using Microsoft.AspNetCore.Http.HttpResults;
using PostFrame.Problems;

namespace PostFrame.SizingApi.Climate;

/// <summary>The climate of a postal code, a county or a station.</summary>
public static class GetClimate
{
    private const double FarKm = 250;
    private const double NearKm = 100;

    public static void MapClimate(this IEndpointRouteBuilder routes)
    {
        var group = routes.MapGroup("/v1/climate").WithTags("Climate").WithGroupName("sizing");
        group.MapGet("/{postalCode}", ByPostalCode)
            .WithName("climateOfPostalCode")
            .WithSummary("Zone, design temperatures, degree days and months of a US ZIP code")
            .MapRefusals(ProblemKind.PostalCodeNotFound);
        group.MapGet("/counties/{fips}", ByCounty)
            .WithName("climateOfCounty")
            .WithSummary("The same for a county by its five-digit FIPS code")
            .MapRefusals(ProblemKind.PostalCodeNotFound);
        group.MapGet("/stations/{wmo}", ByStation)
            .WithName("climateOfStation")
            .WithSummary("The same for a weather station by its WMO number")
            .MapRefusals(ProblemKind.PostalCodeNotFound);
    }

    /// <summary>Five digits, or nine as 12345-6789, of which the first five count.</summary>
    public static Results<Ok<ClimateAnswer>, ProblemAnswer> ByPostalCode(string postalCode)
    {
        var atlas = ClimateAtlas.Instance;
        if (FiveDigits(postalCode) is not { } code || atlas.FindZip(code) is not { } zip)
        {
            return Unknown(
                "postal code", postalCode, "five digits, or 12345-6789", Neighbours(postalCode));
        }

        var county = atlas.FindCounty(zip.CountyFips)!;
        var answer = OfCounty(atlas, county, zip.Share);
        var notes = answer.Notes;
        if (zip.Ambiguous)
        {
            notes = [$"This postal code lies in zones {string.Join(" and ", zip.Zones)}. "
                + "Ask which county the building stands in and send that zone.", .. notes];
        }

        return TypedResults.Ok(answer with
        {
            PostalCode = code,
            Ambiguous = zip.Ambiguous || county.Disagrees,
            ZonesIfAmbiguous = zip.Ambiguous ? zip.Zones : answer.ZonesIfAmbiguous,
            Notes = notes,
        });
    }

    public static Results<Ok<ClimateAnswer>, ProblemAnswer> ByCounty(string fips) =>
        ClimateAtlas.Instance.FindCounty(fips.Trim()) is { } county
            ? TypedResults.Ok(OfCounty(ClimateAtlas.Instance, county, null))
            : Unknown("county", fips, "a five-digit FIPS code");

    public static Results<Ok<ClimateAnswer>, ProblemAnswer> ByStation(string wmo) =>
        ClimateAtlas.Instance.FindStation(wmo.Trim()) is { } station
            ? TypedResults.Ok(OfStation(station) with { Zone = station.Zone })
            : Unknown("station", wmo, "a six-digit WMO number");

    /// <summary>
    /// What an unknown code may be, and the zones of those that begin like it; empty where it is no
    /// postal code at all.
    /// </summary>
    internal static string Neighbours(string postalCode)
    {
        if (FiveDigits(postalCode) is not { } code) return "";
        var zones = ClimateAtlas.Instance.ZonesBeginning(code[..3]);
        return " It may be new, or for post boxes only."
            + (zones.Count == 0
                ? ""
                : $" Codes that begin with {code[..3]} lie in zone "
                    + $"{string.Join(" or ", zones)} of {ClimateAtlas.ZoneEdition}.");
    }

    private static string? FiveDigits(string written)
    {
        var text = written.Trim();
        var plain = text.Length is 5 || (text.Length is 10 && text[5] == '-');
        return plain && text.Where((_, i) => i != 5).All(char.IsAsciiDigit) ? text[..5] : null;
    }

    private static ClimateAnswer OfCounty(ClimateAtlas atlas, County county, double? share)
    {
        var station = county.StationWmo.Length == 0 ? null : atlas.FindStation(county.StationWmo);
        var answer = station is null ? WithoutStation(county) : OfStation(station);
        var notes = new List<string>(answer.Notes);
        if (county.Disagrees)
        {
            notes.Insert(0, "Two public county lists differ here: zone "
                + $"{county.Zone} and zone {county.SecondSourceZoneNumber}. "
                + "Ask the building official.");
        }

        if (county.StationDistanceKm is { } km and > NearKm)
        {
            notes.Insert(0, $"The station is {km:0} km from the county's centre. "
                + (km > FarKm
                    ? "That is too far to rely on: use local design temperatures."
                    : "Within 100 km is good; compare with local design temperatures."));
        }

        return answer with
        {
            County = new ClimateCounty(
                county.Fips, county.Name, county.State,
                county.MoistureRegime.Length == 0 ? null : county.MoistureRegime, share),
            Zone = county.Zone,
            Ambiguous = county.Disagrees,
            ZonesIfAmbiguous = county.Disagrees
                ? [county.Zone, county.SecondSourceZoneNumber] : null,
            StationDistanceKm = county.StationDistanceKm,
            Notes = notes,
        };
    }

    private static ClimateAnswer WithoutStation(County county) => new()
    {
        Zone = county.Zone,
        ZoneEdition = ClimateAtlas.ZoneEdition,
        Ambiguous = false,
        Station = null,
        Notes = ["No station of the data set stands near: send design temperatures and degree "
            + "days of your own.", EditionNote],
        Sources = [ZoneSource],
    };

    private static ClimateAnswer OfStation(Station station) => new()
    {
        Zone = station.Zone,
        ZoneEdition = ClimateAtlas.ZoneEdition,
        Ambiguous = false,
        Station = new ClimateStation(
            station.Wmo, station.Name, station.State, station.Latitude, station.Longitude,
            station.ElevationM, station.Zone),
        DesignTemperatures = new DesignTemperatures(
            Fahrenheit(station.Heating996C), Fahrenheit(station.Heating99C),
            Fahrenheit(station.Cooling1C), Fahrenheit(station.Cooling04C),
            station.Heating996C, station.Heating99C, station.Cooling1C, station.Cooling04C),
        DegreeDays = new DegreeDays(
            station.Hdd65F, station.Hdd60F, station.Hdd55F, station.Hdd50F,
            station.Cdd65F, station.Cdd50F),
        Months = [.. station.Months.Select(month => new ClimateMonth(
            month.Month, month.MeanC, Fahrenheit(month.MeanC), month.VapourPressurePa,
            Math.Min(100, month.RelativeHumidityPercent), month.HorizontalSolarKwhM2,
            month.WindMPerS))],
        Notes = [.. station.Months.Where(month => month.IsSaturated).Select(SaturatedNote),
            "A typical year, not an extreme one: its 99 % heating value is on average 0.4 K "
            + "warmer than long-term values. Subtract 2 K for sizing, or send the local design "
            + "temperature, which always wins.", EditionNote],
        Sources = [ZoneSource, StationSource],
    };

    private static string SaturatedNote(StationMonth month) =>
        FormattableString.Invariant(
            $"{CultureInfo.InvariantCulture.DateTimeFormat.GetMonthName(month.Month)}: the mean ")
        + FormattableString.Invariant(
            $"vapour pressure of {month.VapourPressurePa:0.#} Pa is above saturation over ")
        + (month.MeanC < 0 ? "ice" : "water")
        + FormattableString.Invariant(
            $" at the mean temperature, {month.SaturationPa:0.#} Pa (vapour comes with the warm ")
        + "hours): told as 100 % relative humidity, and reckoned with as saturated.";

    private const string EditionNote =
        "IECC 2021 and ASHRAE 169-2013 moved about a tenth of the counties, mostly one zone "
        + "warmer (from memory). The code adopted where you build decides.";

    private const string ZoneSource =
        "DOE Building America county guide as carried in diyepw (PNNL, BSD 2-Clause); Census 2010 "
        + "ZIP-to-county shares as carried in covidcast-indicators (MIT)";

    private const string StationSource =
        "NREL TMY3, 1991–2005, Wilcox and Marion, NREL/TP-581-43156; statistics computed from it";

    private static double Fahrenheit(double celsius) => Math.Round(celsius * 1.8 + 32, 1);

    private static ProblemAnswer Unknown(
        string what, string value, string form, string hint = "") => new(
        ProblemKind.PostalCodeNotFound,
        $"No climate is known for {what} \"{(value.Length > 20 ? "…" : value)}\" ({form}). "
            + hint.TrimStart() + (hint.Length > 0 ? " " : "")
            + "Send the climate zone and the design temperatures yourself.");
}
