using PostFrame.Engine.Heat;
using PostFrame.Engine.Quantities;

namespace PostFrame.SizingApi.Comparisons;

/// <summary>Opens what a material reaches and what a claim is measured against.</summary>
internal static class ClaimWorking
{
    private const string PerInch = "h·ft²·°F/Btu per in";
    private const string IpR = "h·ft²·°F/Btu";
    private const string Rating =
        "16 CFR 460.5: spaces by the ASHRAE tables at 50 °F mean and 30 °F difference";

    public static void Add(WorkingSheet sheet, RebuiltLine line)
    {
        var candidate = line.Asked.Candidate;
        if (candidate.MaterialR is { } r) Material(sheet, line, r.TotalRValue);
        if (line.Asked.Ours) return;
        if (line.Claim.MaterialMost is { } most)
            Reached(sheet, candidate, most.TotalRValue, "the most the material reaches",
                MaterialBand.BubbleSheetMost, new Opens("claim/materialMostR"));
        if (line.Claim.SystemWinter is { } winter)
            System(sheet, "winter", line.Claim.WinterParts, winter, "claim/systemWinterR");
        if (line.Claim.SystemSummer is { } summer)
            System(sheet, "summer", line.Claim.SummerParts, summer, "claim/systemSummerR");
    }

    private static void Material(WorkingSheet sheet, RebuiltLine line, double r)
    {
        var opens = new Opens[] { new("material/r"), Opens.Si("material/si") };
        var candidate = line.Asked.Candidate;
        var (source, mark) = SourceOf(line.Asked, r);
        if (candidate.KnownR is not null)
            sheet.Add("material", "R of the product", "as listed", [], r, IpR, source, mark, opens);
        else if (IsAsClaimed(candidate, r))
            sheet.Add(
                "material", "R of the material", "as claimed, within what the material reaches",
                [], r, IpR, source, mark, opens);
        else
            Reached(sheet, candidate, r, "R of the material", MaterialBand.BubbleSheetUsual, opens);
    }

    /// <summary>Where a line's material R comes from.</summary>
    public static (string Source, string Mark) SourceOf(ComparedLine line, double r)
    {
        var candidate = line.Candidate;
        var band = MaterialBand.Of(candidate.Kind);
        if (line.Product is { } product)
            return ($"GET /v1/products, {product.Code}: {product.NominalR.Source}",
                product.NominalR.Mark);
        return IsAsClaimed(candidate, r)
            ? ("as claimed; within what the material reaches: " + band.Source, band.Mark)
            : ("what the material reaches at its thickness: " + band.Source, band.Mark);
    }

    private static bool IsAsClaimed(Candidate candidate, double r) =>
        candidate.ClaimedR is { } claimed && Math.Abs(claimed - r) < 1e-6;

    private static void Reached(
        WorkingSheet sheet, Candidate candidate, double r, string quantity, double perSheet,
        params Opens[] opens)
    {
        var band = MaterialBand.Of(candidate.Kind);
        var inches = (candidate.ThicknessMm ?? 0) / 25.4;
        switch (candidate.Kind)
        {
            case MaterialKind.FoilSheet:
                sheet.Add("material", quantity, "a foil has no body", [], r, IpR, band.Source,
                    band.Mark, opens);
                break;
            case MaterialKind.BubbleSheet:
                sheet.Add(
                    "material", quantity, "R = R_sheet·max(1, d/d_double)",
                    [
                        new("R_sheet", perSheet, IpR), new("d", inches, "in"),
                        new("d_double", MaterialBand.BubbleSheetMm * 2 / 25.4, "in"),
                    ],
                    r, IpR, perSheet == MaterialBand.BubbleSheetMost
                        ? "Natural Resources Canada, most for one sheet without a space (read)"
                        : band.Source, "R", opens);
                break;
            case MaterialKind.Blanket:
                var (thin, thick) = MaterialBand.BlanketAround(inches);
                sheet.Add(
                    "material", quantity,
                    thin == thick
                        ? "R = R₁·d/d₁" : "R = R₁ + (R₂ − R₁)·(d − d₁)/(d₂ − d₁)",
                    [
                        new("d", inches, "in"), new("d₁", thin.Inches, "in"),
                        new("R₁", thin.R, IpR), new("d₂", thick.Inches, "in"),
                        new("R₂", thick.R, IpR),
                    ],
                    r, IpR, band.Source, band.Mark, opens);
                break;
            default:
                sheet.Add(
                    "material", quantity, "R = r·d",
                    [new("r", band.HighPerInch, PerInch), new("d", inches, "in")], r, IpR,
                    band.Source, band.Mark, opens);
                break;
        }
    }

    private static void System(
        WorkingSheet sheet, string season, IReadOnlyList<WorkingInput> parts, ThermalResistance r,
        string member) => sheet.Add(
            "claim", $"the system as stated, {season} direction", "R = Σ R", parts, r.TotalSi,
            "m²·K/W", Rating, "M", Opens.R(member));
}
