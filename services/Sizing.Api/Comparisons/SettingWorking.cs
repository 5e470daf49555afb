using PostFrame.Engine.Heat;
using PostFrame.Engine.Quantities;
using PostFrame.SizingApi.Climate;

namespace PostFrame.SizingApi.Comparisons;

/// <summary>Opens what every line shares: plane, weather, room air.</summary>
internal static class SettingWorking
{
    private const string Request = "the request";
    private const string Station =
        "NREL TMY3, 1991–2005, Wilcox and Marion, NREL/TP-581-43156; computed from its hours";

    public static IReadOnlyList<WorkingLine> Of(Setting setting)
    {
        var sheet = new WorkingSheet("");
        Plane(sheet, setting);
        Conditions(sheet, setting);
        if (setting.Input.Climate.Found?.StationDistanceKm is { } km)
            sheet.Add(
                "place", "distance of the station",
                "great circle from the county's centre, to the km", PlaceInputs(setting),
                km, "km", "county centres as carried in diyepw, station places of NREL TMY3", "C",
                new Opens("place/stationDistanceKm"));
        if (setting.Burner is { } burner) Burner(sheet, burner);
        if (setting.RoomAir is { } air) RoomAir(sheet, air, setting);
        return sheet.Lines;
    }

    private static WorkingInput[] PlaceInputs(Setting setting)
    {
        var found = setting.Input.Climate.Found!;
        return found.Station is { } station && found.County is { } of
            && ClimateAtlas.Instance.FindCounty(of.Fips)
                is { Latitude: { } north, Longitude: { } east }
            ?
            [
                new("county, north", north, "°"), new("county, east", east, "°"),
                new("station, north", station.LatitudeDeg, "°"),
                new("station, east", station.LongitudeDeg, "°"),
            ]
            : [];
    }

    private static void Plane(WorkingSheet sheet, Setting setting)
    {
        var input = setting.Input;
        if (input.IsWall)
            sheet.Add("plane", "slope", "a wall is upright", [], 90, "°", Request, "G",
                new Opens("plane/slopeDegrees"));
        else
            sheet.Add(
                "plane", "slope", "θ = atan(rise/run)",
                [new("rise/run", Math.Tan(input.SlopeDegrees * Math.PI / 180), "")],
                input.SlopeDegrees, "°", Request, "G", new Opens("plane/slopeDegrees"));
        if (input.Area is { } area)
            sheet.Add("plane", "area", "as given", [], area.TotalSquareMetres, "m²", Request, "G",
                new Opens("plane/areaFt2", 1 / 0.09290304));
        if (input.Framing is { } framing)
            sheet.Add(
                "plane", "share of the plane over a member", "f = w/s",
                [new("w", framing.WidthMm, "mm"), new("s", framing.SpacingMm, "mm")],
                framing.Fraction, "", "definition", "C", new Opens("plane/framingFraction"));
    }

    private static void Conditions(WorkingSheet sheet, Setting setting)
    {
        void Air(string quantity, Temperature at, string origin, string member) => sheet.Add(
            "conditions", quantity, setting.Origins[origin].Formula, [], at.TotalCelsius, "°C",
            setting.Origins[origin].Source, setting.Origins[origin].Mark,
            Opens.Fahrenheit("conditions/" + member));
        Air("winter, room air", setting.RealSite.Winter.Room,
            setting.IsUnheated ? "winter-design" : "room-winter", "winterRoomF");
        Air("winter, outdoor air", setting.Site.Winter.Outside, "winter-design",
            "winterOutdoorsF");
        Air("summer, room air", setting.Site.Summer.Room, "room-summer", "summerRoomF");
        Air("summer, outdoor air", setting.SummerAirTemperature, "summer-design",
            "summerOutdoorsF");
        sheet.Add(
            "conditions", "summer, sol-air temperature", "t = t_out + (α/ho)·I − ε·ΔR/ho",
            [
                new("t_out", setting.SummerAirTemperature.TotalCelsius, "°C"),
                new("α/ho", SolAir.AbsorptanceOverHo(setting.Colour), "m²·K/W"),
                new("I", setting.SunWPerM2, "W/m²"),
                new("ε·ΔR/ho", setting.SkyKelvins, "K"),
            ],
            setting.Site.Summer.Outside.TotalCelsius, "°C", "ASHRAE HoF 2021 ch. 18", "M",
            Opens.Fahrenheit("conditions/summerSolAirF"));
        if (setting.DegreeDaysK is { } days)
            sheet.Add(
                "conditions", "heating degree days to the balance point",
                setting.Origins["degree-days"].Formula, setting.DegreeDayInputs, days, "K·d",
                setting.Origins["degree-days"].Source, setting.Origins["degree-days"].Mark,
                Opens.Difference("conditions/heatingDegreeDaysF"));
    }

    private static void Burner(WorkingSheet sheet, BurnerVapour burner)
    {
        sheet.Add(
            "room", "water of the heater without a flue", "G = w·P·3600/10⁶/1000",
            [
                new("w", burner.GramsPerMegajoule, "g/MJ"), new("P", burner.Asked.InputW, "W"),
            ],
            burner.WaterKgPerHour, "kg/h",
            "chemistry of complete combustion, heating values from memory", "M",
            new Opens("roomAir/burnerWaterKgPerHour"));
        sheet.Add(
            "room", "vapour it keeps up in the room", "Δp = min(4000, G·Rv·T/(n·V))",
            [
                new("G", burner.WaterKgPerHour, "kg/h"), new("Rv", 461.5, "J/(kg·K)"),
                new("T", burner.Room.TotalKelvin, "K"),
                new("n", burner.Asked.AirChangesPerHour, "1/h"),
                new("V", burner.Asked.VolumeM3, "m³"),
            ],
            burner.ExcessPa, "Pa", "ISO 13788:2012 clause 4 and the gas law", "C",
            new Opens("roomAir/burnerExcessPa"));
    }

    private static void RoomAir(WorkingSheet sheet, SharedAir air, Setting setting)
    {
        sheet.Add(
            "room", "vapour the use keeps up when it freezes outdoors",
            setting.Origins["moisture"].Formula, [], air.Room.ColdExcessPa, "Pa",
            setting.Origins["moisture"].Source, setting.Origins["moisture"].Mark,
            new Opens("roomAir/coldExcessPa"));
        State(sheet, "winter design", air.Design, air.Room, "roomAir/atDesign/",
            "outdoor air at 80 % relative humidity, own assumption", "A");
        foreach (var (state, i) in air.Months.Select((state, i) => (state, i)))
        {
            var home = $"roomAir/months/{i}/";
            Outdoors(sheet, "room", state.Outdoors.Month, state.Outdoors.Mean, setting,
                Opens.Fahrenheit(home + "outdoorsF"));
            RoomInMonth(sheet, "room", state.Outdoors.Month, state.Outdoors.Mean, state.At,
                setting, Opens.Fahrenheit(home + "roomF"));
            State(sheet, Conclusions.MonthOf(state.Outdoors.Month), state, air.Room, home,
                Station + "; p_out at most saturated at t_out", "R");
        }
    }

    private static void State(
        WorkingSheet sheet, string name, AirState state, RoomAir room, string home,
        string outdoorSource, string mark)
    {
        sheet.Add(
            "room", $"{name}: vapour pressure of the room air",
            "p = min(p_out + (Δp_use + Δp_burner)·clamp(1 − t_out/20, 0, 1), psat(t_room))",
            [
                new("p_out", state.Outdoors.VapourPressurePa, "Pa"),
                new("t_out", state.Outdoors.Mean.TotalCelsius, "°C"),
                new("Δp_use", room.ColdExcessPa, "Pa"),
                new("Δp_burner", room.BurnerExcessPa, "Pa"),
                new("psat(t_room)", Vapour.Saturation(state.At), "Pa"),
            ],
            state.Pa, "Pa", "ISO 13788:2012 Annex A, from memory; " + outdoorSource,
            mark == "R" ? "M" : mark, new Opens(home + "vapourPa"));
        sheet.Add(
            "room", $"{name}: relative humidity", "φ = 100·p/psat(t_room)",
            [new("p", state.Pa, "Pa"), new("psat(t_room)", Vapour.Saturation(state.At), "Pa")],
            100 * state.Rh, "% RH", "ISO 13788:2012 equations E.7, E.8", "R",
            new Opens(home + "rhPercent"));
        sheet.Add(
            "room", $"{name}: {(state.IsFrost ? "frost point" : "dew point")}",
            state.IsFrost
                ? "θ = 265.5·L/(21.875 − L), L = ln(p/610.5)"
                : "θ = 237.3·L/(17.269 − L), L = ln(p/610.5)",
            [new("p", state.Pa, "Pa")], state.DewPoint.TotalCelsius, "°C",
            "ISO 13788:2012 equations E.9, E.10", "R", Opens.Fahrenheit(home + "dewPointF"));
    }

    /// <summary>A month's outdoor mean.</summary>
    public static void Outdoors(
        WorkingSheet sheet, string part, int month, Temperature at, Setting setting,
        Opens opens) => sheet.Add(
            part, $"{Conclusions.MonthOf(month)}: outdoor air",
            "monthly mean of station " + setting.Input.Climate.Found?.Station?.Wmo, [],
            at.TotalCelsius, "°C", Station, "R", opens);

    /// <summary>The room in a month: outdoor air, but never below the heating.</summary>
    public static void RoomInMonth(
        WorkingSheet sheet, string part, int month, Temperature outdoors, Temperature room,
        Setting setting, Opens opens) => sheet.Add(
            part, $"{Conclusions.MonthOf(month)}: room air",
            setting.IsUnheated ? "t = t_out" : "t = max(t_out, t_heated)",
            [
                new("t_out", outdoors.TotalCelsius, "°C"),
                .. setting.IsUnheated
                    ? Array.Empty<WorkingInput>()
                    : [new("t_heated", setting.Site.Winter.Room.TotalCelsius, "°C")],
            ],
            room.TotalCelsius, "°C",
            "ISO 13788:2012 clause 4: the heating keeps at least its set point", "R", opens);
}
