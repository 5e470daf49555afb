using PostFrame.Engine.Heat;
using PostFrame.Engine.Quantities;

namespace PostFrame.SizingApi.Comparisons;

/// <summary>
/// What follows from the rebuilt lines. A better or cheaper rival is called that; nothing is said
/// about who quoted it.
/// </summary>
internal static class Conclusions
{
    /// <summary>Differences below this are within what either basis can tell [%].</summary>
    private const double SamePercent = 3;

    /// <summary>The same where an air space or a bright face has its part [%].</summary>
    private const double SameReflectivePercent = 15;

    public static IReadOnlyList<ConclusionLine> Of(
        IReadOnlyList<RebuiltLine> lines, Setting setting)
    {
        var said = new List<ConclusionLine>();
        var ours = lines.Where(line => line.Asked.Ours).ToList();
        var theirs = lines.Where(line => !line.Asked.Ours).ToList();
        if (setting.IsUnheated)
            said.Add(new("unheated", "Nothing heats this building, so no insulation saves fuel "
                + "here. What differs is dripping and summer heat.", null, null, []));
        if (setting.IsWinterAssumed)
            said.Add(new("winter-assumed", (setting.Input.Climate.Found is null
                    ? "Neither a place nor a winter temperature was told: "
                    : "No station stands near this place, and no winter temperature was told: ")
                + $"{setting.Words.Of(setting.Site.Winter.Outside)} outdoors is assumed (mark A). "
                + "The winter R hangs on it a little, dripping wholly; no load is told. Give the "
                + (setting.Input.Climate.Found is null ? "postal code, county, station or " : "")
                + "winterDesign.", null, null, ["/conditions/winterOutdoorsF"]));
        if (setting.Site.Summer is var summer && summer.Outside.CompareTo(summer.Room) <= 0)
            said.Add(new("no-summer-gain", "Even in this summer, sun included, it is "
                + $"{setting.Words.Of(summer.Outside)} outside and {setting.Words.Of(summer.Room)} "
                + "inside: heat flows out, and the summer R is no R of heat flowing in.", null,
                null, ["/conditions/summerSolAirF", "/conditions/summerRoomF"]));
        said.AddRange(lines.Where(line => line.U is null).Select(line => new ConclusionLine(
            "not-comparable",
            IsBeyondSteelTables(line, setting)
                ? $"For \"{line.Name}\" no tested value is held between steel members, and none is "
                    + "put in its place."
                : $"\"{line.Name}\" cannot be rebuilt until its questions are answered; nothing is "
                    + "assumed for it.",
            line.Asked.Ours ? line.Id : null, line.Asked.Ours ? null : line.Id, [])));
        foreach (var (line, i) in lines.Select((line, i) => (line, i)))
            said.AddRange(Claim(line, $"/lines/{i}/", setting));
        foreach (var rival in theirs)
        {
            foreach (var option in ours) said.AddRange(Pair(option, rival, lines, setting));
        }
        foreach (var (line, i) in lines.Select((line, i) => (line, i)))
            said.AddRange(Moisture(line, $"/lines/{i}/", setting));
        if (lines.Any(LooksAtAir))
            said.Add(new("reflective-uncertainty", "An R that counts an air space or a bright "
                + "face is good to about 15 %: the two systems differ by that much.", null, null,
                []));
        return said;
    }

    /// <summary>True where no answer to a question would bring a value.</summary>
    private static bool IsBeyondSteelTables(RebuiltLine line, Setting setting) =>
        setting.Input.SteelSystem is not null
        && (line.Asked.Candidate.Kind != MaterialKind.Blanket
            || line.Asked.Candidate.MaterialR is not null);

    /// <summary>A claim beside what it comes to in this plane.</summary>
    private static IEnumerable<ConclusionLine> Claim(
        RebuiltLine line, string home, Setting setting)
    {
        if (line is not { Asked.Ours: false, Claim.Outcome: { } outcome }) yield break;
        var words = setting.Words;
        var built = line switch
        {
            { WinterR: null } => "",
            { WinterR: { } winter, Summer: { } summer } =>
                $" as built into this plane: {words.Of(winter)} in winter"
                + (setting.IsUnheated ? " (rated as if heated)" : "")
                + $" and {words.Of(summer.R)} in summer",
            { WinterR: { } all } => $" as built into this plane: {words.Of(all)}",
        };
        yield return new(
            "claim-" + outcome switch
            {
                ClaimOutcome.Supported => "supported",
                ClaimOutcome.SummerOnlySystemValue => "summer-only",
                ClaimOutcome.NeedsAirSpaceNotThere => "needs-air-space",
                _ => "not-reachable",
            },
            $"\"{line.Name}\"{built}{(built.Length > 0 ? "." : ":")} {line.Claim.Text}",
            null, line.Id,
            line.WinterR is null ? [home + "claim/materialMostR"]
                : line.Tested is null
                ? [home + "winter/assemblyR", home + "summer/assemblyR",
                    home + "claim/materialMostR"]
                : [home + "tested/assemblyR", home + "claim/materialMostR"]);
    }

    private static IEnumerable<ConclusionLine> Pair(
        RebuiltLine option, RebuiltLine rival, IReadOnlyList<RebuiltLine> lines, Setting setting)
    {
        var (ours, theirs) = (option.Name, rival.Name);
        if (rival.U is null || option.U is null) yield break;
        string[] Figures(Func<RebuiltLine, string> member) =>
        [
            .. ((RebuiltLine[])[rival, option]).Select(line => FormattableString.Invariant(
                $"/lines/{lines.TakeWhile(other => other != line).Count()}/")
                + member(line)),
        ];
        yield return Resistance("winter", option, rival, setting,
            option.U.Value.ToResistance(), rival.U.Value.ToResistance(),
            Figures(line => line.Tested is null ? "winter/assemblyR" : "tested/assemblyR"));
        if (option.Summer is { } ourSummer && rival.Summer is { } theirSummer)
            yield return Resistance("summer", option, rival, setting,
                ourSummer.R, theirSummer.R, Figures(_ => "summer/assemblyR"));
        if (option.Asked.PricePerFt2 is { } ourPrice && rival.Asked.PricePerFt2 is { } theirPrice)
        {
            var (words, id) = theirPrice < ourPrice ? ("costs less than", "rival-cheaper")
                : theirPrice > ourPrice ? ("costs more than", "option-cheaper")
                : ("costs the same as", "same-price");
            yield return new(
                id,
                $"\"{theirs}\" {words} \"{ours}\" for the area covered: "
                    + $"{setting.Words.Price(theirPrice)} against "
                    + $"{setting.Words.Price(ourPrice)}"
                    + (option.Asked.Price!.Origin == "list"
                        ? $", ours by the price list \"{setting.Input.Prices!.Id}\"."
                        : "."),
                option.Id, rival.Id, Figures(_ => "price/perFt2"));
        }
    }

    private static ConclusionLine Resistance(
        string season, RebuiltLine option, RebuiltLine rival, Setting setting,
        ThermalResistance ours, ThermalResistance theirs, IReadOnlyList<string> figures)
    {
        var percent = 100 * (theirs.TotalSi / ours.TotalSi - 1);
        var same = LooksAtAir(option) || LooksAtAir(rival) ? SameReflectivePercent : SamePercent;
        var (id, phrase) = percent > same ? ("rival-better", "holds heat back better than")
            : percent < -same ? ("option-better", "holds heat back less than")
            : ("same", "holds heat back about as well as");
        var words = setting.Words;
        var isIdle = setting.IsUnheated && season == "winter";
        return new(
            $"{season}-{id}",
            (isIdle ? "Were it heated, in winter " : $"In {season} ")
                + $"\"{rival.Name}\" {(isIdle ? Would(phrase) : phrase)} \"{option.Name}\": "
                + $"{words.Of(theirs)} against {words.Of(ours)}, both as built into this plane."
                + (isIdle ? " Nothing heats it, so neither saves fuel." : ""),
            option.Id, rival.Id, figures);
    }

    private static string Would(string phrase) => phrase.Replace(
        "holds", "would hold", StringComparison.Ordinal);

    private static bool LooksAtAir(RebuiltLine line) => line.Winter is not null
        && (line.Winter.AirSpaces.Count > 0 || line.Asked.Candidate.RoomEmittance < 0.5);

    private static IEnumerable<ConclusionLine> Moisture(
        RebuiltLine line, string home, Setting setting)
    {
        var (option, rival) =
            line.Asked.Ours ? (line.Id, (string?)null) : (null, line.Id);
        if (line.Moisture is { Year.Verdict: not MoistureVerdict.Dry } finding)
            yield return new(
                finding.Year.Verdict switch
                {
                    MoistureVerdict.Accumulates => "moisture-accumulates",
                    MoistureVerdict.NearlyDries => "moisture-nearly-dries",
                    _ => "moisture-wets-and-dries",
                },
                $"\"{line.Name}\": {finding.Text}", option, rival,
                [home + "moisture/peakGPerM2", home + "moisture/carriedOverGPerM2"]);
        if (line.Drip is not { WorstMonth: { } month, WorstFaceRh: { } rh }) yield break;
        if (rh >= 0.999)
            yield return new(
                "drips",
                $"\"{line.Name}\" drips into the room in an average {MonthOf(month)}."
                    + Itself(month, setting),
                option, rival, [home + "drip/worstFaceRhPercent"]);
        else if (rh >= DripFinding.MouldRh)
            yield return new(
                "mould-risk",
                FormattableString.Invariant(
                    $"\"{line.Name}\": the room face reaches {100 * rh:0} % relative ")
                    + $"humidity in an average {MonthOf(month)}; mould grows from about 80 %."
                    + Itself(month, setting),
                option, rival, [home + "drip/worstFaceRhPercent"]);
    }

    /// <summary>Where the room air itself is damp, the insulation is not to blame.</summary>
    private static string Itself(int month, Setting setting) =>
        setting.RoomAir?.Months.FirstOrDefault(state => state.Outdoors.Month == month) is { } air
        && air.Rh > DripFinding.MouldRh - 0.05
            ? FormattableString.Invariant(
                $" The room air itself is at {100 * air.Rh:0} % then, whatever the insulation.")
            : "";

    public static string MonthOf(int month) => System.Globalization.CultureInfo.InvariantCulture
        .DateTimeFormat.GetMonthName(month);
}
