using PostFrame.Engine.Heat;
using PostFrame.Engine.Quantities;

namespace PostFrame.SizingApi.Comparisons;

/// <summary>
/// What every line is rebuilt in, with each default said. The caller's own values win over the
/// station's, the station's over the stated defaults.
/// </summary>
internal sealed class Setting
{
    private const double DefaultSunOnRoof = 900;
    private const double DefaultSunOnWall = 500;

    private readonly List<AssumptionLine> _assumptions = [];
    private readonly List<QuestionLine> _questions = [];

    public Setting(ComparisonInput input)
    {
        Input = input;
        var (winter, summer) = (WinterAir(), SummerAir());
        var heated = input.Room.HeatedTo ?? Assumed(
            IsUnheated ? "rating-room" : "room-winter",
            IsUnheated
                ? "Nothing heats it: the room follows the outdoor air. Its winter R and U are "
                    + "rated as if the room were at"
                : "Room air in winter",
            Temperature.FromFahrenheit(70));
        var cooled = input.Room.CooledTo ?? Assumed(
            "room-summer", "Room air in summer", Temperature.FromFahrenheit(75));
        SummerAirTemperature = summer;
        Site = new PlaneSite
        {
            SlopeDegrees = input.SlopeDegrees,
            Framing = input.Framing,
            Basis = input.Basis,
            Winter = At(heated, winter, Season.Winter),
            Summer = At(cooled, SolAirOf(summer), Season.Summer),
        };
        Zone = ZoneOf();
        Months = input.Climate.Found?.Months?.Select(month => new OutdoorMonth(
            month.Month, Temperature.FromCelsius(month.MeanTemperatureC),
            month.MeanVapourPressurePa)).ToList();
        Room = RoomOf();
        DegreeDaysK = DegreeDays();
        AskForTheRest();
    }

    public ComparisonInput Input { get; }

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

    public bool IsUnheated => Input.Room.Heated is false;

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

    private Temperature WinterAir()
    {
        if (Input.Climate.Winter is { } own) return own;
        if (Input.Climate.Found?.DesignTemperatures is { } station)
        {
            Assume("winter-design", "Outdoor air in winter: the station's 99 % value of a typical "
                + "year. Subtract 3.6 °F for sizing a heater", station.Heating99F, "°F", "R");
            return Temperature.FromCelsius(station.Heating99C);
        }
        return Assumed("winter-design", "Outdoor air in winter", Temperature.FromFahrenheit(20));
    }

    private Temperature SummerAir()
    {
        if (Input.Climate.Summer is { } own) return own;
        if (Input.Climate.Found?.DesignTemperatures is { } station)
        {
            Assume("summer-design", "Outdoor air in summer: the station's 1 % value of a typical "
                + "year", station.Cooling1F, "°F", "R");
            return Temperature.FromCelsius(station.Cooling1C);
        }
        return Assumed("summer-design", "Outdoor air in summer", Temperature.FromFahrenheit(95));
    }

    private Temperature SolAirOf(Temperature air)
    {
        var sun = Input.Climate.SunWPerM2;
        if (sun is null)
        {
            sun = Input.IsWall ? DefaultSunOnWall : DefaultSunOnRoof;
            Assume("sun", "Sun on the plane on a clear summer day", sun.Value, "W/m²", "A");
        }
        var colour = Input.Colour;
        if (colour is null)
        {
            colour = SurfaceColour.Medium;
            Assume("colour", "Outside colour between light and dark: α/ho",
                SolAir.AbsorptanceOverHo(colour.Value), "m²·K/W", "A");
        }
        return SolAir.Of(
            air, sun.Value, colour.Value, Input.IsWall ? 0 : SolAir.FlatSkyKelvins);
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
        if (excess is null && room.Use is { } use)
        {
            excess = IndoorMoisture.ColdExcessPa(use);
            Assume("moisture", "Vapour the use gives to the room air when it freezes outdoors "
                + "(ISO 13788 humidity classes; which use is which is assumed)",
                excess.Value, "Pa", "A");
        }
        if (excess is not { } cold || room.Heated is null) return null;
        var heatedTo = room.Heated.Value ? Site.Winter.Room : (Temperature?)null;
        return new RoomAir
        {
            HeatedTo = heatedTo,
            ColdExcessPa = cold,
            BurnerExcessPa = room.Burner is { } burner ? BurnerExcess(burner) : 0,
        };
    }

    private double BurnerExcess(BurnerAsked burner)
    {
        const double most = 4000;
        var excess = IndoorMoisture.ExcessOfWaterPa(
            IndoorMoisture.BurnerWaterKgPerHour(burner.Fuel, burner.InputW),
            burner.AirChangesPerHour, burner.VolumeM3, RealSite.Winter.Room);
        var kept = Math.Min(most, excess);
        Assume(
            "burner",
            "Vapour the heater without a flue keeps up in the room"
                + (excess > most
                    ? FormattableString.Invariant($"; computed {excess:0}, held to the most this ")
                        + "reckons with. Such a room is wet whatever the insulation"
                    : ""),
            Math.Round(kept), "Pa", "C");
        return kept;
    }

    private double? DegreeDays()
    {
        if (Input.Climate.DegreeDaysK is { } own) return own;
        if (Input.Fuel is not { } fuel || Input.Climate.Found?.DegreeDays is not { } days)
            return null;
        if (fuel.Balance is not { } balance)
        {
            _questions.Add(new("/fuel/balancePoint", "Down to which outdoor temperature is no "
                + "heating needed? Usually the room temperature less 3 to 15 °F of free heat; 50 "
                + "to 65 °F, or give heatingDegreeDays."));
            return null;
        }
        return new DegreeDayTable(
            days.Heating65FDays, days.Heating60FDays, days.Heating55FDays, days.Heating50FDays)
            .ToBalancePointK(Math.Clamp(balance.TotalFahrenheit, 50, 65));
    }

    private void AskForTheRest()
    {
        if (Months is null)
            _questions.Add(new("/climate", "Where does it stand? A postal code, county or station "
                + "gives the months for moisture."));
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

    private Temperature Assumed(string id, string text, Temperature value)
    {
        Assume(id, text, Math.Round(value.TotalFahrenheit, 1), "°F", "A");
        return value;
    }

    private void Assume(string id, string text, double value, string unit, string mark) =>
        _assumptions.Add(new(id, text, value, unit, mark));
}
