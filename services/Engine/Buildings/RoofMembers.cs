namespace PostFrame.Engine.Buildings;

/// <summary>
/// Which members of a roof mean something for which form; the others are refused.
/// </summary>
internal static class RoofMembers
{
    public static void Check(RoofInput roof, RoofForm form, Findings findings)
    {
        foreach (var (name, given, forms) in Members(roof))
            if (given && !forms.Contains(form))
                findings.Add(
                    $"/building/roof/{name}", "not-for-this-form",
                    $"{name} means nothing for a {Word(form)} roof; it belongs to "
                    + string.Join(", ", forms.Select(Word)) + ".");
    }

    public static string Word(RoofForm form) =>
        char.ToLowerInvariant(form.ToString()[0]) + form.ToString()[1..];

    private static IEnumerable<(string Name, bool Given, RoofForm[] Forms)> Members(RoofInput roof)
    {
        const RoofForm gable = RoofForm.Gable;
        const RoofForm offset = RoofForm.OffsetRidge;
        const RoofForm mono = RoofForm.Monoslope;
        const RoofForm gambrel = RoofForm.Gambrel;
        const RoofForm pitch = RoofForm.DoublePitch;
        yield return ("slope", roof.Slope is not null, [gable, mono]);
        yield return ("slopeA", roof.SlopeA is not null, [offset, pitch]);
        yield return ("slopeB", roof.SlopeB is not null, [offset, pitch]);
        yield return ("ridgeFromSidewallA", roof.RidgeFromSidewallA is not null, [offset, pitch]);
        yield return ("eaveHeightB", roof.EaveHeightB is not null,
            [gable, offset, mono, gambrel, pitch]);
        yield return ("ridgeHeight", roof.RidgeHeight is not null,
            [gable, offset, mono, gambrel, pitch]);
        yield return ("lowerSlope", roof.LowerSlope is not null, [gambrel, pitch]);
        yield return ("lowerRun", roof.LowerRun is not null, [gambrel, pitch]);
        yield return ("upperSlope", roof.UpperSlope is not null, [gambrel, pitch]);
        yield return ("upperRun", roof.UpperRun is not null, [gambrel, pitch]);
        yield return ("halfOctagon", roof.HalfOctagon, [gambrel]);
        yield return ("brokenSide", roof.BrokenSide is not null, [pitch]);
        yield return ("points", roof.Points is not null, [RoofForm.Profile]);
    }
}
