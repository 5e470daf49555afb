using PostFrame.Engine.Buildings;
using PostFrame.Engine.TakeOff;

namespace PostFrame.Engine;

/// <summary>
/// The cautions that go with a take-off. They defer to local rules and licensed practice and
/// promise nothing.
/// </summary>
/// <remarks>Source: takeoff.md 6; its sources were read as its section 8 says. The rules name US
/// units; figures of a metric job are converted from them and rounded to the safe side (derived),
/// but NIOSH's 23 kg and the code's 12.7 mm, which the rules give themselves (from memory).
/// </remarks>
internal sealed class Cautions
{
    private readonly bool metric;

    private Cautions(bool metric) => this.metric = metric;

    private const string Memory = "from memory of the rule named; not read in a stored copy";

    /// <summary>Those that touch this job, the standing one first.</summary>
    public static IReadOnlyList<Caution> Of(Job job)
    {
        Product[] products = [.. job.Assignments.Select(a => a.Product).Distinct()];
        var roof = job.Planes.Any(p => p.Kind == PlaneKind.Roof);
        var fibre = products.Any(p => p.Kind is ProductKind.Blanket or ProductKind.Batt);
        var rolls = products.Any(p => p.IsCutFromRolls);
        var foam = products.Any(p => p.Kind is ProductKind.SprayFoam or ProductKind.Board);
        var bubble = products.Any(p => p.Kind == ProductKind.BubbleSheet);
        return [.. new Cautions(job.Metric).All().Where(c => c.When switch
        {
            When.Always => true,
            When.Roof => roof,
            When.Fibre => fibre,
            When.Rolls => rolls,
            When.Foam => foam,
            _ => bubble,
        }).Select(c => c.Caution)];
    }

    private IEnumerable<(When When, Caution Caution)> All() =>
        [.. General(), .. OnSite(), .. AtHeight(), .. Fire(), .. MoistureAndHeat()];

    private IEnumerable<(When, Caution)> General()
    {
        yield return (When.Always, new(
            "standing", "Before you start",
            "This sheet helps you cut and lay blanket. It is not a building plan, a code review or "
            + "a safety plan. The building code in force where you build, your building official, "
            + "and the licensed designer and electrician on the job decide. If this sheet and they "
            + "disagree, they are right.",
            "the reach of a take-off", "our own words"));
        yield return (When.Fibre, new(
            "fibre-handling", "Glass fibre",
            "Glass fibre itches and irritates eyes, skin and throat. Long loose sleeves and "
            + "trousers, gloves, eye protection, head cover overhead; a NIOSH-approved particulate "
            + "respirator (N95 class or better) when dust is visible or air is still. Do not tape "
            + "cuffs. Cut with a knife, not a saw; do not tear or blow off with air. Rinse skin "
            + "with cool water before washing; wash work clothes apart. Read the safety data "
            + "sheet.",
            "voluntary exposure goal 1 fibre/cc; OSHA nuisance dust 15 mg/m³ total, 5 respirable; "
            + "NIOSH REL 3 fibres/cc or 5 mg/m³ total; 29 CFR 1910.1200",
            "OSHA–NAIMA–NIA–ICAA Health and Safety Partnership Program 1999; OSHA synthetic "
            + "mineral fibres page"));
        yield return (When.Rolls, new(
            "wind", "Wind",
            "Do not lay in wind that lifts a corner. Default stop at "
            + $"{In("15 mph", "24 km/h")}, lower on steep roofs.",
            "practice", "common practice, no source"));
        yield return (When.Rolls, new(
            "lifting", "Lifting",
            "Weight is on the label. Over "
            + $"{In("50 lb", "22.7 kg")}: two people or a hoist.",
            $"NIOSH lifting equation, load constant {In("51 lb", "23 kg")}",
            "NIOSH 94-110, Applications Manual for the Revised NIOSH Lifting Equation"));
        yield return (When.Fibre, new(
            "cold", "Cold",
            $"Plain vinyl cracks below about {In("40 °F", "5 °C")}. Warm it or change facing.",
            "minimum laying temperature of plain vinyl facing",
            "laminators' trade-association insulation bulletin"));
    }

    private IEnumerable<(When, Caution)> OnSite()
    {
        yield return (When.Always, new(
            "electrical", "Electricity",
            "De-energise before laying near services; foil conducts, staples pierce cable. Keep "
            + $"blanket {In("3 in", "80 mm")} from recessed lights not rated for insulation "
            + "contact; do not bury boxes; bond or keep foil clear of service entries. Overhead "
            + $"lines: {In("10 ft", "3.1 m")} minimum to 50 kV for cranes and ladders, more above.",
            "NEC 410.116(B), 300.4; 29 CFR 1926.416, 1926.1408", Memory));
        yield return (When.Always, new(
            "flues", "Flues, heaters, motors",
            "Keep to the clearance on the appliance's and vent's label; never wrap blanket to a "
            + "flue; use a listed shield.",
            "appliance listings, IMC/IFGC", Memory));
        yield return (When.Rolls, new(
            "birds-rodents", "Birds and rodents",
            $"Exposed facing is torn by birds; cover to {In("8 ft", "2.5 m")} with liner or rail "
            + "where stock or machinery can touch it.",
            "practice", "common practice, no source"));
        yield return (When.Always, new(
            "farm-exemptions", "Farm buildings",
            "Some places exempt farm buildings from parts of the code. Never assume it; use, heat, "
            + "public access and sale change the answer.",
            "IBC Appendix C and state law", Memory));
    }

    private IEnumerable<(When, Caution)> AtHeight()
    {
        yield return (When.Always, new(
            "falls", "Falls and edges",
            $"Tie off or guard at {In("6 ft", "1.8 m")} and over in construction "
            + $"({In("4 ft", "1.2 m")} in general industry). Slopes over {In("4:12", "18°")} need "
            + "guardrails with toeboards, nets or fall arrest.",
            "29 CFR 1926.501(b)(1), (b)(10), (b)(11); 1910.28",
            "29 CFR 1926 Subpart M in quotation; (b)(10) and (b)(11) from memory"));
        yield return (When.Roof, new(
            "blanket-hides-hole", "Blanket hides the hole",
            "Faced blanket looks like a floor and holds nothing. It hides purlins, skylights and "
            + "openings. Never step on it. Lay only what you can clad now; mark purlin lines and "
            + "every opening; cover or guard holes before laying over them.",
            "29 CFR 1926.501(b)(4); covers to carry twice the load, be secured and be marked HOLE "
            + "or COVER: 1926.502(i)",
            "29 CFR 1926.501, .502; NIOSH 90-100; OSHA interpretation 16 Apr 1997"));
        yield return (When.Roof, new(
            "skylights", "Skylights",
            "A translucent panel is a hole with a lid. Do not sit, lean or step on it.",
            "29 CFR 1926.501(b)(4)", "NIOSH 90-100 and later alert"));
        yield return (When.Roof, new(
            "purlins-are-not-anchors", "Purlins are not anchors",
            "On engineered metal buildings, purlins and girts may not be a fall-arrest anchor "
            + "without a qualified person's written approval, and are not a walking surface except "
            + $"as the rule allows; bundles only within {In("8 ft", "2.4 m")} of a frame line. In "
            + "wood post-frame apply the same caution.",
            "29 CFR 1926.758(g)–(i)",
            "29 CFR 1926.758; OSHA interpretation 5 Apr 2005"));
    }

    private IEnumerable<(When, Caution)> Fire()
    {
        yield return (When.Rolls, new(
            "facing-fire", "Fire rating of the facing",
            "Facing and blanket are tested together. The metal-building insulation norm is flame "
            + "spread index 25 or less and smoke developed 50 or less; the building code limit for "
            + "insulation and facings is 25 and 450 by ASTM E84 or UL 723. Exposed and concealed "
            + "products differ: some kraft-backed facings must not be left exposed. Ask for the "
            + "tested numbers of your product.",
            "IBC 720 (720.2 concealed, 720.3 exposed), IRC R302.10; NAIMA 202 and NIA norm",
            "NAIMA 202-96 summaries; NIA short specification; code wording from memory"));
        yield return (When.Foam, new(
            "foam-plastic", "Foam plastic",
            "Foam boards, thermal blocks and spray foam need a 15-minute thermal barrier "
            + $"({In("½ in", "12.7 mm")} gypsum or tested equal) from the interior unless an "
            + "exception applies. Foam itself: flame spread 75 or less, smoke developed 450 or "
            + "less.",
            "IBC 2603.3, 2603.4; IRC R316.4", "state adoption text of IBC 2603"));
        yield return (When.Bubble, new(
            "bubble-sheet", "Bubble sheet",
            "Reflective plastic core insulation: 25 and 450 or less with the ASTM E2599 mounting, "
            + "or a passed room-corner test (NFPA 286 or UL 1715), as used. Not every foil bubble "
            + "sheet qualifies.",
            "IBC ch. 26 (section 2614 in the 2018 text; numbering moves with the edition)",
            "IBC 2614, 2018 text in a city adoption"));
    }

    private IEnumerable<(When, Caution)> MoistureAndHeat()
    {
        yield return (When.Always, new(
            "vapour-side", "Vapour retarder side",
            "Facing to the warm-in-winter side, that is to the inside, in heated buildings in cold "
            + "and mixed climates. Every joint, tear and end sealed: the retarder is only as good "
            + "as its seams. Hot-humid and cold-storage buildings are different: ask the designer.",
            "extension and USDA guidance; IBC 1404, IRC R702.7 classes",
            "USDA Forest Products Laboratory R1231; code classes from memory"));
        yield return (When.Always, new(
            "two-retarders", "Two retarders",
            "Do not put a second vapour barrier inside the first without the designer.",
            "practice", "common practice, no source"));
        yield return (When.Always, new(
            "ventilation", "Ventilation",
            "Insulation does not remove moisture. Livestock, wet vehicles, green concrete and "
            + "people load the air: a dairy cow gives off some "
            + $"{In("12 to 18 lb", "5.5 to 8 kg")} of water a day. Keep ridge, eave and mechanical "
            + "ventilation working.",
            "moisture given off by stock", "USDA Forest Products Laboratory R1231"));
        yield return (When.Always, new(
            "unvented-heaters", "Unvented heaters",
            "Unvented burners put their water and fumes in the room: propane makes about "
            + In("1.6 lb of water per lb burned, about 7 lb (0.8 gal) per gallon; natural gas "
                    + "about 9 lb per therm",
                "1.6 kg of water per kg burned, about 0.8 kg (0.8 L) per litre; natural gas about "
                    + "0.14 kg per kWh")
            + ". Tightening a building with insulation makes both worse. Use vented heat; fit CO "
            + "alarms. Temporary heaters on site: fresh air, "
            + $"{In("12 to 36 in", "310 to 920 mm")} clearances, {In("10 ft", "3.1 m")} from "
            + "tarpaulins.",
            "C₃H₈ + 5 O₂ → 3 CO₂ + 4 H₂O, 72/44 = 1.63; 29 CFR 1926.154",
            "stoichiometry; 29 CFR 1926.154 in quotation"));
        yield return (When.Always, new(
            "r-on-paper", "R on paper",
            "R-values here are nominal, before installation; compression at framing lowers the "
            + "assembly.",
            "scope of faced-insulation standards; assembly U-factors for metal buildings",
            "National Insulation Association scope note; ASHRAE 90.1 App. A from memory"));
    }

    private string In(string us, string si) => metric ? si : us;

    private enum When
    {
        Always,
        Roof,
        Fibre,
        Rolls,
        Foam,
        Bubble,
    }
}
