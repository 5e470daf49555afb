using PostFrame.Engine.Heat;

namespace PostFrame.SizingApi.Comparisons;

/// <summary>A payback with what went into it.</summary>
/// <param name="Against">Id of the cheaper line.</param>
internal sealed record ComparedPayback(
    string Against, double Own, double Other, double AreaFt2, double Fuel, double OtherFuel,
    double FuelPrice, string Unit, bool IsUnheated, Payback Result)
{
    /// <summary>Names the price list where one stands behind the result; else nothing.</summary>
    public string Prices { get; init; } = "";
}

/// <summary>
/// What each line costs to heat, for this plane and for the building where it is told.
/// </summary>
internal static class Energy
{
    public static IReadOnlyList<RebuiltLine> With(
        IReadOnlyList<RebuiltLine> lines, Setting setting)
    {
        if (setting.Input.Area is null || !setting.KnowsHeating) return lines;
        var reckoned = lines.Select(line => Reckoned(line, setting)).ToList();
        return [.. reckoned.Select((line, i) =>
            line with { Paybacks = [.. Paybacks(i, reckoned, setting)] })];
    }

    private static RebuiltLine Reckoned(RebuiltLine line, Setting setting)
    {
        if (line.U is not { } u) return line;
        var whole = Building(line, setting);
        var area = setting.Input.Area!.Value.TotalSquareMetres;
        return line with
        {
            Whole = whole,
            Year = YearOf(setting.IsUnheated ? 0 : u.TotalSi * area, setting),
            WholeYear = whole is null || setting.IsUnheated
                ? null
                : YearOf(whole.TotalWPerK, setting),
        };
    }

    private static HeatingYear? YearOf(double lossWPerK, Setting setting) =>
        setting is { Input.Fuel: { } fuel, DegreeDaysK: { } days }
            ? HeatingYear.Of(lossWPerK, days, fuel.Kind, fuel.Efficiency)
            : null;

    /// <summary>What the building loses needs no fuel and no year.</summary>
    public static EnergyLine? Body(RebuiltLine line, Setting setting)
    {
        if (line.Year is null && (line.Whole is null || setting.IsUnheated)) return null;
        var price = setting.Input.Fuel?.PricePerUnit;
        return new(
            line.Year is { } heat ? WriteHeat.Rounded(heat.HeatKWh, 0) : null,
            Fuel(line.Year),
            line.Year?.Unit,
            Cost(line.Year, price),
            line.Whole is { } whole ? WriteHeat.Rounded(whole.TotalBtuPerHourF, 1) : null,
            line.Whole is { } loss ? DesignLoad(loss, setting) : null,
            Fuel(line.WholeYear),
            Cost(line.WholeYear, price),
            [.. line.Paybacks.Select(payback => new PaybackLine(
                payback.Against,
                WriteHeat.Rounded(payback.Result.ExtraCost, 2),
                WriteHeat.Rounded(payback.Result.YearlySaving, 2),
                payback.Result.Years is { } years ? WriteHeat.Rounded(years, 1) : null,
                payback.Result.Text + payback.Prices))]);
    }

    private static double? Fuel(HeatingYear? year) =>
        year is null ? null : WriteHeat.Rounded(year.FuelUnits, 1);

    private static double? Cost(HeatingYear? year, double? price) =>
        year is not null && price is { } each ? WriteHeat.Rounded(year.FuelUnits * each, 2) : null;

    /// <summary>[Btu/h]; none where nothing heats or nobody knows the winter.</summary>
    private static double? DesignLoad(BuildingLoss whole, Setting setting)
    {
        var winter = setting.Site.Winter;
        return setting.IsUnheated || setting.IsWinterAssumed
            ? null
            : WriteHeat.Rounded(whole.DesignLoadW(winter.Room, winter.Outside) / 0.29307107, 0);
    }

    private static BuildingLoss? Building(RebuiltLine line, Setting setting) =>
        setting.Input.Building is not { } building || line.U is not { } u
            ? null
            : BuildingLoss.Of(
                [
                    new LossElement(
                        line.Name, setting.Input.Area!.Value.TotalSquareMetres, u),
                    .. building.Others,
                ],
                building.AirM3PerHour ?? 0, building.SlabEdgeM);

    /// <summary>
    /// Against every cheaper line, where both prices and the fuel's price are known.
    /// </summary>
    private static IEnumerable<ComparedPayback> Paybacks(
        int index, IReadOnlyList<RebuiltLine> lines, Setting setting)
    {
        var area = setting.Input.Area!.Value.TotalSquareFeet;
        if (setting.Input.Fuel?.PricePerUnit is not { } fuelPrice
            || lines[index] is not { Year: { } year, Asked.PricePerFt2: { } own })
            yield break;
        foreach (var (line, i) in lines.Select((line, i) => (line, i)))
        {
            if (i == index || line is not { Year: { } theirs, Asked.PricePerFt2: { } price }
                || price >= own)
                continue;
            var saving = (theirs.FuelUnits - year.FuelUnits) * fuelPrice;
            yield return new(
                line.Id, own, price, area, year.FuelUnits, theirs.FuelUnits, fuelPrice,
                year.Unit, setting.IsUnheated,
                Payback.Of((own - price) * area, saving, !setting.IsUnheated))
            {
                Prices = setting.Input.Prices is { } list
                    && (IsListed(lines[index]) || IsListed(line))
                    ? $" Prices by the list \"{list.Id}\", version {list.Version}."
                    : "",
            };
        }
    }

    private static bool IsListed(RebuiltLine line) => line.Asked.Price is { Origin: "list" };
}
