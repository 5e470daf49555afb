using PostFrame.Engine.Heat;

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
        said.AddRange(lines.Where(line => line.U is null).Select(line => new ConclusionLine(
            "not-comparable", $"\"{line.Body.Name}\" cannot be rebuilt until its questions are "
                + "answered; nothing is assumed for it.",
            line.Asked.Ours ? line.Body.Id : null, line.Asked.Ours ? null : line.Body.Id)));
        foreach (var rival in theirs)
        {
            foreach (var option in ours) said.AddRange(Pair(option, rival));
        }
        foreach (var line in lines) said.AddRange(Moisture(line));
        if (setting.IsUnheated)
            said.Add(new("unheated", "Nothing heats this building, so no insulation saves fuel "
                + "here. What differs is dripping and summer heat.", null, null));
        if (lines.Any(line => line.Winter?.AirSpaces.Count > 0))
            said.Add(new("reflective-uncertainty", "An R with a reflective air space is good to "
                + "about 15 %: the two systems differ by that much.", null, null));
        return said;
    }

    private static IEnumerable<ConclusionLine> Pair(RebuiltLine option, RebuiltLine rival)
    {
        var (ours, theirs) = (option.Body.Name, rival.Body.Name);
        if (rival.U is null || option.U is null) yield break;
        yield return Resistance("winter", option, rival,
            1 / option.U.Value.TotalUFactor, 1 / rival.U.Value.TotalUFactor);
        if (option.Summer is { } ourSummer && rival.Summer is { } theirSummer)
            yield return Resistance("summer", option, rival,
                ourSummer.R.TotalRValue, theirSummer.R.TotalRValue);
        if (option.Asked.PricePerFt2 is { } ourPrice && rival.Asked.PricePerFt2 is { } theirPrice)
        {
            var (word, id) = theirPrice < ourPrice ? ("less", "rival-cheaper")
                : theirPrice > ourPrice ? ("more", "option-cheaper")
                : ("the same", "same-price");
            yield return new(
                id,
                FormattableString.Invariant(
                    $"\"{theirs}\" costs {word} per covered square foot: {theirPrice:0.00} ")
                    + FormattableString.Invariant($"against {ourPrice:0.00} for \"{ours}\"."),
                option.Body.Id, rival.Body.Id);
        }
    }

    private static ConclusionLine Resistance(
        string season, RebuiltLine option, RebuiltLine rival, double ours, double theirs)
    {
        var figures = FormattableString.Invariant(
            $"R-{theirs:0.0} against R-{ours:0.0} for \"{option.Body.Name}\"");
        var percent = 100 * (theirs / ours - 1);
        var same = LooksAtAir(option) || LooksAtAir(rival) ? SameReflectivePercent : SamePercent;
        var (id, words) = percent > same ? ("rival-better", "resists more")
            : percent < -same ? ("option-better", "resists less")
            : ("same", "resists about as much");
        return new(
            $"{season}-{id}",
            $"In {season} \"{rival.Body.Name}\" {words} on the same basis: {figures}.",
            option.Body.Id, rival.Body.Id);
    }

    private static bool LooksAtAir(RebuiltLine line) => line.Winter is not null
        && (line.Winter.AirSpaces.Count > 0 || line.Asked.Candidate.RoomEmittance < 0.5);

    private static IEnumerable<ConclusionLine> Moisture(RebuiltLine line)
    {
        var (option, rival) =
            line.Asked.Ours ? (line.Body.Id, (string?)null) : (null, line.Body.Id);
        if (line.Moisture is { Year.Verdict: not MoistureVerdict.Dry } finding)
            yield return new(
                finding.Year.Verdict switch
                {
                    MoistureVerdict.Accumulates => "moisture-accumulates",
                    MoistureVerdict.NearlyDries => "moisture-nearly-dries",
                    _ => "moisture-wets-and-dries",
                },
                $"\"{line.Body.Name}\": {finding.Text}", option, rival);
        if (line.Drip is not { WorstMonth: { } month, WorstFaceRh: { } rh }) yield break;
        if (rh >= 0.999)
            yield return new(
                "drips",
                $"\"{line.Body.Name}\" drips into the room in an average {MonthOf(month)}.",
                option, rival);
        else if (rh >= DripFinding.MouldRh)
            yield return new(
                "mould-risk",
                FormattableString.Invariant(
                    $"\"{line.Body.Name}\": the room face reaches {100 * rh:0} % relative ")
                    + $"humidity in an average {MonthOf(month)}; mould grows from about 80 %.",
                option, rival);
    }

    public static string MonthOf(int month) => System.Globalization.CultureInfo.InvariantCulture
        .DateTimeFormat.GetMonthName(month);
}
