using System.Text.Json;
using PostFrame.Engine.Heat;
using PostFrame.Engine.TakeOff;
using PostFrame.Problems;

namespace PostFrame.SizingApi.Comparisons;

/// <summary>
/// From the bytes of a comparison request to its answer. Pure: same in, same out.
/// </summary>
public static class Comparisons
{
    /// <summary>The answer as JSON, or the refusal.</summary>
    public static (byte[]? Body, ProblemAnswer? Refusal) Answer(
        ReadOnlyMemory<byte> json, PriceList? prices = null)
    {
        var (body, _, refusal) = Compared(json, prices);
        return body is null
            ? (null, refusal)
            : (JsonSerializer.SerializeToUtf8Bytes(body, ComparisonJson.Wire.ComparisonBody), null);
    }

    /// <summary>The lines side by side as SVG, or the refusal.</summary>
    public static (byte[]? Body, ProblemAnswer? Refusal) Picture(
        ReadOnlyMemory<byte> json, PriceList? prices = null)
    {
        var (_, picture, refusal) = Compared(json, prices);
        return picture is null
            ? (null, refusal)
            : (System.Text.Encoding.UTF8.GetBytes(picture()), null);
    }

    private static (ComparisonBody? Body, Func<string>? Picture, ProblemAnswer? Refusal) Compared(
        ReadOnlyMemory<byte> json, PriceList? prices)
    {
        using var request = JsonRequest.Parse(json);
        if (request.Malformed is { } malformed) return (null, null, malformed);
        var input = ReadComparison.From(request.Root, prices);
        if (request.Mistakes.Any) return (null, null, ProblemAnswer.Invalid(request.Mistakes));

        var setting = new Setting(input);
        var lines = Energy.With(
            [.. input.Lines.Select((line, i) => RebuildLine.Of(line, i, setting))], setting);
        return (Body(lines, setting), () => SidePicture.Of(lines, setting), null);
    }

    private static ComparisonBody Body(IReadOnlyList<RebuiltLine> lines, Setting setting)
    {
        var input = setting.Input;
        var site = setting.Site;
        return new ComparisonBody
        {
            Basis = new(
                WireNames<CalculationBasis>.Of(input.Basis), Films.TitleOf(input.Basis)),
            Plane = new(
                input.IsWall ? "wall" : "roof",
                WriteHeat.Rounded(input.SlopeDegrees, 2),
                input.Area is { } area ? WriteHeat.Rounded(area.TotalSquareFeet, 1) : null,
                input.Framing is { } framing ? WriteHeat.Rounded(framing.Fraction, 4) : null,
                Direction(setting, site.Winter),
                Direction(setting, site.Summer)),
            Conditions = new(
                WriteHeat.Rounded(setting.RealSite.Winter.Room.TotalFahrenheit, 1),
                WriteHeat.Rounded(site.Winter.Outside.TotalFahrenheit, 1),
                WriteHeat.Rounded(site.Summer.Room.TotalFahrenheit, 1),
                WriteHeat.Rounded(setting.SummerAirTemperature.TotalFahrenheit, 1),
                WriteHeat.Rounded(site.Summer.Outside.TotalFahrenheit, 1),
                setting.DegreeDaysK is { } days ? WriteHeat.Rounded(days * 1.8, 0) : null),
            Place = Place(setting),
            RoomAir = WriteHeat.RoomAir(setting),
            Prices = input.Prices is { } list
                && lines.Any(line => line.Asked.Price is { Origin: "list" })
                ? new(list.Id, list.Version, list.Currency, list.Note)
                : null,
            Lines = [.. lines.Select((line, i) => WriteLine.Of(line, i, setting))],
            Conclusions = Conclusions.Of(lines, setting),
            Questions = setting.Questions,
            Assumptions = setting.Assumptions,
            LabelRule = new(LabelRule.Scope, [.. LabelRule.All.Select(rule =>
                new RuleLine(rule.Section, rule.Text, rule.Mark))]),
            Cautions = Cautions,
            Pictures = input.Pictures ? ComparisonPictures.Of(lines, setting) : null,
            Working = input.Working ? SettingWorking.Of(setting) : null,
        };
    }

    private static string Direction(Setting setting, Conditions at) => AssemblyWorking.Words(
        AssemblySolver.FlowThrough(setting.Input.SlopeDegrees, at));

    private static PlaceLine? Place(Setting setting)
    {
        var climate = setting.Input.Climate;
        if (climate.Found is not { } found)
            return climate.Zone is null ? null : new(climate.Zone, null, false, null, null, null);
        return new(
            setting.Zone,
            climate.Zone is null ? found.ZoneEdition : "as given by the caller",
            found.Ambiguous && climate.Zone is null,
            found.Station is { } station ? $"{station.Name}, {station.State}" : null,
            found.StationDistanceKm,
            found.Notes);
    }

    private static readonly IReadOnlyList<CautionLine> Cautions =
    [
        new("code", "Local codes and the building official decide what is required; an engineer "
            + "decides for a given building.", "common practice, no source"),
        new("diffusion-only", "Moisture here is diffusion alone. Air leaking through laps and "
            + "openings in the facing moves far more vapour; seal them. The method is not "
            + "recommended as a sole basis.", "ASHRAE HoF 2021 ch. 27"),
        new("permeance", "Permeances are typical values, not design data; wet-cup values of paper "
            + "facings are 5 to 10 times the dry-cup ones.", "ASHRAE HoF 2021 ch. 26 Table 5"),
        new("reflective", "A bright face counts only clean, dry and facing an enclosed air space; "
            + "dust and condensate raise its emittance.", "ASHRAE HoF 2021 ch. 26 Table 10"),
        new("burner", "A heater without a flue gives its water and its exhaust to the room. Carbon "
            + "monoxide kills: follow the maker's ventilation and fit an alarm.",
            "common practice, no source"),
        new("facing-fire", "Foam and facings need the fire protection the code asks for before "
            + "they stay exposed.", "IBC 2603.4, from memory"),
    ];
}
