using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.Heat;

/// <summary>An assembly's U-factor against a code minimum.</summary>
/// <param name="Verdict">How it stands.</param>
/// <param name="Row">The row it was held against; null when none is held.</param>
/// <param name="Limit">The row's limit; null when none is held.</param>
/// <param name="MarginU">Limit less own U [Btu/(h·ft²·°F)]; positive is in hand.</param>
/// <param name="Text">In words, with what it defers to.</param>
/// <param name="Notes">Exemptions to ask about, and the prescriptive R row where held.</param>
public sealed record CodeFinding(
    CodeVerdict Verdict,
    EnvelopeMinimum? Row,
    ThermalTransmittance? Limit,
    double? MarginU,
    string Text,
    IReadOnlyList<string> Notes)
{
    private const string Official =
        "The code adopted where you build and its official decide.";

    /// <summary>
    /// Finds the row and compares the whole assembly, films and framing included.
    /// </summary>
    /// <param name="rows">The rows held.</param>
    /// <param name="question">Which of them is asked for.</param>
    /// <param name="u">The whole assembly.</param>
    /// <param name="isConditioned">False where nothing heats or cools the building.</param>
    /// <param name="words">How it is worded; US units where not said.</param>
    /// <param name="doubts">
    /// Sentences on what else is unsure, such as U or the zone; with any, nothing is met outright.
    /// </param>
    public static CodeFinding Of(
        IEnumerable<EnvelopeMinimum> rows, CodeQuestion question, ThermalTransmittance u,
        bool isConditioned = true, UnitWords? words = null, params IReadOnlyList<string> doubts)
    {
        ArgumentNullException.ThrowIfNull(rows);
        ArgumentNullException.ThrowIfNull(doubts);
        ArgumentNullException.ThrowIfNull(question);
        var matching = rows.Where(row => Matches(row, question)).ToList();
        words ??= UnitWords.Us;
        var notes = NotesFor(question, matching, words);
        // Where a row was read and another remembered, the one that was read counts.
        var row = matching.Where(r => r.Measure == "U_max").OrderByDescending(r => r.IsCertain)
            .ThenByDescending(r => r.Read).FirstOrDefault();
        if (row is null)
            return new(CodeVerdict.NoRow, null, null, null,
                $"No U-factor row is held for {Words(question)}. {Official}", notes);

        var limit = ThermalTransmittance.FromUFactor(
            double.Parse(row.Value, System.Globalization.CultureInfo.InvariantCulture));
        var margin = limit.TotalUFactor - u.TotalUFactor;
        // Both figures are printed to three decimals, so they are compared so.
        var within = Math.Round(u.TotalUFactor, 3) <= Math.Round(limit.TotalUFactor, 3);
        IReadOnlyList<string> unsure = row.IsCertain ? doubts : [Doubt(row), .. doubts];
        var verdict = (within, unsure.Count == 0) switch
        {
            _ when !isConditioned => CodeVerdict.MayBeExempt,
            (true, true) => CodeVerdict.Meets,
            (false, true) => CodeVerdict.Misses,
            (true, false) => CodeVerdict.MeetsIfRowIsRight,
            (false, false) => CodeVerdict.MissesIfRowIsRight,
        };
        return new(
            verdict, row, limit, margin, TextFor(verdict, row, words, u, limit, unsure), notes);
    }

    private static string TextFor(
        CodeVerdict verdict, EnvelopeMinimum row, UnitWords words, ThermalTransmittance u,
        ThermalTransmittance limit, IReadOnlyList<string> unsure)
    {
        var figures = $"U {words.Of(u)} against at most {words.Of(limit)} {words.UUnit} "
            + (words.IsMetric ? $"(printed as U-{row.Value}) " : "")
            + $"({row.Standard} {row.Edition}, {row.Table}, zone {row.Zone}, "
            + $"{row.Conditioning}, {row.Construction})";
        var doubts = string.Join(' ', unsure);
        return verdict switch
        {
            CodeVerdict.Meets => $"Within the U-factor row: {figures}. {Official}",
            CodeVerdict.Misses => $"Above the U-factor row: {figures}. {Official}",
            CodeVerdict.MeetsIfRowIsRight =>
                $"Within the row if it is right: {figures}. {doubts} {Official}",
            CodeVerdict.MayBeExempt =>
                "Nothing conditions this building: the energy code may exempt it or not reach it. "
                + $"Ask the building official. Were it conditioned: {figures}. {doubts}".TrimEnd(),
            _ => $"Above the row if it is right: {figures}. {doubts} {Official}",
        };
    }

    private static string Doubt(EnvelopeMinimum row) => row.Read
        ? "The copy it was read in does not name its edition: look it up before relying on it."
        : "The row is from memory: look it up before relying on it.";

    private static List<string> NotesFor(
        CodeQuestion question, List<EnvelopeMinimum> matching, UnitWords words)
    {
        var notes = new List<string>
        {
            "Unconditioned and many agricultural buildings are outside the energy code; ask "
            + "whether an exemption applies.",
            $"Semi-heated (90.1) means heating of at least {words.Flow(3.4)} but below the "
            + "conditioned threshold of the zone; its limits are looser.",
        };
        if (question.Construction == "metal building")
            notes.Add(
                "Metal-building rows describe steel framing. A wood post-frame building clad in "
                + "metal is normally \"attic and other\" and \"wood-framed and other\".");
        foreach (var row in matching.Where(row => row.Measure == "R_prescriptive_text"))
            notes.Add(
                $"R path: {row.Value}{(row.Read ? "" : " (from memory)")} rated insulation, by "
                + $"{row.Standard} {row.Edition}, {row.Table}. {row.Note}".TrimEnd());
        notes.AddRange(matching
            .Where(row => row.Measure == "U_max" && row.Note.Length > 0)
            .Select(row => $"Row note: {row.Note}"));
        return notes;
    }

    private static bool Matches(EnvelopeMinimum row, CodeQuestion question) =>
        row.Standard == question.Standard
        && row.Edition.Split(' ')[0] == question.Edition
        && row.Conditioning == question.Conditioning
        && row.Element == question.Element
        && row.Construction == question.Construction
        && ZoneMatches(row.Zone, question.Zone);

    private static bool ZoneMatches(string row, string zone)
    {
        var marine4 = string.Equals(zone, "4C", StringComparison.OrdinalIgnoreCase);
        return row switch
        {
            "4 except marine" => zone.StartsWith('4') && !marine4,
            "5 and marine 4" => zone.StartsWith('5') || marine4,
            _ => zone.Length > 0 && row == zone[..1],
        };
    }

    private static string Words(CodeQuestion q) =>
        $"{q.Standard} {q.Edition}, zone {q.Zone}, {q.Conditioning}, {q.Element}, {q.Construction}";
}
