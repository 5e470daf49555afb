using PostFrame.Engine.Heat;
using PostFrame.Engine.Quantities;
using PostFrame.SizingApi.Climate;

namespace PostFrame.SizingApi.Comparisons;

/// <summary>
/// What every line is rebuilt in, with each default said. The caller's own values win over the
/// station's, the station's over the stated defaults.
/// </summary>
internal sealed class Setting
{
    private const double DefaultSunOnRoof = 900;
    private const double DefaultSunOnWall = 500;
    private const string Own = "own assumption";
    private const string StationSource =
        "NREL TMY3, 1991–2005, Wilcox and Marion, NREL/TP-581-43156; computed from its hours";

    private readonly List<AssumptionLine> _assumptions = [];
    private readonly List<QuestionLine> _questions = [];
    private readonly Dictionary<string, Origin> _origins = [];
    private IReadOnlyList<WorkingInput> _degreeDayInputs = [];

    public Setting(ComparisonInput input)
    {
        Input = input;
        Words = input.IsMetric ? UnitWords.Metric : UnitWords.Us;
        var (winter, summer) = (WinterAir(), SummerAir());
        var heated = input.Room.HeatedTo ?? Assumed(
            IsUnheated ? "rating-room" : "room-winter", "room-winter",
            IsUnheated
                ? "Nothing heats it: the room follows the outdoor air. Its winter R and U are "
                    + "rated as if the room were at"
                : "Room air in winter",
            Temperature.FromFahrenheit(70));
        var cooled = input.Room.CooledTo ?? Assumed(
            "room-summer", "room-summer", "Room air in summer", Temperature.FromFahrenheit(75));
        if (input.Room.HeatedTo is not null) Given("room-winter", heated);
        if (input.Room.CooledTo is not null) Given("room-summer", cooled);
        SummerAirTemperature = summer;
        Site = new PlaneSite
        {
            SlopeDegrees = input.SlopeDegrees,
            Framing = input.Framing,
            Basis = input.Basis,
            Words = Words,
            Winter = At(heated, winter, Season.Winter),
            Summer = At(cooled, SolAirOf(summer), Season.Summer),
        };
        TellSlope();
        Zone = ZoneOf();
        Months = input.Climate.Found?.Months?.Select(OutdoorsOf).ToList();
        Room = RoomOf();
        RoomAir = Room is { } air ? SharedAir.Of(air, RealSite.Winter.Outside, Months) : null;
        DegreeDaysK = DegreeDays();
        AskForTheRest();
    }

    public ComparisonInput Input { get; }

    public UnitWords Words { get; }

    public PlaneSite Site { get; }

    /// <summary>The site with the winter room as it is: as cold as outdoors if unheated.</summary>
    public PlaneSite RealSite => IsUnheated
        ? Site with { Winter = Site.Winter with { Room = Site.Winter.Outside } }
        : Site;

    public Temperature SummerAirTemperature { get; }

    public string? Zone { get; }

    public IReadOnlyList<OutdoorMonth>? Months { get; }

    public RoomAir? Room { get; }

    public double? DegreeDaysK { get; }

    public IReadOnlyList<WorkingInput> DegreeDayInputs => _degreeDayInputs;

    /// <summary>The room air in numbers; null where use or heating is not known.</summary>
    public SharedAir? RoomAir { get; }

    /// <summary>What a heater without a flue gives; null where there is none.</summary>
    public BurnerVapour? Burner { get; private set; }

    public double SunWPerM2 { get; private set; }

    public SurfaceColour Colour { get; private set; }

    public double SkyKelvins => Input.IsWall ? 0 : SolAir.FlatSkyKelvins;

    /// <summary>Where each value of the setting comes from, by name.</summary>
    public IReadOnlyDictionary<string, Origin> Origins => _origins;

    public bool IsUnheated => Input.Room.Heated is false;

    /// <summary>True where neither a place nor a winter temperature was told.</summary>
    public bool IsWinterAssumed => _origins["winter-design"].Mark == "A";

    /// <summary>True where what it is heated to was said, or that nothing heats it.</summary>
    public bool KnowsHeating => IsUnheated || Input.Room.HeatedTo is not null;

    /// <summary>
    /// Why the zone may be another in the edition asked for; null where nothing speaks for it.
    /// </summary>
    public string? ZoneDoubt => Input is { Climate.Zone: null, Code: { } code }
        && (code.Standard != "IECC commercial" || code.Edition == "2021")
            ? $"Zone {Zone} is of the county map of IECC 2006 to 2018; {code.Standard} "
                + $"{code.Edition} has the newer map, where about a tenth of the counties lie in "
                + "another zone (from memory). Confirm the zone, or send it."
            : null;

    public IReadOnlyList<AssumptionLine> Assumptions => _assumptions;

    public IReadOnlyList<QuestionLine> Questions => _questions;

    private Conditions At(Temperature room, Temperature outside, Season season) => new()
    {
        Room = room,
        Outside = outside,
        Season = season,
        Basis = Input.Basis,
    };

    /// <summary>
    /// A rule of our own in every film and air space is said before the figures; claims of
    /// reflective sheets are held against the ASHRAE tables on every basis.
    /// </summary>
    private void TellSlope()
    {
        bool IsOwn(CalculationBasis basis) =>
            !Films.FlowThrough(basis, Input.SlopeDegrees, Season.Winter).IsPrinted;
        var everywhere = IsOwn(Input.Basis);
        if (!everywhere && !(IsOwn(CalculationBasis.Ashrae) && Input.Lines.Any(line =>
            line.Candidate is { IsReflective: true, ClaimedR: not null })))
            return;
        Assume(
            "slope", "slope",
            (everywhere ? "Films and air spaces" : "What a reflective sheet is claimed to reach")
                + " on this slope: " + FlowDirection.OwnRule + ", 0°, 45° and 90°"
                + (everywhere ? ". The iso6946 basis has a rule of its own" : ""),
            Math.Round(Input.SlopeDegrees, 2), "°", Own, "A");
    }

    /// <summary>Air of the mean temperature holds no more than saturation.</summary>
    private static OutdoorMonth OutdoorsOf(ClimateMonth month)
    {
        var mean = Temperature.FromCelsius(month.MeanTemperatureC);
        return new(
            month.Month, mean, Math.Min(month.MeanVapourPressurePa, Vapour.Saturation(mean)));
    }

    private Temperature WinterAir()
    {
        if (Input.Climate.Winter is { } own) return Given("winter-design", own);
        if (Input.Climate.Found?.DesignTemperatures is { } station)
        {
            Assume("winter-design", "winter-design", "Outdoor air in winter: the station's 99 % "
                + "value of a typical year. Subtract 3.6 °F (2 K) for sizing a heater",
                station.Heating99F, "°F", StationSource, "R");
            return Temperature.FromCelsius(station.Heating99C);
        }
        return Assumed("winter-design", "winter-design", "Outdoor air in winter",
            Temperature.FromFahrenheit(20));
    }

    private Temperature SummerAir()
    {
        if (Input.Climate.Summer is { } own) return Given("summer-design", own);
        if (Input.Climate.Found?.DesignTemperatures is { } station)
        {
            Assume("summer-design", "summer-design", "Outdoor air in summer: the station's 1 % "
                + "value of a typical year", station.Cooling1F, "°F", StationSource, "R");
            return Temperature.FromCelsius(station.Cooling1C);
        }
        return Assumed("summer-design", "summer-design", "Outdoor air in summer",
            Temperature.FromFahrenheit(95));
    }

    private Temperature SolAirOf(Temperature air)
    {
        if (Input.Climate.SunWPerM2 is { } sun) SunWPerM2 = sun;
        else
        {
            SunWPerM2 = Input.IsWall ? DefaultSunOnWall : DefaultSunOnRoof;
            Assume("sun", "sun", "Sun on the plane on a clear summer day", SunWPerM2, "W/m²",
                Own, "A");
        }
        if (Input.Colour is { } colour) Colour = colour;
        else
        {
            Colour = SurfaceColour.Medium;
            Assume("colour", "colour", "Outside colour between light and dark: α/ho",
                SolAir.AbsorptanceOverHo(Colour), "m²·K/W",
                "half way between the values of ASHRAE HoF 2021 ch. 18, from memory", "A");
        }
        return SolAir.Of(air, SunWPerM2, Colour, SkyKelvins);
    }

    private string? ZoneOf()
    {
        if (Input.Climate.Zone is { } own) return own;
        if (Input.Climate.Found is not { } found) return null;
        if (!found.Ambiguous) return found.Zone;
        _questions.Add(new("/climate/zone", "The place lies in zones "
            + $"{string.Join(" and ", found.ZonesIfAmbiguous ?? [found.Zone])}. Which county does "
            + "the building stand in, and which zone is it?"));
        return null;
    }

    private RoomAir? RoomOf()
    {
        var room = Input.Room;
        double? excess = room.ExcessPa;
        if (excess is not null) _origins["moisture"] = Origin.Given;
        else if (room.Use is { } use)
        {
            excess = IndoorMoisture.ColdExcessPa(use);
            Assume("moisture", "moisture", "Vapour the use gives to the room air when it freezes "
                + "outdoors (ISO 13788 humidity classes; which use is which is assumed)",
                excess.Value, "Pa", "ISO 13788:2012 Annex A, from memory", "A");
        }
        if (excess is not { } cold || room.Heated is null) return null;
        if (room.Burner is { } burner) Burner = BurnerVapour.Of(burner, RealSite.Winter.Room);
        if (Burner is { } vapour)
            Assume(
                "burner", "burner",
                "Vapour the heater without a flue keeps up in the room"
                    + (vapour.ComputedPa > BurnerVapour.MostPa
                        ? FormattableString.Invariant(
                            $"; computed {vapour.ComputedPa:0}, held to the most this ")
                            + "reckons with. Such a room is wet whatever the insulation"
                        : ""),
                Math.Round(vapour.ExcessPa), "Pa",
                "ISO 13788:2012 clause 4, the gas law, and the chemistry of combustion", "C");
        return new RoomAir
        {
            HeatedTo = room.Heated.Value ? Site.Winter.Room : (Temperature?)null,
            ColdExcessPa = cold,
            BurnerExcessPa = Burner?.ExcessPa ?? 0,
        };
    }

    private double? DegreeDays()
    {
        if (Input.Climate.DegreeDaysK is { } own)
        {
            _origins["degree-days"] = Origin.Given;
            return own;
        }
        if (Input.Fuel is not { } fuel || Input.Climate.Found?.DegreeDays is not { } days)
            return null;
        if (fuel.Balance is not { } balance)
        {
            _questions.Add(new("/fuel/balancePoint", "Down to which outdoor temperature is no "
                + "heating needed? Usually the room temperature less 3 to 15 °F of free heat; 50 "
                + "to 65 °F, or give heatingDegreeDays."));
            return null;
        }
        _origins["degree-days"] = new(
            "HDD = (straight between the bases at t_balance)/1.8", StationSource, "R");
        _degreeDayInputs =
        [
            new("t_balance", balance.TotalFahrenheit, "°F"),
            new("HDD50", days.Heating50FDays, "°F·d"), new("HDD55", days.Heating55FDays, "°F·d"),
            new("HDD60", days.Heating60FDays, "°F·d"), new("HDD65", days.Heating65FDays, "°F·d"),
        ];
        return new DegreeDayTable(
            days.Heating65FDays, days.Heating60FDays, days.Heating55FDays, days.Heating50FDays)
            .ToBalancePointK(Math.Clamp(balance.TotalFahrenheit, 50, 65));
    }

    private void AskForTheRest()
    {
        if (Months is null)
            _questions.Add(new("/climate", "Where does it stand? A postal code, county or station "
                + "gives the months for moisture."));
        if (IsWinterAssumed)
            _questions.Add(new("/climate/winterDesign", "How cold is it outdoors at winter design? "
                + $"Nothing near is known; {Words.Of(Site.Winter.Outside)} stands in its place "
                + "until it is said."));
        if (Input.Room.Use is null && Input.Room.ExcessPa is null)
            _questions.Add(new("/room/use", "What is it used for: dryStorage, workshop, dwelling, "
                + "livestock or washBay? Or give moistureExcess."));
        if (Input.Room is { Heated: true, HeatedTo: null })
            _questions.Add(new("/room/heatedTo", "To what is it heated? The fuel and the design "
                + "load hang on it."));
        if (Input.Room.Heated is null)
            _questions.Add(new("/room/heated", "Is it heated, and to what?"));
        if (Input.Code is null)
            _questions.Add(new("/code", "Which code and edition is adopted there, and is the "
                + "building conditioned, semiheated or neither?"));
        else if (Zone is null && Input.Climate.Found is null)
            _questions.Add(new("/climate/zone", "Which climate zone is it?"));
        if (Input.Fuel is null && !IsUnheated)
            _questions.Add(new("/fuel", "What is it heated with, and at what price?"));
    }

    private Temperature Given(string origin, Temperature value)
    {
        _origins[origin] = Origin.Given;
        return value;
    }

    private Temperature Assumed(string id, string origin, string text, Temperature value)
    {
        Assume(id, origin, text, Math.Round(value.TotalFahrenheit, 1), "°F", Own, "A");
        return value;
    }

    private void Assume(
        string id, string origin, string text, double value, string unit, string source,
        string mark)
    {
        _assumptions.Add(new(id, text, value, unit, source, mark));
        _origins[origin] = new(mark == "R" ? "of the station" : "assumed", source, mark);
    }
}

/// <summary>Where a value of the setting comes from.</summary>
internal sealed record Origin(string Formula, string Source, string Mark)
{
    public static Origin Given { get; } = new("as given", "the request", "G");
}
