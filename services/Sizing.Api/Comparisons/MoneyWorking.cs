using PostFrame.Engine.Heat;

namespace PostFrame.SizingApi.Comparisons;

/// <summary>Opens code, price, energy and payback of a line.</summary>
internal static class MoneyWorking
{
    private const string IpU = "Btu/(h·ft²·°F)";
    private const string DegreeDayMethod =
        "ASHRAE HoF degree-day method, degree days to the balance point";
    private const double WPerBtuH = 0.29307107;

    public static void Add(WorkingSheet sheet, RebuiltLine line, Setting setting)
    {
        if (line.Code is { Limit: { } limit, MarginU: { } margin, Row: { } row })
        {
            sheet.Add(
                "code", "U-factor limit of the row", "as tabulated", [], limit.TotalUFactor, IpU,
                $"{row.Standard} {row.Edition}, {row.Table}; {row.Source}",
                WriteHeat.MarkOf(row)!, new Opens("code/limitU"));
            sheet.Add(
                "code", "margin, positive in hand", "ΔU = U_limit − U",
                [
                    new("U_limit", limit.TotalUFactor, IpU),
                    new("U", line.U!.Value.TotalUFactor, IpU),
                ],
                margin, IpU, "difference of whole assemblies, films and framing included", "C",
                new Opens("code/marginU"));
        }
        if (line.Asked.Price is { } price)
            sheet.Add(
                "price", "price per covered ft²", price.Formula, price.Inputs, price.PerFt2,
                "per ft²", price.Source, price.Mark, new Opens("price/perFt2"));
        if (line.Year is { } year) Plane(sheet, line, year, setting);
        // As in Energy.Body: where nothing heats and no fuel is told there is no figure to open.
        if (line.Whole is { } whole && (line.Year is not null || !setting.IsUnheated))
            Building(sheet, line, whole, setting);
        foreach (var (payback, i) in line.Paybacks.Select((payback, i) => (payback, i)))
            Paid(sheet, payback, $"energy/paybacks/{i}/");
    }

    private static void Plane(
        WorkingSheet sheet, RebuiltLine line, HeatingYear year, Setting setting)
    {
        var fuel = setting.Input.Fuel!;
        if (setting.IsUnheated)
            sheet.Add("energy", "heat through the plane in a year", "nothing heats it: none", [],
                0, "kWh", "the request", "G", new Opens("energy/heatKWh"));
        else
            sheet.Add(
                "energy", "heat through the plane in a year", "Q = 24·U·A·HDD/1000",
                [
                    new("U", line.U!.Value.TotalSi, "W/(m²·K)"),
                    new("A", setting.Input.Area!.Value.TotalSquareMetres, "m²"),
                    new("HDD", setting.DegreeDaysK!.Value, "K·d"),
                ],
                year.HeatKWh, "kWh", DegreeDayMethod, "R", new Opens("energy/heatKWh"));
        Fuel(sheet, "the plane", year, fuel, "energy/fuelUnits", "energy/cost");
    }

    private static void Fuel(
        WorkingSheet sheet, string of, HeatingYear year, FuelAsked fuel, string units, string cost)
    {
        sheet.Add(
            "energy", $"fuel for {of} in a year", "fuel = Q/(η·HV)",
            [
                new("Q", year.HeatKWh, "kWh"), new("η", fuel.Efficiency, ""),
                new("HV", year.KWhPerUnit, "kWh per " + year.Unit),
            ],
            year.FuelUnits, year.Unit,
            "heating values: gas 100 000 Btu/therm, propane 91 330, No. 2 oil 138 690 Btu/gal "
                + "(read), electricity 3412 Btu/kWh", "R", new Opens(units));
        if (fuel.PricePerUnit is { } price)
            sheet.Add(
                "energy", $"cost of {of} in a year", "cost = fuel·price",
                [
                    new("fuel", year.FuelUnits, year.Unit),
                    new("price", price, "per " + year.Unit),
                ],
                year.FuelUnits * price, "money", "price as given by the caller", "G",
                new Opens(cost));
    }

    private static void Building(
        WorkingSheet sheet, RebuiltLine line, BuildingLoss whole, Setting setting)
    {
        var building = setting.Input.Building!;
        var area = setting.Input.Area!.Value.TotalSquareMetres;
        sheet.Add(
            "energy", "loss of the building", "H = Σ U·A + 1.2/3.6·V̇ + 1.4·P",
            [
                new("U·A of the plane", line.U!.Value.TotalSi * area, "W/K"),
                .. building.Others.Select(element => new WorkingInput(
                    "U·A of " + element.Name, element.AreaM2 * element.U.TotalSi, "W/K")),
                new("V̇", building.AirM3PerHour ?? 0, "m³/h"),
                new("P", building.SlabEdgeM, "m"),
            ],
            whole.TotalWPerK, "W/K",
            "ASHRAE HoF 2021 ch. 18 (1.2 W/K per L/s) and slab edge 1.4 W/(m·K), read", "R",
            new Opens("energy/buildingLossBtuPerHF", 1 / WPerBtuH / 1.8));
        if (setting.IsUnheated) return;
        if (!setting.IsWinterAssumed) Load(sheet, whole, setting);
        if (line.WholeYear is not { } year) return;
        sheet.Add(
            "energy", "heat of the building in a year", "Q = 24·H·HDD/1000",
            [
                new("H", whole.TotalWPerK, "W/K"),
                new("HDD", setting.DegreeDaysK!.Value, "K·d"),
            ],
            year.HeatKWh, "kWh", DegreeDayMethod, "R");
        Fuel(sheet, "the building", year, setting.Input.Fuel!, "energy/buildingFuelUnits",
            "energy/buildingCost");
    }

    private static void Load(WorkingSheet sheet, BuildingLoss whole, Setting setting)
    {
        var winter = setting.Site.Winter;
        sheet.Add(
            "energy", "design load of the building", "Φ = H·(t_room − t_out)",
            [
                new("H", whole.TotalWPerK, "W/K"), new("t_room", winter.Room.TotalCelsius, "°C"),
                new("t_out", winter.Outside.TotalCelsius, "°C"),
            ],
            whole.DesignLoadW(winter.Room, winter.Outside), "W", "ASHRAE HoF 2021 ch. 18", "R",
            new Opens("energy/buildingDesignLoadBtuPerH", 1 / WPerBtuH));
    }

    private static void Paid(WorkingSheet sheet, ComparedPayback payback, string home)
    {
        sheet.Add(
            "payback", "costs more by", "(price − price_other)·A",
            [
                new("price", payback.Own, "per ft²"),
                new("price_other", payback.Other, "per ft²"),
                new("A", payback.AreaFt2, "ft²"),
            ],
            payback.Result.ExtraCost, "money", "prices of both lines", "C",
            new Opens(home + "extraCost"));
        if (payback.IsUnheated)
            sheet.Add("payback", "saves a year", "nothing heats it: nothing", [], 0, "money",
                "the request", "G", new Opens(home + "yearlySaving"));
        else
            sheet.Add(
                "payback", "saves a year", "(fuel_other − fuel)·price",
                [
                    new("fuel", payback.Fuel, payback.Unit),
                    new("fuel_other", payback.OtherFuel, payback.Unit),
                    new("price", payback.FuelPrice, "per " + payback.Unit),
                ],
                payback.Result.YearlySaving, "money", "fuel of both lines, price as given", "C",
                new Opens(home + "yearlySaving"));
        if (payback.Result.Years is { } years)
            sheet.Add(
                "payback", "simple payback", "years = extra/saving",
                [
                    new("extra", payback.Result.ExtraCost, "money"),
                    new("saving", payback.Result.YearlySaving, "money"),
                ],
                years, "a", "simple payback, without interest or rising prices; savings vary",
                "C", new Opens(home + "years"));
    }
}
