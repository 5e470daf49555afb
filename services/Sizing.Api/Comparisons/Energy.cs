using PostFrame.Engine.Heat;

namespace PostFrame.SizingApi.Comparisons;

/// <summary>
/// What each line costs to heat, for this plane and for the building where it is told.
/// </summary>
internal static class Energy
{
    public static IReadOnlyList<RebuiltLine> With(
        IReadOnlyList<RebuiltLine> lines, Setting setting)
    {
        var input = setting.Input;
        if (input.Area is null || !setting.KnowsHeating) return lines;
        if (input.Fuel is null || setting.DegreeDaysK is null)
            return [.. lines.Select(line => LoadOnly(line, setting))];
        var years = lines.Select(line => YearOf(line, setting)).ToList();
        return [.. lines.Select((line, i) => years[i] is not { } year
            ? line
            : line with
            {
                Body = line.Body with
                {
                    Energy = Line(line, year, setting) with
                    {
                        Paybacks = [.. Paybacks(i, lines, years, setting)],
                    },
                },
            })];
    }

    private static HeatingYear? YearOf(RebuiltLine line, Setting setting)
    {
        if (line.U is not { } u) return null;
        var loss = u.TotalSi * setting.Input.Area!.Value.TotalSquareMetres;
        return HeatingYear.Of(
            setting.IsUnheated ? 0 : loss, setting.DegreeDaysK!.Value, setting.Input.Fuel!.Kind,
            setting.Input.Fuel.Efficiency);
    }

    private static EnergyLine Line(RebuiltLine line, HeatingYear year, Setting setting)
    {
        var fuel = setting.Input.Fuel!;
        var whole = Building(line, setting);
        var wholeYear = whole is null || setting.IsUnheated
            ? null
            : HeatingYear.Of(
                whole.TotalWPerK, setting.DegreeDaysK!.Value, fuel.Kind, fuel.Efficiency);
        return new(
            WriteHeat.Rounded(year.HeatKWh, 0),
            WriteHeat.Rounded(year.FuelUnits, 1),
            year.Unit,
            fuel.PricePerUnit is { } price ? WriteHeat.Rounded(year.FuelUnits * price, 2) : null,
            whole is null ? null : WriteHeat.Rounded(whole.TotalBtuPerHourF, 1),
            whole is null ? null : DesignLoad(whole, setting),
            wholeYear is null ? null : WriteHeat.Rounded(wholeYear.FuelUnits, 1),
            wholeYear is not null && fuel.PricePerUnit is { } each
                ? WriteHeat.Rounded(wholeYear.FuelUnits * each, 2)
                : null,
            []);
    }

    /// <summary>What the building loses needs no fuel and no year.</summary>
    private static RebuiltLine LoadOnly(RebuiltLine line, Setting setting) =>
        setting.IsUnheated || Building(line, setting) is not { } whole
            ? line
            : line with
            {
                Body = line.Body with
                {
                    Energy = new(
                        null, null, null, null, WriteHeat.Rounded(whole.TotalBtuPerHourF, 1),
                        DesignLoad(whole, setting), null, null, []),
                },
            };

    /// <summary>[Btu/h]; none where nothing heats.</summary>
    private static double? DesignLoad(BuildingLoss whole, Setting setting)
    {
        var winter = setting.Site.Winter;
        return setting.IsUnheated
            ? null
            : WriteHeat.Rounded(whole.DesignLoadW(winter.Room, winter.Outside) / 0.29307107, 0);
    }

    private static BuildingLoss? Building(RebuiltLine line, Setting setting) =>
        setting.Input.Building is not { } building || line.U is not { } u
            ? null
            : BuildingLoss.Of(
                [
                    new LossElement(
                        line.Body.Name, setting.Input.Area!.Value.TotalSquareMetres, u),
                    .. building.Others,
                ],
                building.AirM3PerHour ?? 0, building.SlabEdgeM);

    /// <summary>
    /// Against every cheaper line, where both prices and the fuel's price are known.
    /// </summary>
    private static IEnumerable<PaybackLine> Paybacks(
        int index, IReadOnlyList<RebuiltLine> lines, List<HeatingYear?> years, Setting setting)
    {
        var area = setting.Input.Area!.Value.TotalSquareFeet;
        if (setting.Input.Fuel!.PricePerUnit is not { } fuelPrice
            || lines[index].Asked.PricePerFt2 is not { } own)
            yield break;
        for (var other = 0; other < lines.Count; other++)
        {
            if (other == index || years[other] is not { } theirs
                || lines[other].Asked.PricePerFt2 is not { } price || price >= own)
                continue;
            var saving = (theirs.FuelUnits - years[index]!.FuelUnits) * fuelPrice;
            var payback = Payback.Of((own - price) * area, saving, !setting.IsUnheated);
            yield return new(
                lines[other].Body.Id,
                payback.Years is { } t ? WriteHeat.Rounded(t, 1) : null,
                payback.Text);
        }
    }
}
