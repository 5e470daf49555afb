using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.TakeOff;

/// <summary>Every length of a shop's practice: what for, usual value, bounds.</summary>
/// <remarks>Source: takeoff.md 2.4, 2.5, 2.6, 2.8, 4.3, 4.5, 4.6, 7.0; common practice.</remarks>
internal static class PracticeRules
{
    public static IReadOnlyList<PracticeLength> Lengths { get; } =
    [
        new("roundUpTo", "order step every piece is rounded up to, once", 6, 100, 0.25, 144,
            p => p.RoundUpTo),
        new("tolerance", "a length this little above a step counts as on it", 0.0625, 1.5, 0, 1,
            p => p.Tolerance),
        new("eaveTuck", "over the eave purlin, folded under, per eave end", 6, 150, 0, 48,
            p => p.EaveTuck),
        new("ridgeLap", "past a closed ridge, per piece", 6, 150, 0, 48, p => p.RidgeLap),
        new("junctionLap", "where a lean-to roof meets roof or wall, per piece", 6, 150, 0, 48,
            p => p.JunctionLap),
        new("breakLap", "at a break of slope, per piece end, when made in two", 6, 150, 0, 48,
            p => p.BreakLap),
        new("ventSetback", "back from the middle of a vented ridge, along the slope", 2, 50, 0, 24,
            p => p.VentSetback),
        new("ventFold", "facing folded back at the vent slot", 3, 75, 0, 24, p => p.VentFold),
        new("wallTop", "over the eave strut or up behind the rake", 3, 75, 0, 48, p => p.WallTop),
        new("wallBase", "fold at the skirt board", 3, 75, 0, 48, p => p.WallBase),
        new("openingHead", "fold at an opening's head or sill", 3, 75, 0, 48,
            p => p.OpeningHead),
        new("cornerWrap", "added to each end of a wall before strips are counted", 0, 0, 0, 6,
            p => p.CornerWrap),
        new("rakeWrap", "added to each end of a roof before strips are counted", 0, 0, 0, 6,
            p => p.RakeWrap),
        new("jambMargin", "an opening counts this much narrower at each jamb", 0, 0, 0, 24,
            p => p.JambMargin),
        new("partitionLap", "lap at a partition; half of it lengthens a run", 3, 75, 0, 24,
            p => p.PartitionLap),
        new("drapeSag", "sag of the blanket between two purlins", 0, 0, 0, 24, p => p.DrapeSag),
        new("shortHeader", "header pieces shorter than this are fiddly", 24, 600, 0, 120,
            p => p.ShortHeader),
        new("longestOverRidge", "longer runs over the ridge are laid as pairs", 540, 13_500,
            120, 2400, p => p.LongestOverRidge),
        new("bagDiameter", "largest coil in a bag", 30, 760, 6, 72, p => p.BagDiameter),
        new("palletHeight", "highest load of a pallet", 96, 2400, 24, 120, p => p.PalletHeight),
        new("tapeRoll", "length of a roll of lap tape", 2160, 50_000, 120, 12_000,
            p => p.TapeRoll),
        new("doubleFacedRoll", "length of a roll of double-faced tape", 720, 18_000, 120, 12_000,
            p => p.DoubleFacedRoll),
        new("endTrim", "squaring trim lost per roll", 6, 150, 0, 120, p => p.EndTrim),
        new("minUsefulOffcut", "shortest offcut kept as labelled stock", 72, 1800, 1, 600,
            p => p.MinUsefulOffcut),
    ];
}

/// <summary>One length of a practice, its usual values in inches and millimetres.</summary>
internal sealed record PracticeLength(
    string Id, string Text, double UsualIn, double UsualMm, double LeastIn, double MostIn,
    Func<PracticeInput, Length?> Given)
{
    public string Mark => "C";

    public Length Least => Length.FromInches(LeastIn);

    public Length Most => Length.FromInches(MostIn);

    public Length Usual(bool metric) =>
        metric ? Length.FromMillimetres(UsualMm) : Length.FromInches(UsualIn);
}
