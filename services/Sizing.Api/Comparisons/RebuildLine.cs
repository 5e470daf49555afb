using PostFrame.Engine.Heat;
using PostFrame.Engine.Quantities;
using PostFrame.Problems;

namespace PostFrame.SizingApi.Comparisons;

/// <summary>
/// One line rebuilt in the shared setting: engine results beside their wire form.
/// </summary>
internal sealed record RebuiltLine
{
    public required ComparedLine Asked { get; init; }

    public required LineBody Body { get; init; }

    public AssemblyHeat? Winter { get; init; }

    public AssemblyHeat? Summer { get; init; }

    /// <summary>The winter as it is: where nothing heats, no heat flows.</summary>
    public AssemblyHeat? RealWinter { get; init; }

    public MoistureFinding? Moisture { get; init; }

    public DripFinding? Drip { get; init; }

    /// <summary>U for code and energy: rebuilt, or tested.</summary>
    public ThermalTransmittance? U { get; init; }
}

/// <summary>Rebuilds a line; what a blank leaves open stays blank.</summary>
internal static class RebuildLine
{
    public static RebuiltLine Of(ComparedLine line, int index, Setting setting)
    {
        var input = setting.Input;
        var candidate = line.Candidate;
        var pointer = line.Ours
            ? $"/options/{index}"
            : $"/rivals/{index - input.Lines.Count(other => other.Ours)}";
        var missing = MissingOf(line);
        var remarks = line.Remarks.ToList();
        var isSteel = input.SteelSystem is not null;
        var tested = isSteel ? TestedOf(candidate, input, remarks) : null;
        var complete = missing.Count == 0 && !isSteel;
        var built = complete ? CandidateAssembly.Build(candidate, setting.Site) : null;
        var winter = built is null ? null : AssemblySolver.Solve(built, setting.Site.Winter);
        var summer = built is null ? null : AssemblySolver.Solve(built, setting.Site.Summer);
        var holdsBack = candidate.Perm is not null || !CandidateAssembly.NeedsPerm(candidate.Kind);
        var moisture = built is not null && holdsBack
            && setting is { Months: { } months, Room: { } room }
            ? MoistureFinding.Of(candidate, setting.RealSite, months, room)
            : null;
        var drip = built is null
            ? null
            : DripFinding.Of(built, setting.RealSite, setting.Months, setting.Room);
        if (built is not null && candidate.Perm is <= 0.1)
            remarks.Add("Steel outside and a tight face inside: what gets in through a lap or a "
                + "leak hardly dries. Seal the laps.");
        if (RetarderRule(candidate, setting) is { } rule) remarks.Add(rule);
        if (built is not null && AssumedPerm(candidate) is { } assumed) remarks.Add(assumed);
        var u = winter?.U ?? tested?.U;
        if (!holdsBack && setting.Months is not null)
            missing.Add(new("perm", $"How many perms does {candidate.Name} let through as faced, "
                + "dry cup? Moisture hangs on it."));
        if (line.OpenSpaces.Count == 0) missing.AddRange(CandidateAssembly.Unsaid(candidate));
        var claim = ClaimCheck.Of(candidate, setting.Site);
        return new RebuiltLine
        {
            Asked = line,
            Winter = winter,
            Summer = summer,
            RealWinter = RealWinter(built, winter, setting),
            Moisture = moisture,
            Drip = drip,
            U = u,
            Body = new LineBody
            {
                Id = line.Id,
                Ours = line.Ours,
                Name = candidate.Name,
                Kind = WireNames<MaterialKind>.Of(candidate.Kind),
                Material = Material(candidate),
                Winter = winter is null ? null : WinterOf(winter, setting),
                Summer = summer is null ? null : WriteHeat.Season(summer),
                Tested = tested is null ? null : WriteHeat.Tested(tested),
                Radiant = built is null ? null : RadiantOf(built, setting, candidate),
                Drip = drip is null ? null : WriteHeat.Drip(drip, setting.IsUnheated),
                Moisture = moisture is null ? null : WriteHeat.Moisture(moisture),
                Code = u is { } value ? CodeOf(value, tested, setting) : null,
                Price = line.PricePerFt2 is { } price
                    ? new PriceLine(WriteHeat.Rounded(price, 4))
                    : null,
                Claim = line.Ours ? null : WriteHeat.Claim(candidate, claim),
                Questions = [.. missing.Select(fact =>
                    new QuestionLine($"{pointer}/{fact.Fact}", fact.Question))],
                Remarks = remarks,
                Working = input.Working && built is not null
                    ? WriteWorking.Of(built, winter!, summer!, moisture, setting)
                    : null,
            },
        };
    }

    /// <summary>
    /// What the residential and building codes ask of the inner face of framed walls. Source:
    /// IRC/IBC vapour retarder rules, read in a secondary source; the tables changed in 2021.
    /// </summary>
    private static string? RetarderRule(Candidate candidate, Setting setting)
    {
        if (!setting.Input.IsWall || candidate.Perm is not { } perm
            || setting.Zone is not { } zone)
            return null;
        const string edition = " (IRC/IBC, secondary source; read the adopted edition)";
        var @class = Vapour.ClassOf(perm);
        var words = @class == RetarderClass.None ? "no retarder" : $"class {@class}";
        var isCold = zone[0] is >= '5' and <= '8' || zone == "4C";
        if (isCold && perm > 1)
            return $"Framed walls of zone {zone} ask a class I or II retarder inside; this is "
                + words + edition + ".";
        return zone[0] is '1' or '2' && perm <= 1
            ? $"Framed walls of zone {zone} take no class I or II retarder inside; this is "
                + words + edition + "."
            : null;
    }

    /// <summary>A space told of only in part asks for its parts, not for the whole again.</summary>
    private static List<MissingFact> MissingOf(ComparedLine line) =>
    [
        .. CandidateAssembly.Missing(line.Candidate)
            .Where(fact => fact.Fact != "airSpaces" || line.OpenSpaces.Count == 0),
        .. line.OpenSpaces,
    ];

    private static MaterialLine? Material(Candidate candidate)
    {
        if (candidate.MaterialR is not { } r) return null;
        var band = MaterialBand.Of(candidate.Kind);
        var (source, mark) = candidate switch
        {
            { KnownR: not null } => ("product data, GET /v1/products", "M"),
            { ClaimedR: { } claimed } when Math.Abs(claimed - r.TotalRValue) < 1e-6 =>
                ("as claimed; within what the material reaches: " + band.Source, band.Mark),
            _ => ("what the material reaches at its thickness: " + band.Source, band.Mark),
        };
        return new(
            WriteHeat.Rounded(r.TotalRValue, 2), WriteHeat.Rounded(r.TotalSi, 3), source, mark);
    }

    private static List<RadiantLine> RadiantOf(
        Assembly built, Setting setting, Candidate candidate)
    {
        var lines = new List<RadiantLine>();
        Conditions[] seasons = setting.IsUnheated
            ? [setting.Site.Summer]
            : [setting.Site.Winter, setting.Site.Summer];
        foreach (var conditions in seasons)
        {
            var cut = RadiantCut.Of(built, conditions);
            var season = conditions.Season == Season.Winter ? "winter" : "summer";
            var claimed = candidate.ClaimedRadiantCutPercent is { } percent
                ? FormattableString.Invariant($"Claimed: radiant heat cut by {percent:0} %. ")
                : "";
            var text = cut.RadiantPercent is { } radiant
                ? FormattableString.Invariant(
                    $"{claimed}Radiant exchange at the bright face falls by {radiant:0} %, all ")
                    + FormattableString.Invariant(
                        $"heat through this assembly in {season} by {cut.TotalPercent:0} %.")
                : claimed + "No bright face looks at air here, so no radiant heat is cut.";
            lines.Add(new RadiantLine(
                season,
                cut.RadiantPercent is { } r ? WriteHeat.Rounded(r, 1) : null,
                WriteHeat.Rounded(cut.TotalPercent, 1), text));
        }
        return lines;
    }

    private static AssemblyHeat? RealWinter(
        Assembly? built, AssemblyHeat? winter, Setting setting) =>
        built is null || !setting.IsUnheated
            ? winter
            : AssemblySolver.Solve(built, setting.RealSite.Winter);

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

    /// <summary>Which permeance a foam or board without a stated one was given.</summary>
    private static string? AssumedPerm(Candidate candidate)
    {
        if (candidate.Perm is not null || CandidateAssembly.NeedsPerm(candidate.Kind)
            || candidate.ThicknessMm is not { } mm)
            return null;
        var factor = MaterialBand.Of(candidate.Kind).VapourFactor;
        return FormattableString.Invariant($"No permeance was said: taken as {factor:0} times the ")
            + FormattableString.Invariant($"vapour resistance of air at {mm:0} mm, ")
            + FormattableString.Invariant($"{Vapour.PermOfSd(factor * mm / 1000):0.##} perm ")
            + "(typical of the material, from memory, M). Send perm to replace it.";
    }

    private static CodeBody? CodeOf(
        ThermalTransmittance u, TestedAssembly? tested, Setting setting)
    {
        if (setting.Input.Code is not { } code || setting.Zone is not { } zone) return null;
        var finding = CodeFinding.Of(
            CodeTables.Minima,
            new CodeQuestion(
                code.Standard, code.Edition, zone, code.Conditioning,
                setting.Input.IsWall ? "wall above grade" : "roof", code.Construction),
            u,
            !setting.IsUnheated,
            [
                .. tested is { Read: false }
                    ? ["The U-factor itself is from memory: look it up."]
                    : Array.Empty<string>(),
                .. setting.ZoneDoubt is { } doubt ? [doubt] : Array.Empty<string>(),
            ]);
        return WriteHeat.Code(finding);
    }

    /// <summary>
    /// Steel-framed cases come from tested values only, never from the naive method.
    /// </summary>
    private static TestedAssembly? TestedOf(
        Candidate candidate, ComparisonInput input, List<string> remarks)
    {
        var system = input.SteelSystem switch
        {
            "standingSeamWithBlocks" =>
                "standing seam roof, thermal spacer blocks, single layer draped over purlins",
            "throughFastened" => "through-fastened, no spacer blocks, single layer",
            _ => "single layer compressed over girts",
        };
        var rated = candidate.MaterialR is { } r
            ? FormattableString.Invariant($"R-{r.TotalRValue:0.##}")
            : null;
        var found = candidate.Kind == MaterialKind.Blanket && rated is not null
            ? CodeTables.TestedAssemblies.FirstOrDefault(row =>
                row.System == system && row.RatedInsulation == rated)
            : null;
        if (found is null)
        {
            var held = CodeTables.TestedAssemblies
                .Where(row => row.System == system).Select(row => row.RatedInsulation);
            remarks.Add("For steel framing only tested values are used, and none is held for this "
                + $"line. Held for \"{system}\": {string.Join(", ", held)}.");
        }
        return found;
    }
}
