using System.Globalization;
using PostFrame.Engine.Buildings;
using PostFrame.Engine.Heat;
using PostFrame.Engine.Quantities;
using PostFrame.Engine.TakeOff;

namespace PostFrame.Engine;

/// <summary>Every value a take-off rests on and who set it: building, rules, practice.</summary>
internal static class Assumptions
{
    public static IReadOnlyList<Assumption> Of(Job job) =>
    [
        .. OfBuilding(job), .. OfRules(job), .. OfProducts(job),
        .. OfPractice(job.Practice)
            .Where(a => a.Id != "ventSetback" || job.Building.VentSlot is null),
    ];

    private static IEnumerable<Assumption> OfBuilding(Job job)
    {
        var (building, given) = (job.Building, job.Given);
        yield return Sized(
            job, "width", "out to out of girts" + (given.WidthBasis switch
            {
                WidthBasis.OutsideOfPosts => $": outside of posts {job.Say(given.Width!.Value)}"
                    + Girts(),
                WidthBasis.ClearSpan => $": clear span {job.Say(given.Width!.Value)} + 2 × posts "
                    + job.Say(given.PostDepth!.Value) + Girts(),
                _ => "",
            }),
            building.Width, given.WidthBasis is null ? "C" : "asked");
        yield return Sized(
            job, "eaveHeight",
            "from the strip base to the eave line" + EaveWords(job),
            building.Roof.Profile.Start.Up, given.EaveHeightDatum is null ? "C" : "asked");
        if (given.Roof is { Form: RoofForm.DoublePitch, RidgeFromSidewallA: null })
            yield return Sized(
                job, "ridgeFromSidewallA", "not given: the ridge is taken in the middle",
                building.Width.Times(0.5), "C");
        if (given.Roof is { Form: RoofForm.DoublePitch, EaveHeightB: null })
            yield return Sized(
                job, "eaveHeightB", "not given: from the strip base, as the rest of the roof tells "
                + "it, else level with eave A", building.Roof.Profile.End.Up, "C");
        if (building.StemWall > Length.Zero)
            yield return Sized(
                job, "stemWallHeight", "wall strips start on the stem wall", building.StemWall,
                "asked");
        if (building.VentSlot is { } slot)
            yield return Sized(
                job, "ventSlotWidth",
                "horizontal; half of it along the slope is the set-back from the vented ridge",
                slot, "asked");
        if (building.Partition is { } partition)
            yield return Sized(
                job, "partition",
                "roof and sidewalls are covered on one side of the partition only", partition,
                "asked");
        yield return new(
            "coverOverhangs", given.Roof?.CoverOverhangs == true
                ? $"the roof is covered to the fascia: {job.Say(building.CoveredEaveOverhang)} "
                    + $"beyond eaves and {job.Say(building.CoveredRakeOverhang)} beyond rakes"
                : "whether the roof is covered over its overhangs to the fascia",
            given.Roof?.CoverOverhangs == true ? "yes" : "no", null,
            given.Roof?.CoverOverhangs == true ? "asked" : "C");
        foreach (var lean in building.LeanTos)
            yield return new(
                $"leanTo{lean.Side}", "what lies inside the lean-to",
                lean.Inside.ToString().ToLowerInvariant(), null, "asked");
        if (building.LeanToAt(BuildingSide.A) is { } leanA && leanA.SharesEndwall(1))
            yield return new(
                "endwallStart", "places on endwalls are measured from the lean-to's outer girts on "
                + "side A, where their one run starts", "0", null, "C");
        yield return new(
            "framing", "purlins and girts for the heat summary and the fixings",
            $"{Centres(building.RoofFraming)} and {Centres(building.WallFraming)} centres", null,
            given.Framing is null ? "C" : "asked");

        string Girts() => $" + 2 × girts {job.Say(given.GirtThickness!.Value)}";

        string Centres(Framing framing) =>
            job.Say(Length.FromMillimetres(framing.SpacingMm));
    }

    /// <summary>How the eave line came about. Source: takeoff.md 2.2.</summary>
    private static string EaveWords(Job job)
    {
        var (datum, given) = (job.Building.Datum, job.Given.EaveHeight!.Value);
        var from = job.Given.EaveHeightDatum switch
        {
            EaveHeightDatum.Floor => "from the floor",
            EaveHeightDatum.Grade => "from grade",
            EaveHeightDatum.SplashBoard => "from the splash board",
            EaveHeightDatum.Bearing => "",
            _ => null,
        };
        if (from is null) return "";
        var slope = job.Building.Roof.Profile.SlopeBefore(1);
        var rise = job.Metric
            ? slope.RiseOverRun.ToString("0.######", CultureInfo.InvariantCulture)
            : slope.RisePer12.ToString("0.####", CultureInfo.InvariantCulture) + "/12";
        var words = !datum.AtBearing ? $": {job.Say(given)} {from}" : string.Create(
            CultureInfo.InvariantCulture,
            $": bearing {job.Say(given)} + heel {job.Say(datum.Heel)} + purlins "
            + $"{job.Say(datum.PurlinDepth)} × {slope.Factor:0.000000} − girts "
            + $"{job.Say(datum.GirtThickness)} × {rise}");
        if (datum.StripBaseAboveDatum != Length.Zero)
            return $"{words} less {job.Say(datum.StripBaseAboveDatum)} up to where strips start";
        return datum.AtBearing ? words : $"{words}, where the strips start";
    }

    private static IEnumerable<Assumption> OfRules(Job job)
    {
        if (job.Plan.RoofChoice is { } choice)
            yield return new(
                "roofLayout", $"how roof strips are laid: {choice.Why}",
                choice.Layout == RoofLayout.OverRidge ? "overRidge" : "eaveToRidge", null,
                choice.Why == "as asked" ? "asked" : "C");
        yield return new(
            "strip1", "roof and sidewall strips are counted from endwall 1, endwall strips from "
            + "sidewall A on both endwalls", "1", null, "C");
        yield return new(
            "corners", "sidewalls take the full length and endwalls the full width; neither is "
            + "shortened for the other", "full", null, "C");
        yield return new(
            "openings", "strips wholly inside a wide opening of fixed place become header (and "
            + "sill) pieces; all others are hung full and cut out on site", "wholly inside", null,
            "C");
        yield return new(
            "endwallPieces", "endwall pieces are square-cut to their highest point and trimmed to "
            + "the rake on site", "square", null, "C");
    }

    private static IEnumerable<Assumption> OfProducts(Job job)
    {
        foreach (var product in job.Assignments.Select(a => a.Product).Distinct()
            .Where(p => p.IsCutFromRolls).OrderBy(p => p.Code, StringComparer.Ordinal))
            yield return new(
                "coverage",
                $"what one strip of {product.TitleIn(job.Metric)} covers, by its construction",
                product.Construction.Value switch
                {
                    StripConstruction.LapInside =>
                        $"nominal width less {job.Say(product.LapInsideWidth)}",
                    _ => "nominal width",
                }, null, product.Construction.Mark);
    }

    private static IEnumerable<Assumption> OfPractice(Practice practice)
    {
        foreach (var rule in PracticeRules.Lengths)
            yield return Practised(practice, rule);
        yield return Plain("drapePercent", "added to roof slope lengths for sag",
            practice.DrapePercent, "%");
        yield return Plain("tapeExtraPercent", "added to joint length for tape",
            practice.TapeExtraPercent, "%");
        yield return Heavy("onePersonLimit", "heaviest piece for one person",
            practice.OnePersonLimit);
        yield return Heavy("twoPersonLimit", "heaviest piece for two people",
            practice.TwoPersonLimit);
        yield return Heavy("bagLimit", "heaviest bag with several pieces", practice.BagLimit);
        yield return new(
            "mergeShortHeaders",
            "short headers over one opening become one piece where that fits and buys no more",
            practice.MergeShortHeaders ? "yes" : "no", null,
            practice.MarkOf("mergeShortHeaders"));

        Assumption Heavy(string id, string text, Mass mass) => new(
            id, text, mass.Number(practice.Metric), MassWords.Unit(practice.Metric),
            practice.MarkOf(id));

        Assumption Plain(string id, string text, double value, string unit) => new(
            id, text, value.ToString("0.###", CultureInfo.InvariantCulture), unit,
            practice.MarkOf(id));
    }

    /// <summary>Long lengths in feet or metres, the others in inches or millimetres.</summary>
    private static Assumption Practised(Practice practice, PracticeLength rule)
    {
        var (value, metric) = (practice[rule.Id], practice.Metric);
        return rule.UsualIn < 240
            ? new(rule.Id, rule.Text, value.Number(metric), LengthWords.Unit(metric),
                practice.MarkOf(rule.Id))
            : new(rule.Id, rule.Text,
                (metric ? value.TotalMetres : value.TotalFeet)
                    .ToString("0.###", CultureInfo.InvariantCulture),
                metric ? "m" : "ft", practice.MarkOf(rule.Id));
    }

    private static Assumption Sized(
        Job job, string id, string text, Length value, string mark) => new(
        id, text, value.Number(job.Metric), LengthWords.Unit(job.Metric), mark);
}
