using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.Heat;

/// <summary>
/// Measures a claimed R at the conditions the federal label rule uses for it: the material alone,
/// and for a reflective sheet the material with its air spaces from the ASHRAE tables at 50 °F mean
/// and 30 °F difference. Source: 16 CFR 460.5(a) (read), 460.5(b) and (d) (from memory).
/// </summary>
public static class ClaimCheck
{
    private const double RatingMeanC = 10;
    private const double RatingDifferenceK = 50 / 3.0;
    private const double BestEmittance = 0.05;

    /// <summary>Measures the claim of a candidate in a plane of this slope.</summary>
    /// <exception cref="InvalidOperationException">It does not fit the frame.</exception>
    public static ClaimFinding Of(Candidate candidate, PlaneSite site)
    {
        ArgumentNullException.ThrowIfNull(candidate);
        ArgumentNullException.ThrowIfNull(site);
        if (CandidateFit.Violations(candidate, site.Framing) is [var misfit, ..])
            throw new InvalidOperationException($"{misfit.Path} {misfit.Actual}: {misfit.Message}");
        var most = MaterialBand.MostOf(candidate.Kind, candidate.ThicknessMm);
        if (candidate.KnownR is { } known && (most is null || known.CompareTo(most.Value) > 0))
            most = known;
        var body = candidate.MaterialR;
        var stated = candidate.Spaces is not null && candidate.RoomEmittance is not null
            && body is not null;
        List<WorkingInput> PartsIn(Season season) =>
            Parts(candidate, body!.Value, Flow(site, season), season);
        var winterParts = stated ? PartsIn(Season.Winter) : [];
        var summerParts = stated ? PartsIn(Season.Summer) : [];
        var finding = new ClaimFinding
        {
            Outcome = null,
            Text = "",
            MaterialMost = most,
            WinterParts = winterParts,
            SummerParts = summerParts,
            SystemWinter = stated ? Sum(winterParts) : null,
            SystemSummer = stated ? Sum(summerParts) : null,
            SystemBest = most is { } m ? Best(candidate, m, site) : null,
            NotSaid = NotSaidOf(candidate, site),
        };
        return Judged(candidate, finding, site);
    }

    private static ClaimFinding Judged(Candidate candidate, ClaimFinding finding, PlaneSite site)
    {
        if (candidate.ClaimedR is not { } claimed)
            return finding with { Text = "No R was stated, so there is none to check." };
        if (finding.MaterialMost is not { } most)
            return finding with
            {
                Text = "It cannot be told without the thickness: a material has R per inch.",
            };
        bool Within(ThermalResistance? r) => r is { } x && claimed <= x.TotalRValue + 0.05;
        var words = site.Words;
        var r = words.Claimed(claimed);
        if (Within(most))
            return finding with
            {
                Outcome = ClaimOutcome.Supported,
                Text = $"{r} is within what the material reaches by itself (at most "
                    + $"{words.Of(most)}).",
            };
        if (candidate is { IsReflective: true, Spaces.Count: > 0 }
            && OpenFact(candidate) is { } open)
            return finding with
            {
                Text = $"{r} is more than the material reaches by itself (at most "
                    + $"{words.Of(most)}); what its air spaces add cannot be told without {open}.",
            };
        var reaches = $"at most {words.Of(most)}";
        // 16 CFR 460.5(a): what is not reflective is rated on the material alone.
        return candidate.IsReflective
            ? JudgedAsSystem(candidate, finding, site, r, reaches, Within)
            : finding with
            {
                Outcome = ClaimOutcome.NotReachableByMaterial,
                Text = $"{r} is more than this material reaches at the stated thickness: "
                    + $"{reaches}.",
            };
    }

    private static ClaimFinding JudgedAsSystem(
        Candidate candidate, ClaimFinding finding, PlaneSite site, string r, string reaches,
        Func<ThermalResistance?, bool> within)
    {
        var (winterFlow, summerFlow) = (Flow(site, Season.Winter), Flow(site, Season.Summer));
        var oneWay = winterFlow == summerFlow;
        if (within(finding.SystemWinter) || (oneWay && within(finding.SystemSummer)))
            return finding with
            {
                Outcome = ClaimOutcome.Supported,
                Text = $"{r} holds for the whole system as stated, films and air spaces included, "
                    + $"with heat flowing {AssemblyWorking.Words(winterFlow)}"
                    + (oneWay ? "" : ", the worse direction")
                    + $". The material by itself is {reaches}.",
            };
        if (!oneWay && within(finding.SystemSummer)
            && finding.SystemWinter is { } winter)
            return finding with
            {
                Outcome = ClaimOutcome.SummerOnlySystemValue,
                Text = $"{r} holds for the whole system with heat flowing down, as on a summer "
                    + $"roof. In winter the same system is {site.Words.Of(winter)}.",
            };
        if (Flat(candidate, site) is { } flat && within(flat))
            return finding with
            {
                Outcome = ClaimOutcome.SummerOnlySystemValue,
                Text = $"{r} holds for the whole system with heat flowing {StraightDown}. "
                    + $"On this slope it is {site.Words.Of(finding.SystemSummer!.Value)} in "
                    + $"summer and {site.Words.Of(finding.SystemWinter!.Value)} in winter"
                    + (summerFlow.IsPrinted ? "." : $", {FlowDirection.OwnRule}."),
            };
        if (within(finding.SystemBest))
            return finding with
            {
                Outcome = ClaimOutcome.NeedsAirSpaceNotThere,
                Text = $"{r} needs an enclosed air space beside a bright face"
                    + (oneWay ? ""
                        : summerFlow == HeatFlow.Down
                            ? ", and heat flowing down as on a summer roof"
                            : $", and heat flowing {StraightDown}")
                    + (candidate.Spaces is null
                        ? "; none is stated."
                        : "; as stated there is none that reaches it."),
            };
        return finding with
        {
            Outcome = ClaimOutcome.NotReachableByMaterial,
            Text = $"{r} is more than this material reaches at the stated thickness: {reaches}. "
                + $"Even with a space of {BestSpaceWords(site)} on each side and heat "
                + $"flowing {AssemblyWorking.Words(BestFlow(site))} it is "
                + $"{site.Words.Of(finding.SystemBest!.Value)}.",
        };
    }

    private static ThermalResistance Sum(IEnumerable<WorkingInput> parts) =>
        ThermalResistance.FromSi(parts.Sum(part => part.Value));

    private const string StraightDown = "straight down, as under a flat roof in summer";

    /// <summary>
    /// The direction that counts most for a reflective sheet: straight down under any roof. What a
    /// slope takes off is the slope's doing; the material is not to be blamed for it.
    /// </summary>
    private static HeatFlow BestFlow(PlaneSite site) =>
        site.IsWall ? HeatFlow.Horizontal : HeatFlow.Down;

    /// <summary>
    /// The thickness that counts most [mm]: sideways the table prints 0.49 m²·K/W at 20 mm and 0.45
    /// at 90 mm; downwards more than 90 mm is not to be had in usual framing.
    /// </summary>
    private static double BestSpaceMm(PlaneSite site) => site.IsWall ? 20 : 90;

    private static string BestSpaceWords(PlaneSite at) => (at.IsWall, at.Words.IsMetric) switch
    {
        (true, true) => "20 mm",
        (true, false) => "¾ in",
        (false, true) => "90 mm",
        _ => "3½ in",
    };

    /// <summary>
    /// The system as stated with heat flowing straight down; null where the plane has it so anyway,
    /// or never, or something is not stated.
    /// </summary>
    private static ThermalResistance? Flat(Candidate candidate, PlaneSite site) =>
        !site.IsWall && Flow(site, Season.Summer) != HeatFlow.Down
        && candidate is { Spaces: not null, RoomEmittance: not null, MaterialR: { } body }
            ? Sum(Parts(candidate, body, HeatFlow.Down, Season.Summer))
            : null;

    private static FlowDirection Flow(PlaneSite site, Season season) =>
        Films.FlowThrough(CalculationBasis.Ashrae, site.SlopeDegrees, season);

    /// <summary>
    /// Material, stated spaces at rating conditions, both films, from the room outwards. Outdoor
    /// air in a space takes the space and all outside it away, as far as it is ventilated, for a
    /// still-air film: ISO 6946:2017 clause 6.9, from memory.
    /// </summary>
    private static List<WorkingInput> Parts(
        Candidate candidate, ThermalResistance body, FlowDirection flow, Season season)
    {
        var parts = new List<WorkingInput>();
        void Add(string name, double r) => parts.Insert(0, new(name, r, "m²·K/W"));
        void AddSpace(SpaceSide side, double? face)
        {
            if (candidate.Spaces!.FirstOrDefault(space => space.Side == side) is not { } space
                || face is not { } own)
                return;
            var effective = AirSpace.Effective(own, space.FacingEmittance);
            Add("air space", Space(flow, space.ThicknessMm, effective).TotalSi);
            var open = Math.Clamp((space.OpeningsMm2 - 500) / 1000, 0, 1);
            if (open <= 0) return;
            parts = [.. parts.Select(part => part with { Value = (1 - open) * part.Value })];
            Add("still air where outdoor air blows through", open * Film(flow, 0.9));
        }
        Add("outside film", Films.Outside(CalculationBasis.Ashrae, season).TotalSi);
        AddSpace(SpaceSide.Cladding, candidate.CladdingEmittance);
        Add("material", body.TotalSi);
        AddSpace(SpaceSide.Room, candidate.RoomEmittance);
        // The room sees a liner's painted face, or the product's own.
        var lined = candidate.Spaces!.Any(space => space.Side == SpaceSide.Room);
        Add("room film", Film(flow, lined ? 0.9 : candidate.RoomEmittance!.Value));
        return parts;
    }

    private static double Film(FlowDirection flow, double emittance) =>
        Films.Inside(CalculationBasis.Ashrae, flow, emittance).TotalSi;

    private static ThermalResistance Best(
        Candidate candidate, ThermalResistance most, PlaneSite site)
    {
        var flow = BestFlow(site);
        var films = Films.Inside(CalculationBasis.Ashrae, flow, 0.9)
            + Films.Outside(CalculationBasis.Ashrae, Season.Summer);
        if (!candidate.IsReflective) return most + films;
        var space = Space(flow, BestSpaceMm(site), BestEmittance);
        return most + films + space + space;
    }

    /// <summary>By the ASHRAE table where it reaches, else by the ISO formula.</summary>
    private static ThermalResistance Space(FlowDirection flow, double mm, double effective) =>
        AirSpaceHeat.Of(
            mm is >= 12.5 and <= 150 ? CalculationBasis.Ashrae : CalculationBasis.Iso6946,
            flow, mm, effective, Temperature.FromCelsius(RatingMeanC), RatingDifferenceK).R;

    /// <summary>What keeps stated air spaces from being reckoned.</summary>
    private static string? OpenFact(Candidate candidate) => candidate switch
    {
        { RoomEmittance: null } => "the face towards the room",
        { MaterialR: null } => "the thickness",
        { CladdingEmittance: null } when
            candidate.Spaces!.Any(space => space.Side == SpaceSide.Cladding) =>
            "the face towards the cladding",
        _ => null,
    };

    private static List<string> NotSaidOf(Candidate candidate, PlaneSite site)
    {
        var unsaid = new List<string>();
        if (candidate.ThicknessMm is null) unsaid.Add("thickness");
        if (candidate.RoomEmittance is null) unsaid.Add("the face towards the room");
        if (candidate.IsReflective)
        {
            if (candidate.CladdingEmittance is null) unsaid.Add("the face towards the cladding");
            if (candidate.Spaces is null)
                unsaid.Add("number and thickness of air spaces (16 CFR 460.12(b)(4))");
            if (candidate.ClaimedR is not null)
                unsaid.Add("for which direction of heat flow the R holds (16 CFR 460.12(b)(4))");
        }
        else if (CandidateAssembly.Unsaid(candidate).Count > 0)
        {
            unsaid.Add("the air space beside its bright face (16 CFR 460.5(d), from memory)");
        }
        if (candidate.Perm is null) unsaid.Add("permeance");
        if (!site.IsWall && candidate.Lies == Placement.OverFraming)
            unsaid.Add("what is left of it at the purlins");
        return unsaid;
    }
}
