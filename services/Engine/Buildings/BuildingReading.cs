using PostFrame.Engine.Heat;
using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.Buildings;

/// <summary>Checks a building as customers give it and resolves its datums.</summary>
/// <remarks>Source: takeoff.md 2.2 and 2.3.</remarks>
internal sealed class BuildingReading(BuildingInput input, bool metric, Findings findings)
{
    private const string At = "/building";

    /// <summary>The building; null when its shape cannot be told, with violations.</summary>
    public Building? Read()
    {
        var before = findings.All.Count;
        var width = Width();
        var length = findings.Required(
            $"{At}/length", "The length", input.Length, Bounds.LeastLength, Bounds.MostLength);
        var eave = findings.Required(
            $"{At}/eaveHeight", "The eave height", input.EaveHeight, Bounds.LeastHeight,
            Bounds.MostHeight);
        var datum = Datum();
        var stem = findings.Optional($"{At}/stemWallHeight", "The stem wall",
            input.StemWallHeight, Length.Zero, Bounds.MostHeight) ?? Length.Zero;
        var shape = Roof(width, eave, datum);
        var (roofFraming, wallFraming) = Framings();
        var partition = length is { } l1 ? Partition(l1) : null;
        var vent = length is { } l2 ? Vent(l2) : null;
        var slot = findings.Optional($"{At}/roof/ventSlotWidth", "The vent slot",
            input.Roof?.VentSlotWidth, Bounds.OneInch.Times(0.25), Length.FromInches(24));
        var overhangs = Overhangs();
        var panels = length is { } l3 ? Panels(l3, shape) : [];
        if (shape is not null) CheckStem(stem, shape);
        var leans = shape is not null && length is { } l4
            ? new LeanToReading(input.LeanTos ?? [], shape, stem, l4, findings).Read()
            : [];
        if (findings.All.Count > before || width is null || length is null || shape is null)
            return null;
        return new()
        {
            Name = input.Name,
            Metric = metric,
            Form = input.Roof!.Form!.Value,
            Width = width.Value,
            Length = length.Value,
            Roof = shape,
            Datum = datum,
            StemWall = stem,
            Vent = vent,
            VentSlot = slot,
            CoveredEaveOverhang = overhangs.Eave,
            CoveredRakeOverhang = overhangs.Rake,
            LeanTos = leans,
            Panels = panels,
            Insulated = partition?.Insulated ?? new(Length.Zero, length.Value),
            Partition = partition?.At,
            RoofFraming = roofFraming,
            WallFraming = wallFraming,
        };
    }

    /// <summary>Out to out of girts, from posts or clear span. Source: takeoff.md 2.2.</summary>
    private Length? Width()
    {
        var given = findings.Required(
            $"{At}/width", "The width", input.Width, Bounds.LeastWidth, Bounds.MostWidth);
        var basis = input.WidthBasis ?? WidthBasis.OutsideOfGirts;
        var girts = Thin("girtThickness", "The girt thickness", input.GirtThickness,
            basis != WidthBasis.OutsideOfGirts || input.GirtThickness is not null);
        var posts = Thin("postDepth", "The post depth", input.PostDepth,
            basis == WidthBasis.ClearSpan);
        if (given is null || girts is null || posts is null) return null;
        return basis switch
        {
            WidthBasis.OutsideOfPosts => given.Value + girts.Value * 2,
            WidthBasis.ClearSpan => given.Value + girts.Value * 2 + posts.Value * 2,
            _ => given,
        };
    }

    private HeightDatum Datum()
    {
        var atBearing = input.EaveHeightDatum == EaveHeightDatum.Bearing;
        var needsBase = input.EaveHeightDatum is EaveHeightDatum.Grade
            or EaveHeightDatum.SplashBoard;
        if (needsBase && input.StripBaseAboveDatum is null)
            findings.Missing($"{At}/stripBaseAboveDatum",
                "How far the wall strips start above grade or splash board");
        var stripBase = findings.Optional($"{At}/stripBaseAboveDatum",
            "The strip base above the datum", input.StripBaseAboveDatum,
            Bounds.MostGap.Times(-1), Bounds.MostGap);
        if (input is
            {
                EaveHeightDatum: null or EaveHeightDatum.StripBase,
                StripBaseAboveDatum: { } above
            } && above != Length.Zero)
            findings.Add($"{At}/stripBaseAboveDatum", "means-nothing",
                "stripBaseAboveDatum means nothing here: eaveHeightDatum is stripBase.",
                above.Number(metric), "0", LengthWords.Unit(metric));
        var heel = Thin("heelHeight", "The heel height", input.HeelHeight, atBearing);
        var purlin = Thin("purlinDepth", "The purlin depth (0 when recessed)",
            input.PurlinDepth, atBearing);
        if (atBearing && input.GirtThickness is null
            && input.WidthBasis is null or WidthBasis.OutsideOfGirts)
            findings.Missing($"{At}/girtThickness",
                "The girt thickness (0 when set between the posts), for a bearing height,");
        return new()
        {
            StripBaseAboveDatum = stripBase ?? Length.Zero,
            AtBearing = atBearing,
            Heel = heel ?? Length.Zero,
            PurlinDepth = purlin ?? Length.Zero,
            GirtThickness = input.GirtThickness ?? Length.Zero,
        };
    }

    private Length? Thin(string member, string what, Length? value, bool needed)
    {
        if (value is null && !needed) return Length.Zero;
        if (!needed)
            findings.Add($"{At}/{member}", "means-nothing",
                $"{what} means nothing here: {(member == "postDepth"
                    ? "widthBasis is not clearSpan"
                    : "eaveHeightDatum is not bearing")}.", value!.Value.Number(metric),
                unit: LengthWords.Unit(metric));
        return findings.Required($"{At}/{member}", what, value, Length.Zero,
            Length.FromFeet(6));
    }

    private RoofShape? Roof(Length? width, Length? eave, HeightDatum datum)
    {
        if (input.Roof is not { } roof)
        {
            findings.Missing($"{At}/roof", "The roof");
            return null;
        }
        if (roof.Form is not { } form)
        {
            findings.Missing($"{At}/roof/form", "The form of the roof");
            return null;
        }
        RoofMembers.Check(roof, form, findings);
        return width is { } w && eave is { } h
            ? new RoofReading(roof, w, h, datum, findings).Read()
            : null;
    }

    private void CheckStem(Length stem, RoofShape shape)
    {
        var lowest = Length.Min(shape.Profile.Start.Up, shape.Profile.End.Up);
        if (stem < lowest) return;
        findings.Broken($"{At}/stemWallHeight", "too-large",
            $"The stem wall {findings.Say(stem)} reaches the eave at {findings.Say(lowest)}.",
            stem, lowest);
    }

    private (Framing Roof, Framing Wall) Framings()
    {
        const string at = $"{At}/framing";
        var given = input.Framing ?? new FramingInput();
        var width = findings.Optional($"{at}/memberWidth", "The member width",
            given.MemberWidth, Length.FromInches(0.5), Length.FromInches(12));
        var depth = findings.Optional($"{at}/memberDepth", "The member depth",
            given.MemberDepth, Length.FromInches(0.5), Length.FromInches(18));
        return (Of("purlinSpacing", given.PurlinSpacing), Of("girtSpacing", given.GirtSpacing));

        Framing Of(string member, Length? spacing) => new()
        {
            WidthMm = (width ?? Usual(1.5, 38)).TotalMillimetres,
            DepthMm = (depth ?? Usual(3.5, 89)).TotalMillimetres,
            SpacingMm = (findings.Optional($"{at}/{member}", "The spacing", spacing,
                Length.FromInches(13), Length.FromFeet(16)) ?? Usual(24, 600)).TotalMillimetres,
        };
    }

    private Length Usual(double inches, double millimetres) =>
        metric ? Length.FromMillimetres(millimetres) : Length.FromInches(inches);

    private (Length At, Interval Insulated)? Partition(Length length)
    {
        if (input.Partition is not { } partition) return null;
        const string at = $"{At}/partition";
        var place = findings.Required($"{at}/fromEndwall1", "The place of the partition",
            partition.FromEndwall1, Bounds.OneInch, length - Bounds.OneInch);
        var end = partition.InsulatedEndwall ?? 1;
        if (end is not (1 or 2))
            findings.Add($"{at}/insulatedEndwall", "not-an-endwall",
                $"insulatedEndwall is {end}; it is 1 or 2.", $"{end}", "1 or 2");
        if (place is not { } p) return null;
        return (p, end == 2 ? new(p, length) : new(Length.Zero, p));
    }

    private Interval? Vent(Length length)
    {
        if (input.Roof is not { } roof) return null;
        var from = findings.Optional($"{At}/roof/ventFrom", "The start of the vent",
            roof.VentFrom, Length.Zero, length);
        var to = findings.Optional($"{At}/roof/ventTo", "The end of the vent",
            roof.VentTo, Length.Zero, length);
        if (roof.Ridge != RidgeKind.Vented)
        {
            foreach (var (name, given) in new[]
            {
                ("ventFrom", roof.VentFrom), ("ventTo", roof.VentTo),
                ("ventSlotWidth", roof.VentSlotWidth),
            })
                if (given is not null)
                    findings.Add($"{At}/roof/{name}", "ridge-not-vented",
                        $"{name} is given, but the ridge is closed.");
            return null;
        }
        if (roof.Form == RoofForm.Monoslope)
            findings.Add($"{At}/roof/ridge", "no-ridge",
                "A monoslope roof has no ridge to vent.", "vented", "closed");
        var vent = new Interval(from ?? Length.Zero, to ?? length);
        if (vent.Size <= Length.Zero)
            findings.Broken($"{At}/roof/ventTo", "out-of-order",
                $"The vent ends at {findings.Say(vent.To)}, before it starts at "
                + $"{findings.Say(vent.From)}.", vent.To, vent.From);
        return vent;
    }

    private (Length Eave, Length Rake) Overhangs()
    {
        var eave = findings.Optional($"{At}/roof/eaveOverhang", "The eave overhang",
            input.Roof?.EaveOverhang, Length.Zero, Bounds.MostGap);
        var rake = findings.Optional($"{At}/roof/rakeOverhang", "The rake overhang",
            input.Roof?.RakeOverhang, Length.Zero, Bounds.MostGap);
        if (input.Roof is
            { CoverOverhangs: true, EaveOverhang: null, RakeOverhang: null })
            findings.Add($"{At}/roof/coverOverhangs", "no-overhang",
                "The overhangs are to be covered, but neither eaveOverhang nor rakeOverhang says "
                + "how far they reach.", "true", "false");
        return input.Roof?.CoverOverhangs == true
            ? (eave ?? Length.Zero, rake ?? Length.Zero)
            : (Length.Zero, Length.Zero);
    }

    private List<TranslucentPanel> Panels(Length length, RoofShape? shape)
    {
        var panels = new List<TranslucentPanel>();
        var given = input.Roof?.TranslucentPanels ?? [];
        if (given.Count > Bounds.MostPanels)
            findings.Add($"{At}/roof/translucentPanels", "too-many",
                $"There are {given.Count} translucent panels; the most is {Bounds.MostPanels}.",
                $"{given.Count}", $"{Bounds.MostPanels}");
        for (var i = 0; i < Math.Min(given.Count, Bounds.MostPanels); i++)
        {
            var at = $"{At}/roof/translucentPanels/{i}";
            var panel = given[i];
            var plane = panel.Plane ?? "roof";
            if (plane is not ("roof" or "roofA" or "roofB")
                || (plane != "roof" && shape is { Ridge: null }))
                findings.Add($"{at}/plane", "no-such-plane",
                    $"There is no roof plane {plane} for a panel.", plane, "roof, roofA, roofB");
            var from = findings.Required(
                $"{at}/fromStart", "The place of the panel", panel.FromStart, Length.Zero, length);
            var width = findings.Required(
                $"{at}/width", "The width of the panel", panel.Width, Bounds.OneInch, length);
            if (from is not { } f || width is not { } w) continue;
            if (f + w > length)
                findings.Broken($"{at}/width", "outside-building",
                    $"The panel ends at {findings.Say(f + w)}, beyond the length "
                    + $"{findings.Say(length)}.", f + w, length);
            var here = new TranslucentPanel(
                plane, new(f, f + w), panel.Treatment ?? TranslucentTreatment.CoverAndCut);
            if (panels.FirstOrDefault(p => p.Along.Overlaps(here.Along)
                && (p.Plane == plane || p.Plane == "roof" || plane == "roof")) is { } other)
                findings.Broken($"{at}/fromStart", "panels-overlap",
                    $"The panel from {findings.Say(f)} to {findings.Say(f + w)} overlaps the one "
                    + $"from {findings.Say(other.Along.From)} to {findings.Say(other.Along.To)}.",
                    f, other.Along.To);
            panels.Add(here);
        }
        return [.. panels.OrderBy(p => p.Along.From).ThenBy(p => p.Along.To)
            .ThenBy(p => p.Plane, StringComparer.Ordinal)];
    }
}
