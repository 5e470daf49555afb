namespace PostFrame.Engine.Heat;

/// <summary>Sections of the federal R-value rule that a comparison quotes by number.</summary>
/// <param name="Section">The section.</param>
/// <param name="Text">What it asks, in our words.</param>
/// <param name="Mark">R read, M from memory.</param>
public sealed record LabelRule(string Section, string Text, string Mark)
{
    /// <summary>What the rule covers and how it is used here.</summary>
    public const string Scope =
        "16 CFR Part 460 is about home insulation. A farm shop or commercial post-frame building "
        + "is not clearly inside it; it serves here as the yardstick, not as a legal finding.";

    /// <summary>The sections that bear on a claimed R.</summary>
    public static IReadOnlyList<LabelRule> All { get; } =
    [
        new("16 CFR 460.12(b)(4)", "A label of reflective insulation gives the number of sheets, "
            + "the number and thickness of the air spaces, and the R-value of that system for heat "
            + "flow up, down and horizontal; one direction only where the label says that the "
            + "product can be used only there.", "R"),
        new("16 CFR 460.12(b)(5)", "Insulation with a reflective facing follows the rule for the "
            + "material itself.", "R"),
        new("16 CFR 460.5(a)", "Everything except foil is tested by ASTM C177, C518, C1363 or "
            + "C1114 at 75 °F mean and 50 ± 10 °F difference, the material alone, without any air "
            + "space.", "R"),
        new("16 CFR 460.5(b)", "A single reflective sheet takes its emittance by ASTM C1371 and R "
            + "from the ASHRAE tables at 50 °F mean and 30 °F difference.", "M"),
        new("16 CFR 460.5(c)", "Several sheets, or what lies outside the ASHRAE tables, are tested "
            + "in a hot box by ASTM C1363, panel and conditions by ASTM C1224.", "M"),
        new("16 CFR 460.5(d)", "Foil-faced material is tested alone by (a); it may be given with "
            + "an air space besides, tested, or material and air space by (b).", "M"),
        new("16 CFR 460.8", "No specimen may be more than 10 % below the stated R.", "R"),
        new("16 CFR 460.18", "An advertisement with an R-value gives type, thickness and the "
            + "sentence on higher R-values.", "M"),
        new("16 CFR 460.19", "One that claims savings says that savings vary.", "M"),
        new("16 CFR 460.20", "No R per inch, unless tests show that it does not fall with "
            + "thickness.", "R"),
        new("16 CFR 460.22", "An R claimed for a product that is not insulation, sold to save "
            + "energy, must be tested by 460.5 (added 2019).", "R"),
        new("70 FR 31258; 84 FR 20777", "Amended in 2005 and on 13 May 2019, the latter in force "
            + "from 13 May 2020.", "R"),
    ];
}
