using PostFrame.Engine.Heat;
using PostFrame.Engine.Quantities;
using PostFrame.Engine.TakeOff;
using PostFrame.Problems;
using PostFrame.SizingApi.Climate;

namespace PostFrame.SizingApi.Comparisons;

/// <summary>Reads a whole comparison request, noting every mistake.</summary>
internal static class ReadComparison
{
    private const int MostElements = 40;
    private const double LongestSlabEdgeMm = 3e6;

    public static ComparisonInput From(RequestObject root, PriceList? prices)
    {
        var basis = root.OptionalChoice<CalculationBasis>("basis") ?? CalculationBasis.Ashrae;
        var plane = root.Object("plane");
        var isWall = plane.Choice("kind", "roof", "wall") == "wall";
        var slope = isWall ? null : plane.Slope("slope");
        if (slope is { TotalDegrees: < 0 } falling)
            plane.Wrong("slope", "at-least",
                FormattableString.Invariant($"{falling.TotalDegrees:0.##} deg"),
                "A roof slopes by 0 deg or more, whichever way it falls.", "0", "deg");
        if (isWall && plane.Has("slope"))
            plane.Wrong("slope", "not-here", plane.OptionalText("slope", 40) ?? "",
                "A wall has no slope; leave it out.");
        var area = plane.OptionalArea("area");
        var framing = ReadFraming(plane, isWall);
        var colour = plane.OptionalChoice<SurfaceColour>("colour");
        plane.Close();
        var climate = Climate(root.OptionalObject("climate"));
        var room = Room(root.OptionalObject("room"), climate);
        var isMetric = root.OptionalChoice("units", "us", "metric") == "metric";
        var input = new ComparisonInput
        {
            Basis = basis,
            IsWall = isWall,
            SlopeDegrees = isWall ? 90 : slope?.TotalDegrees ?? 0,
            Area = area,
            Framing = framing.Wood,
            SteelSystem = framing.SteelSystem,
            Colour = colour,
            Climate = climate,
            Room = room,
            Fuel = Fuel(root.OptionalObject("fuel"), room),
            Code = Code(root.OptionalObject("code"), isWall),
            Building = Building(root.OptionalObject("building")),
            Lines = ReadLines.From(root, basis, area, framing, prices, isMetric),
            Working = root.OptionalFlag("working") ?? false,
            Pictures = root.OptionalFlag("pictures") ?? true,
            IsMetric = isMetric,
            Prices = prices,
        };
        root.Close();
        return input;
    }

    private static FramingAsked ReadFraming(RequestObject plane, bool isWall)
    {
        var place = plane.Object("framing");
        var steel = place.OptionalChoice("material", "wood", "steel") == "steel";
        var system = place.OptionalChoice(
            "system", "standingSeamWithBlocks", "throughFastened", "overGirts");
        if (steel)
        {
            if (system is null && !isWall && place.IsPresent)
                place.Wrong("system", "missing", "",
                    "Steel-framed roofs take tested values: standing seam with thermal blocks, or "
                    + "through-fastened?");
            place.Close();
            return new(null, isWall ? "overGirts" : system, false);
        }
        if (system is not null)
            place.Wrong("system", "not-here", system, "Only steel framing has a tested system.");
        var width = place.Mm("width", 10, 300, "The width of a member");
        var spacing = place.Mm("spacing", 100, 5000, "The spacing from centre to centre");
        var depth = place.Mm("depth", 10, 500, "The depth of a member");
        var isMetric = place.IsMetric("depth");
        place.Close();
        if (spacing is { } apart && width > apart / 2)
            place.OutsideMm("width", width.Value, 0, apart / 2,
                "A member is at most half as wide as the spacing: it");
        if (width is not { } w || spacing is not { } s || depth is not { } d)
            return new(null, null, isMetric);
        return new(new Framing { WidthMm = w, SpacingMm = s, DepthMm = d }, null, isMetric);
    }

    private static ClimateAsked Climate(RequestObject? place)
    {
        if (place is not { IsPresent: true }) return new(null, null, null, null, null, null);
        var asked = new ClimateAsked(
            Found(place),
            place.OptionalChoice("zone", Zones),
            place.OptionalTemperature("winterDesign", -58, 65),
            place.OptionalTemperature("summerDesign", 40, 130),
            place.OptionalNumber("sun", 0, 1400, "W/m²"),
            place.OptionalDegreeDaysK("heatingDegreeDays"));
        CheckAboveWinter(place, "summerDesign", asked.Summer, asked);
        place.Close();
        return asked;
    }

    /// <summary>
    /// A summer or a room no warmer than the winter outdoors has its seasons reversed.
    /// </summary>
    private static void CheckAboveWinter(
        RequestObject place, string name, Temperature? asked, ClimateAsked climate)
    {
        if (asked is not { } warm || WinterOf(climate) is not { } winter
            || warm.CompareTo(winter) > 0)
            return;
        var words = place.TemperatureWords(name);
        place.Wrong(
            name, "above-winter", words.Of(warm),
            $"{name} ({words.Of(warm)}) must be above {NameOfWinter(climate)} "
                + $"({words.Of(winter)}); is one of them wrong?",
            FormattableString.Invariant($"{words.Axis(winter):0.#}"), words.Degrees);
    }

    private static Temperature? WinterOf(ClimateAsked climate) => climate.Winter
        ?? (climate.Found?.DesignTemperatures is { } design
            ? Temperature.FromCelsius(design.Heating99C)
            : null);

    private static string NameOfWinter(ClimateAsked climate) =>
        climate.Winter is null ? "the station's winter air" : "winterDesign";

    private static readonly string[] Zones =
    [
        "1A", "1B", "2A", "2B", "3A", "3B", "3C", "4A", "4B", "4C", "5A", "5B", "5C", "6A", "6B",
        "7", "8",
    ];

    private static ClimateAnswer? Found(RequestObject place)
    {
        string[] names = ["postalCode", "countyFips", "stationWmo"];
        var given = names.Where(place.Has).ToList();
        foreach (var extra in given.Skip(1))
            place.Wrong(
                extra, "either-or", place.OptionalText(extra, 20) ?? "",
                $"Give one of {string.Join(", ", names)}.");
        if (given is not [var name, ..] || place.OptionalText(name, 20) is not { } value)
            return null;
        var found = name switch
        {
            "postalCode" => GetClimate.ByPostalCode(value).Result,
            "countyFips" => GetClimate.ByCounty(value).Result,
            _ => GetClimate.ByStation(value).Result,
        };
        if (found is Microsoft.AspNetCore.Http.HttpResults.Ok<ClimateAnswer> { Value: { } answer })
            return answer;
        place.Wrong(
            name, "unknown-place", value,
            "No climate is known for it."
            + (name == "postalCode" ? GetClimate.Neighbours(value) : "")
            + " Send the zone and the design temperatures yourself: zone, winterDesign, "
            + "summerDesign.");
        return null;
    }

    private static RoomAsked Room(RequestObject? place, ClimateAsked climate)
    {
        if (place is not { IsPresent: true }) return new(null, null, null, null, null, null);
        var heated = place.OptionalFlag("heated");
        var heatedTo = place.OptionalTemperature("heatedTo", 33, 100);
        if (heated == false && heatedTo is { } kept)
            place.Wrong(
                "heatedTo", "not-here", place.TemperatureWords("heatedTo").Of(kept),
                "An unheated room is heated to nothing.");
        CheckAboveWinter(place, "heatedTo", heatedTo, climate);
        var asked = new RoomAsked(
            place.OptionalChoice<IndoorUse>("use"),
            heated ?? (heatedTo is null ? null : true),
            heatedTo,
            place.OptionalTemperature("cooledTo", 50, 100),
            place.OptionalNumber("moistureExcess", 0, 4000, "Pa"),
            Burner(place.OptionalObject("burner")));
        place.Close();
        return asked;
    }

    private static BurnerAsked? Burner(RequestObject? place)
    {
        if (place is not { IsPresent: true }) return null;
        var fuel = place.OptionalChoice<BurnerFuel>("fuel");
        var input = place.OptionalPowerW("input");
        var volume = place.OptionalVolumeM3("volume");
        var changes = place.OptionalNumber("airChangesPerHour", 0.05, 50, "1/h");
        place.Close();
        foreach (var (name, missing) in ((string, bool)[])
        [
            ("fuel", fuel is null), ("input", input is null), ("volume", volume is null),
            ("airChangesPerHour", changes is null),
        ])
        {
            if (missing && !place.Has(name))
                place.Wrong(name, "missing", "", $"\"{name}\" of the heater is missing.");
        }
        return fuel is { } f && input is { } w && volume is { } v && changes is { } n
            ? new(f, w, v, n)
            : null;
    }

    private static FuelAsked? Fuel(RequestObject? place, RoomAsked room)
    {
        if (place is not { IsPresent: true }) return null;
        var kind = place.Choice("kind", WireNames<HeatingFuel>.All);
        var fuel = kind is null ? (HeatingFuel?)null : Enum.Parse<HeatingFuel>(kind, true);
        var (least, most) = fuel is { } bought ? HeatingYear.EfficiencyOf(bought) : (0.1, 6);
        var efficiency = place.OptionalNumber("efficiency", least, most, "share, or COP");
        if (efficiency is null && !place.Has("efficiency"))
            place.Wrong("efficiency", "missing", "",
                "What share of the fuel's heat reaches the room? A unit heater 0.80 to 0.93, "
                + "electric 1, a heat pump its seasonal COP.");
        var price = place.OptionalNumber("pricePerUnit", 0, 1000, "per therm, gal or kWh");
        var balance = place.OptionalTemperature("balancePoint", 50, 65);
        if (balance is { } point && room.HeatedTo is { } heatedTo
            && point.CompareTo(heatedTo) > 0)
        {
            var words = place.TemperatureWords("balancePoint");
            place.Wrong(
                "balancePoint", "at-most", words.Of(point),
                $"Heating ends before it is warmer outdoors than heatedTo ({words.Of(heatedTo)}).",
                FormattableString.Invariant($"{words.Axis(heatedTo):0.#}"), words.Degrees);
        }
        place.Close();
        return fuel is { } burnt && efficiency is { } share
            ? new(burnt, share, price, balance)
            : null;
    }

    private static CodeAsked? Code(RequestObject? place, bool isWall)
    {
        if (place is not { IsPresent: true }) return null;
        var standard = place.Choice("standard", "ashrae90.1", "ieccCommercial");
        var edition = place.Choice("edition", "2016", "2018", "2019", "2021");
        string[] conditioning = standard == "ieccCommercial"
            ? ["all other", "Group R"]
            : ["nonresidential conditioned", "residential conditioned", "semiheated"];
        var occupancy = place.Choice("conditioning", conditioning);
        string[] constructions = isWall
            ? ["wood-framed and other", "metal building"]
            : ["attic and other", "metal building", "insulation entirely above deck"];
        var construction = place.Choice("construction", constructions);
        place.Close();
        return standard is null || edition is null || occupancy is null || construction is null
            ? null
            : new(
                standard == "ieccCommercial" ? "IECC commercial" : "ASHRAE/IES 90.1", edition,
                occupancy, construction);
    }

    private static BuildingAsked? Building(RequestObject? place)
    {
        if (place is not { IsPresent: true }) return null;
        var others = new List<LossElement>();
        foreach (var item in place.OptionalObjects("otherElements", MostElements))
        {
            var name = item.Text("name", 80) ?? "";
            var area = item.OptionalArea("area");
            var r = item.OptionalNumber("assemblyR", 0.1, 200, "h·ft²·°F/Btu");
            if (area is null && !item.Has("area"))
                item.Wrong("area", "missing", "", "\"area\" is missing.", null, "ft2");
            if (r is null && !item.Has("assemblyR"))
                item.Wrong("assemblyR", "missing", "", "\"assemblyR\" is missing.");
            item.Close();
            if (area is { } a && r is { } known)
                others.Add(new LossElement(
                    name, a.TotalSquareMetres,
                    ThermalResistance.FromRValue(known).ToTransmittance()));
        }
        var volume = place.OptionalVolumeM3("volume");
        var changes = place.OptionalNumber("airChangesPerHour", 0, 50, "1/h");
        var edge = place.OptionalMm("slabEdge", 0, LongestSlabEdgeMm, "The slab edge") / 1000;
        if (changes is not null && volume is null && !place.Has("volume"))
            place.Wrong("volume", "missing", "",
                "Air changes of what volume? Give the building's volume with them.", null, "m3");
        if (volume is not null && changes is null && !place.Has("airChangesPerHour"))
            place.Wrong("airChangesPerHour", "missing", "",
                "How often does the air change in an hour? A tight shop 0.3, an ordinary one 0.5 "
                + "to 1, a leaky one 2: an assumption to state.");
        place.Close();
        return new(others, volume * changes, edge ?? 0);
    }

}
