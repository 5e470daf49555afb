using PostFrame.Engine.Heat;
using PostFrame.Problems;

namespace PostFrame.SizingApi.Comparisons;

/// <summary>A rebuilt line as it goes over the wire.</summary>
internal static class WriteLine
{
    public static LineBody Of(RebuiltLine line, int index, Setting setting)
    {
        var candidate = line.Asked.Candidate;
        return new LineBody
        {
            Id = line.Id,
            Ours = line.Asked.Ours,
            Name = line.Name,
            Kind = WireNames<MaterialKind>.Of(candidate.Kind),
            Material = Material(line.Asked),
            Winter = line.Winter is { } winter ? WinterOf(winter, setting) : null,
            Summer = line.Summer is { } summer ? WriteHeat.Season(summer) : null,
            Tested = line.Tested is { } tested ? WriteHeat.Tested(tested, setting) : null,
            Radiant = line.Built is null
                ? null
                : [.. line.Radiant.Select(cut => Radiant(cut, candidate))],
            Dulled = line.Dulled.Count == 0
                ? null
                : [.. line.Dulled.Select(faces =>
                    WriteHeat.Dulled(faces, line.Drip, setting))],
            Drip = line.Drip is { } drip ? WriteHeat.Drip(drip, setting) : null,
            Moisture = line.Moisture is { } moisture ? WriteHeat.Moisture(moisture) : null,
            Code = line.Code is { } code ? WriteHeat.Code(code) : null,
            Price = line.Asked.Price is { } price
                ? new(
                    WriteHeat.Rounded(price.PerFt2, 4), price.Origin,
                    price.Origin == "list" ? price.Source : "as typed")
                : null,
            Energy = Energy.Body(line, setting),
            Claim = line.Asked.Ours ? null : WriteHeat.Claim(candidate, line.Claim),
            Questions = line.Questions,
            Remarks = line.Remarks,
            Working = setting.Input.Working ? Working(line, index, setting) : null,
        };
    }

    private static IReadOnlyList<WorkingLine> Working(RebuiltLine line, int index, Setting setting)
    {
        var sheet = new WorkingSheet(FormattableString.Invariant($"/lines/{index}"));
        ClaimWorking.Add(sheet, line);
        HeatWorking.Add(sheet, line, setting);
        MoistureWorking.Add(sheet, line, setting);
        MoneyWorking.Add(sheet, line, setting);
        return sheet.Lines;
    }

    private static MaterialLine? Material(ComparedLine line)
    {
        if (line.Candidate.MaterialR is not { } r) return null;
        var (source, mark) = ClaimWorking.SourceOf(line, r.TotalRValue);
        return new(
            WriteHeat.Rounded(r.TotalRValue, 2), WriteHeat.Rounded(r.TotalSi, 3), source, mark);
    }

    private static RadiantLine Radiant(RadiantCut cut, Candidate candidate)
    {
        var season = cut.Season == Season.Winter ? "winter" : "summer";
        var claimed = candidate.ClaimedRadiantCutPercent is { } percent
            ? FormattableString.Invariant($"Claimed: radiant heat cut by {percent:0} %. ")
            : "";
        var text = cut.RadiantPercent is { } radiant
            ? FormattableString.Invariant(
                $"{claimed}Radiant exchange at the bright face falls by {radiant:0} %, all ")
                + FormattableString.Invariant(
                    $"heat through this assembly in {season} by {cut.TotalPercent:0} %.")
            : claimed + "No bright face looks at air here, so no radiant heat is cut.";
        return new RadiantLine(
            season,
            cut.RadiantPercent is { } r ? WriteHeat.Rounded(r, 1) : null,
            WriteHeat.Rounded(cut.TotalPercent, 1), text);
    }

    /// <summary>Nothing heats it: no heat flows and the face is as cold as outdoors.</summary>
    private static SeasonBody WinterOf(AssemblyHeat winter, Setting setting) =>
        setting.IsUnheated
            ? WriteHeat.Season(winter) with
            {
                HeatFlowBtuPerHFt2 = 0,
                HeatFlowWPerM2 = 0,
                RoomFaceF = WriteHeat.Rounded(setting.Site.Winter.Outside.TotalFahrenheit, 1),
            }
            : WriteHeat.Season(winter);
}
