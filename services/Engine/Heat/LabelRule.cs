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
            + "number and thickness of the air spaces, and R for heat flow up, down and "
            + "horizontal.", "R"),
        new("16 CFR 460.12(b)(5)", "Insulation with a reflective facing follows the rule for the "
            + "material itself.", "R"),
        new("16 CFR 460.5(a)", "Other insulation is tested as material alone, at 75 °F mean, "
            + "without any air space.", "R"),
        new("16 CFR 460.5(b)", "A single reflective sheet takes its emittance by ASTM C1371 and R "
            + "from the ASHRAE tables at 50 °F mean and 30 °F difference.", "M"),
        new("16 CFR 460.5(c)", "Several sheets are tested in a hot box by ASTM C1363.", "M"),
        new("16 CFR 460.5(d)", "Foil-faced material is tested alone; it may be given with an air "
            + "space besides.", "M"),
        new("16 CFR 460.8", "No specimen may be more than 10 % below the stated R.", "R"),
        new("16 CFR 460.20", "No R per inch, unless tests show that it does not fall with "
            + "thickness.", "R"),
        new("16 CFR 460.22", "An R claimed for a product that is not insulation must be tested "
            + "like one.", "R"),
        new("16 CFR 460.18", "An advertisement that gives an R also gives the type and thickness, "
            + "and says that the higher the R, the greater the insulating power.", "M"),
        new("16 CFR 460.19", "A claim of savings says that savings vary.", "M"),
    ];
}
