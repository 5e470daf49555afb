using System.Globalization;
using PostFrame.Engine.Buildings;
using PostFrame.Engine.Heat;
using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.TakeOff;

/// <summary>
/// The shop's allowances and limits as they hold for one job: what the request set, else the usual.
/// </summary>
/// <remarks>Source: takeoff.md 7.0 (basis HB-1) and W8 for the metric values.</remarks>
internal sealed class Practice
{
    private readonly Dictionary<string, Length> lengths = [];
    private readonly HashSet<string> asked = [];

    private Practice(bool metric) => Metric = metric;

    public bool Metric { get; }

    public Length RoundUpTo => lengths["roundUpTo"];

    public Length Tolerance => lengths["tolerance"];

    public Length EaveTuck => lengths["eaveTuck"];

    public Length RidgeLap => lengths["ridgeLap"];

    public Length JunctionLap => lengths["junctionLap"];

    public Length BreakLap => lengths["breakLap"];

    public Length VentSetback => lengths["ventSetback"];

    public Length VentFold => lengths["ventFold"];

    public Length WallTop => lengths["wallTop"];

    public Length WallBase => lengths["wallBase"];

    public Length OpeningHead => lengths["openingHead"];

    public Length CornerWrap => lengths["cornerWrap"];

    public Length RakeWrap => lengths["rakeWrap"];

    public Length JambMargin => lengths["jambMargin"];

    public Length PartitionLap => lengths["partitionLap"];

    public Length ShortHeader => lengths["shortHeader"];

    public Length LongestOverRidge => lengths["longestOverRidge"];

    public Length BagDiameter => lengths["bagDiameter"];

    public Length PalletHeight => lengths["palletHeight"];

    public Length TapeRoll => lengths["tapeRoll"];

    public Length DoubleFacedRoll => lengths["doubleFacedRoll"];

    /// <summary>Sag between two purlins; zero: none.</summary>
    public Length DrapeSag => lengths["drapeSag"];

    public Length EndTrim => lengths["endTrim"];

    public Length MinUsefulOffcut => lengths["minUsefulOffcut"];

    public double DrapePercent { get; private set; }

    public double TapeExtraPercent { get; private set; }

    public bool MergeShortHeaders { get; private set; }

    public Mass OnePersonLimit { get; private set; }

    public Mass TwoPersonLimit { get; private set; }

    public Mass BagLimit { get; private set; }

    /// <summary>
    /// The practice of a job, with a violation for every value out of its bounds.
    /// </summary>
    public static Practice Read(PracticeInput input, bool metric, Findings findings)
    {
        var practice = new Practice(metric);
        foreach (var rule in PracticeRules.Lengths)
        {
            var given = rule.Given(input);
            var value = findings.Optional(
                $"/practice/{rule.Id}", rule.Id, given, rule.Least, rule.Most);
            practice.lengths[rule.Id] = value ?? rule.Usual(metric);
            if (given is not null) practice.asked.Add(rule.Id);
        }
        if (practice.Tolerance.Times(4) > practice.RoundUpTo)
            findings.Broken("/practice/tolerance", "too-large",
                "The tolerance is more than a quarter of the rounding step.",
                practice.Tolerance, practice.RoundUpTo.Times(0.25));
        if (input is { DrapePercent: not null, DrapeSag: { } sag })
            findings.Add("/practice/drapeSag", "told-twice",
                "The drape is given as a percentage and as a sag; give one of them.",
                sag.Number(metric), unit: LengthWords.Unit(metric));
        practice.DrapePercent = practice.Percent("drapePercent", input.DrapePercent, 0, findings);
        practice.TapeExtraPercent =
            practice.Percent("tapeExtraPercent", input.TapeExtraPercent, 5, findings);
        if (input.MergeShortHeaders is not null) practice.asked.Add("mergeShortHeaders");
        practice.MergeShortHeaders = input.MergeShortHeaders ?? true;
        practice.OnePersonLimit =
            practice.Heavy("onePersonLimit", input.OnePersonLimit, 50, findings);
        practice.TwoPersonLimit =
            practice.Heavy("twoPersonLimit", input.TwoPersonLimit, 75, findings);
        practice.CompareLimits(input, findings);
        practice.BagLimit = practice.Heavy("bagLimit", input.BagLimit, 40, findings);
        return practice;
    }

    /// <summary>A sag is shallow: its formula holds to a quarter of the spacing and no more.
    /// </summary>
    public void CheckSag(Framing roof, Findings findings)
    {
        var most = Length.FromMillimetres(roof.SpacingMm / 4);
        if (DrapeSag <= most) return;
        findings.Broken("/practice/drapeSag", "too-large",
            $"The sag {DrapeSag.Say(Metric)} is more than a quarter of the purlin spacing, "
            + $"{most.Say(Metric)}.", DrapeSag, most);
    }

    /// <summary>
    /// A set-back given beside a slot closes within ⅛ in with half the slot along each slope.
    /// </summary>
    /// <remarks>Source: takeoff.md 2.4, v = (t/2)·k.</remarks>
    public static void CheckVent(PracticeInput input, Building building, Findings findings)
    {
        if (input.VentSetback is not { } setback || building.VentSlot is not { } slot) return;
        if (building.Roof.Ridge is not { } ridge) return;
        foreach (var vertex in new[] { ridge, ridge + 1 })
        {
            var factor = Slope.FromRatio(
                Math.Abs(building.Roof.Profile.SlopeBefore(vertex).RiseOverRun)).Factor;
            var half = slot.Times(factor / 2);
            if (Math.Abs((setback - half).Nanometres) <= Bounds.Closing.Nanometres) continue;
            findings.Broken("/practice/ventSetback", "does-not-close",
                $"ventSetback is {findings.Say(setback)}, but by ventSlotWidth "
                + $"{findings.Say(slot)} (/building/roof) it is half of that × slope factor "
                + string.Create(CultureInfo.InvariantCulture, $"{factor:0.000000}")
                + $", {findings.Say(half)}. Give one of them, or two that agree within 1/8 in.",
                setback, half);
            return;
        }
    }

    /// <summary>A limit given alone is held against the usual value of the other.</summary>
    private void CompareLimits(PracticeInput input, Findings findings)
    {
        var (one, two) = (OnePersonLimit, TwoPersonLimit);
        if (!(two < one)) return;
        if (input.TwoPersonLimit is null)
            findings.Add("/practice/onePersonLimit", "too-large",
                $"One person is said to lift {one.Say(Metric)}, more than the usual "
                + $"{two.Say(Metric)} of two; give twoPersonLimit as well.",
                one.Number(Metric), two.Number(Metric), MassWords.Unit(Metric));
        else
            findings.Add("/practice/twoPersonLimit", "too-small",
                $"Two people are said to lift {two.Say(Metric)}, less than "
                + (input.OnePersonLimit is null ? "the usual " : "")
                + $"{one.Say(Metric)} of one.",
                two.Number(Metric), one.Number(Metric), MassWords.Unit(Metric));
    }

    /// <summary>"asked" when the request set it, else the mark the usual value carries.</summary>
    public string MarkOf(string id) => asked.Contains(id)
        ? "asked"
        : PracticeRules.Lengths.FirstOrDefault(r => r.Id == id)?.Mark ?? "C";

    public Length this[string id] => lengths[id];

    private double Percent(string id, double? given, double usual, Findings findings)
    {
        if (given is not { } value) return usual;
        asked.Add(id);
        if (value is >= 0 and <= 50) return value;
        findings.Add($"/practice/{id}", value < 0 ? "too-small" : "too-large",
            $"{id} is {value:0.###} %; it must be 0 to 50 %.", $"{value:0.###}",
            value < 0 ? "0" : "50", "%");
        return usual;
    }

    private Mass Heavy(string id, Mass? given, double usualPounds, Findings findings)
    {
        if (given is not { } value) return Mass.FromPounds(usualPounds);
        asked.Add(id);
        if (value.TotalPounds is >= 5 and <= 2000) return value;
        var (least, most) = (Mass.FromPounds(5), Mass.FromPounds(2000));
        var small = value < least;
        findings.Add($"/practice/{id}", small ? "too-small" : "too-large",
            $"{id} is {value.Say(Metric)}; it must be {least.Say(Metric)} to {most.Say(Metric)}.",
            value.Number(Metric), (small ? least : most).Number(Metric),
            MassWords.Unit(Metric));
        return Mass.FromPounds(usualPounds);
    }
}
