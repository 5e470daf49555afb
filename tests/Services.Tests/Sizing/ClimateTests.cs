using Microsoft.AspNetCore.Http.HttpResults;
using PostFrame.Problems;
using PostFrame.SizingApi.Climate;
using Xunit;

namespace PostFrame.ServicesTests.Sizing;

public sealed class ClimateTests
{
    /// <summary>Source: IECC 2006–2018 figure R301.1 (from memory: St. Louis County MN is zone 7,
    /// Linn County IA 5A, Miami-Dade FL 1A, King County WA 4C).</summary>
    [Theory]
    [InlineData("55802", "7")]
    [InlineData("52401", "5A")]
    [InlineData("33130", "1A")]
    [InlineData("98101", "4C")]
    [InlineData("99501", "7")]
    public void A_postal_code_has_the_zone_of_the_published_map(string zip, string zone) =>
        Assert.Equal(zone, Found(zip).Zone);

    /// <summary>Source: degree days computed independently from the TMY3 hours, Cedar Rapids.
    /// </summary>
    [Fact]
    public void Degree_days_are_those_of_the_typical_year()
    {
        var days = Found("52401").DegreeDays!;
        Assert.Equal((6851, 5636, 4576, 3629),
            (days.Heating65FDays, days.Heating60FDays, days.Heating55FDays, days.Heating50FDays));
    }

    [Fact]
    public void A_postal_code_over_two_zones_says_so_and_asks()
    {
        var answer = Found("03602");
        Assert.True(answer.Ambiguous);
        Assert.Equal(["5A", "6A"], answer.ZonesIfAmbiguous);
        Assert.StartsWith("This postal code lies in zones 5A and 6A", answer.Notes[0]);
    }

    [Fact]
    public void Nine_digits_count_as_their_first_five() =>
        Assert.Equal("55802", Found("55802-1234").PostalCode);

    [Fact]
    public void A_place_without_a_station_gives_none_and_asks_for_values()
    {
        var answer = Found("99501");
        Assert.Null(answer.Station);
        Assert.Contains("send design temperatures", answer.Notes[0]);
    }

    [Theory]
    [InlineData("00000")]
    [InlineData("5580")]
    [InlineData("55802x1234")]
    [InlineData("٥٥٨٠٢")]
    [InlineData("abcde")]
    public void An_unknown_postal_code_is_refused_and_asks_for_the_zone(string zip)
    {
        var refusal = Assert.IsType<ProblemAnswer>(GetClimate.ByPostalCode(zip).Result);
        Assert.Equal(404, refusal.Status);
        Assert.Contains("climate zone", refusal.Body(null).Detail);
    }

    // A census list has no codes for post boxes only: 85001 is one of Phoenix, zone 2B by the
    // county map (from memory).
    [Fact]
    public void An_unknown_code_names_the_zones_of_those_that_begin_alike()
    {
        var refusal = Assert.IsType<ProblemAnswer>(GetClimate.ByPostalCode("85001").Result);
        Assert.Contains("begin with 850 lie in zone 2B", refusal.Body(null).Detail);
        Assert.Contains("climate zone", refusal.Body(null).Detail);
    }

    [Theory]
    [InlineData(" 55802")]
    [InlineData("55802 ")]
    public void Spaces_around_a_code_do_not_matter(string zip) =>
        Assert.Equal("55802", Found(zip).PostalCode);

    [Fact]
    public void A_county_and_a_station_have_their_climate_too()
    {
        var county = Assert.IsType<Ok<ClimateAnswer>>(GetClimate.ByCounty("27137").Result).Value!;
        var station = Assert.IsType<Ok<ClimateAnswer>>(GetClimate.ByStation("727450").Result)
            .Value!;
        Assert.Equal(("7", "727450"), (county.Zone, county.Station!.Wmo));
        Assert.Equal(county.DesignTemperatures, station.DesignTemperatures);
        var refusals = new[] { GetClimate.ByCounty("2713"), GetClimate.ByStation("abc") };
        Assert.All(refusals, refused => Assert.Contains(
            "climate zone", Assert.IsType<ProblemAnswer>(refused.Result).Body(null).Detail));
    }

    /// <summary>Great-circle distances worked here, not those of the table.</summary>
    [Fact]
    public void No_station_is_nearer_to_a_county_than_the_one_given()
    {
        var atlas = ClimateAtlas.Instance;
        Assert.All(atlas.Counties.Where(county => county.StationDistanceKm is not null), county =>
        {
            double Km(Station s) => GreatCircleKm(
                county.Latitude!.Value, county.Longitude!.Value, s.Latitude, s.Longitude);
            Assert.InRange(county.StationDistanceKm!.Value - atlas.Stations.Min(Km), -2, 2);
            Assert.InRange(county.StationDistanceKm.Value
                - Km(atlas.FindStation(county.StationWmo)!), -2, 2);
        });
    }

    // Saturation over water and over ice, ISO 13788:2012 equations E.7 and E.8, written down again.
    // In six of the 948 months the mean vapour pressure is above it (worked from the table).
    [Fact]
    public void No_month_of_any_station_is_told_wetter_than_saturated_and_those_held_are_named()
    {
        var held = 0;
        Assert.All(ClimateAtlas.Instance.Stations, station =>
        {
            var answer = Assert.IsType<Ok<ClimateAnswer>>(
                GetClimate.ByStation(station.Wmo).Result).Value!;
            Assert.All(answer.Months!, month =>
            {
                Assert.InRange(month.RelativeHumidityPercent, 5, 100);
                var t = month.MeanTemperatureC;
                var saturated = 610.5 * (t >= 0
                    ? Math.Exp(17.269 * t / (237.3 + t))
                    : Math.Exp(21.875 * t / (265.5 + t)));
                Assert.Equal(
                    Math.Min(100, 100 * month.MeanVapourPressurePa / saturated),
                    month.RelativeHumidityPercent, 0.6);
                var name = System.Globalization.CultureInfo.InvariantCulture.DateTimeFormat
                    .GetMonthName(month.Month);
                var isHeld = month.MeanVapourPressurePa > saturated;
                held += isHeld ? 1 : 0;
                Assert.Equal(isHeld, answer.Notes.Any(
                    note => note.Contains("saturat") && note.Contains(name)));
            });
        });
        Assert.Equal(6, held);
    }

    [Fact]
    public void Every_station_has_twelve_months_and_plausible_order_of_design_values() =>
        Assert.All(ClimateAtlas.Instance.Stations, station =>
        {
            Assert.Equal(Enumerable.Range(1, 12), station.Months.Select(m => m.Month));
            Assert.True(station.Heating996C <= station.Heating99C
                && station.Heating99C < station.Cooling1C
                && station.Cooling1C <= station.Cooling04C);
        });

    private static ClimateAnswer Found(string zip) =>
        Assert.IsType<Ok<ClimateAnswer>>(GetClimate.ByPostalCode(zip).Result).Value!;

    private static double GreatCircleKm(double lat1, double lon1, double lat2, double lon2)
    {
        double Rad(double deg) => deg * Math.PI / 180;
        var a = Math.Pow(Math.Sin(Rad(lat2 - lat1) / 2), 2) + Math.Cos(Rad(lat1))
            * Math.Cos(Rad(lat2)) * Math.Pow(Math.Sin(Rad(lon2 - lon1) / 2), 2);
        return 2 * 6371 * Math.Asin(Math.Sqrt(a));
    }
}
