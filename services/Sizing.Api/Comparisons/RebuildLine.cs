using PostFrame.Engine.Heat;
using PostFrame.Engine.Quantities;
using PostFrame.Problems;

namespace PostFrame.SizingApi.Comparisons;

/// <summary>
/// One line rebuilt in the shared setting, as the engine finds it.
/// </summary>
internal sealed record RebuiltLine
{
    public required ComparedLine Asked { get; init; }

    public string Id => Asked.Id;

    public string Name => Asked.Candidate.Name;

    /// <summary>What has to be known before the line can be told whole.</summary>
    public required IReadOnlyList<QuestionLine> Questions { get; init; }

    public required IReadOnlyList<string> Remarks { get; init; }

    public AssemblyHeat? Winter { get; init; }

    public AssemblyHeat? Summer { get; init; }

    /// <summary>Assembly R in winter, rebuilt or tested; null for a blank.</summary>
    public ThermalResistance? WinterR => U?.ToResistance();

    /// <summary>The winter as it is: where nothing heats, no heat flows.</summary>
    public AssemblyHeat? RealWinter { get; init; }

    public MoistureFinding? Moisture { get; init; }

    public DripFinding? Drip { get; init; }

    /// <summary>What is built; null where a blank stands in the way.</summary>
    public Assembly? Built { get; init; }

    public IReadOnlyList<RadiantCut> Radiant { get; init; } = [];

    public IReadOnlyList<DulledFaces> Dulled { get; init; } = [];

    public TestedAssembly? Tested { get; init; }

    public required ClaimFinding Claim { get; init; }

    public CodeFinding? Code { get; init; }

    /// <summary>A year's heating through the plane, and of the building.</summary>
    public HeatingYear? Year { get; init; }

    public HeatingYear? WholeYear { get; init; }

    public BuildingLoss? Whole { get; init; }

    public IReadOnlyList<ComparedPayback> Paybacks { get; init; } = [];

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
        // Between steel members too a face is as cold as the product lets it; only their own part
        // in the heat is beyond a section.
        var clear = missing.Count == 0 ? CandidateAssembly.Build(candidate, setting.Site) : null;
        var built = isSteel ? null : clear;
        var winter = built is null ? null : AssemblySolver.Solve(built, setting.Site.Winter);
        var summer = built is null ? null : AssemblySolver.Solve(built, setting.Site.Summer);
        var holdsBack = candidate.Perm is not null || !CandidateAssembly.NeedsPerm(candidate.Kind);
        var moisture = clear is not null && holdsBack
            && setting is { Months: { } months, Room: { } room }
            ? MoistureFinding.Of(candidate, setting.RealSite, months, room)
            : null;
        var drip = clear is null
            ? null
            : DripFinding.Of(clear, setting.RealSite, setting.Months, setting.Room);
        if (isSteel && clear is not null)
            remarks.Add("Dripping and water inside are those between the steel members; where a "
                + "member squeezes the product the face is colder and drips sooner. Tested values "
                + "tell no temperature, no air space and no radiant part, so none is given.");
        remarks.AddRange(RemarksOn(line, clear is not null, setting));
        var u = winter?.U ?? tested?.U;
        if (!holdsBack && setting.Months is not null)
            missing.Add(new("perm", $"How many perms does {candidate.Name} let through as faced, "
                + "dry cup? Moisture hangs on it."));
        if (line.OpenSpaces.Count == 0) missing.AddRange(CandidateAssembly.Unsaid(candidate));
        return new RebuiltLine
        {
            Asked = line,
            Winter = winter,
            Summer = summer,
            RealWinter = RealWinter(built, winter, setting),
            Moisture = moisture,
            Drip = drip,
            U = u,
            Built = built,
            Radiant = built is null ? [] : RadiantOf(built, setting),
            Dulled = built is null
                ? []
                : DulledFaces.Of(built, setting.Site.Winter, setting.Site.Summer),
            Tested = tested,
            Claim = ClaimCheck.Of(candidate, setting.Site),
            Code = u is { } value ? CodeOf(value, tested, setting) : null,
            Questions = [.. missing.Select(fact =>
                new QuestionLine($"{pointer}/{fact.Fact}", fact.Question))],
            Remarks = remarks,
        };
    }

    private static IEnumerable<string> RemarksOn(ComparedLine line, bool isBuilt, Setting setting)
    {
        if (isBuilt && line.Candidate.Perm is <= 0.1)
            yield return "Steel outside and a tight face inside: what gets in through a lap or a "
                + "leak hardly dries. Seal the laps.";
        if (isBuilt && setting.Months is not null
            && (line.Candidate.Spaces ?? []).Any(space => space.Side == SpaceSide.Room))
            yield return "The liner before the air space is taken as open to vapour, as its joints "
                + "are (own assumption, A): a liner sealed at its joints keeps vapour out of it.";
        if (RetarderRule(line.Candidate, setting) is { } rule) yield return rule;
        if (isBuilt && AssumedPerm(line.Candidate, setting.Words) is { } assumed)
            yield return assumed;
        if (line.Price is { Origin: "list" } listed)
            yield return $"Price from the {listed.Source}";
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

    private static List<RadiantCut> RadiantOf(Assembly built, Setting setting)
    {
        Conditions[] seasons = setting.IsUnheated
            ? [setting.Site.Summer]
            : [setting.Site.Winter, setting.Site.Summer];
        return [.. seasons.Select(conditions => RadiantCut.Of(built, conditions))];
    }

    private static AssemblyHeat? RealWinter(
        Assembly? built, AssemblyHeat? winter, Setting setting) =>
        built is null || !setting.IsUnheated
            ? winter
            : AssemblySolver.Solve(built, setting.RealSite.Winter);

    /// <summary>Which permeance a foam or board without a stated one was given.</summary>
    private static string? AssumedPerm(Candidate candidate, UnitWords words)
    {
        if (candidate.Perm is not null || CandidateAssembly.NeedsPerm(candidate.Kind)
            || candidate.ThicknessMm is not { } mm)
            return null;
        var factor = MaterialBand.Of(candidate.Kind).VapourFactor;
        return FormattableString.Invariant($"No permeance was said: taken as {factor:0} times the ")
            + $"vapour resistance of air at {words.Thickness(mm)}, "
            + FormattableString.Invariant($"{Vapour.PermOfSd(factor * mm / 1000):0.##} perm ")
            + "(typical of the material, from memory, M). Send perm to replace it.";
    }

    private const string OtherBasis =
        "This U is reckoned with the films and air spaces of ISO 6946, the limit is meant for a U "
        + "with those of ASHRAE (90.1 Appendix A, from memory): hold the ashrae basis against it.";

    private static CodeFinding? CodeOf(
        ThermalTransmittance u, TestedAssembly? tested, Setting setting)
    {
        if (setting.Input.Code is not { } code || setting.Zone is not { } zone) return null;
        return CodeFinding.Of(
            CodeTables.Minima,
            new CodeQuestion(
                code.Standard, code.Edition, zone, code.Conditioning,
                setting.Input.IsWall ? "wall above grade" : "roof", code.Construction),
            u,
            !setting.IsUnheated,
            setting.Words,
            [
                .. tested is { Read: false }
                    ? ["The U-factor itself is from memory: look it up."]
                    : Array.Empty<string>(),
                .. tested is null && setting.Input.Basis == CalculationBasis.Iso6946
                    ? [OtherBasis]
                    : Array.Empty<string>(),
                .. setting.ZoneDoubt is { } doubt ? [doubt] : Array.Empty<string>(),
            ]);
    }

    private static string KindWords(MaterialKind kind) => kind switch
    {
        MaterialKind.BubbleSheet => "bubble sheet",
        MaterialKind.FoilSheet => "foil sheet",
        MaterialKind.ClosedCellFoam or MaterialKind.OpenCellFoam => "spray foam",
        MaterialKind.PolyisoBoard or MaterialKind.XpsBoard or MaterialKind.EpsBoard => "board",
        _ => WireNames<MaterialKind>.Of(kind),
    };

    /// <summary>
    /// Steel-framed cases come from tested values only, never from the naive method.
    /// </summary>
    private static TestedAssembly? TestedOf(
        Candidate candidate, ComparisonInput input, List<string> remarks)
    {
        if (candidate.Kind != MaterialKind.Blanket)
        {
            remarks.Add("Steel members carry heat past any product, so for steel framing only "
                + "tested values are used. Those held are of faced blanket: none tells what a "
                + $"{KindWords(candidate.Kind)} does there, whatever is claimed for it.");
            return null;
        }
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
        var found = rated is null
            ? null
            : CodeTables.TestedAssemblies.FirstOrDefault(row =>
                row.System == system && row.RatedInsulation == rated);
        if (found is null)
        {
            var held = CodeTables.TestedAssemblies
                .Where(row => row.System == system).Select(row => row.RatedInsulation);
            remarks.Add("For steel framing only tested values are used, and "
                + (rated is null ? "which is meant hangs on the R of this line"
                    : $"none is held for {rated}")
                + $". Held for blanket, \"{system}\": {string.Join(", ", held)}.");
        }
        return found;
    }
}
