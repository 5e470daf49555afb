using System.Globalization;
using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.Buildings;

/// <summary>
/// Turns a roof as customers give it into a profile, whatever its form. What is told twice must
/// close within ⅛ in; what is missing, falls inward or does not add up is a violation.
/// </summary>
/// <remarks>Source: takeoff.md 2.2 and 2.3, table of forms.</remarks>
internal sealed class RoofReading(
    RoofInput given, Length width, Length eaveHeight, HeightDatum datum, Findings findings)
{
    private const string At = "/building/roof";

    /// <summary>The roof as given, sizes out of all bounds left out.</summary>
    private readonly RoofInput roof = given with
    {
        EaveHeightB = findings.Optional($"{At}/eaveHeightB", "Eave height B",
            given.EaveHeightB, Bounds.LeastHeight, Bounds.MostPeak),
        RidgeHeight = findings.Optional($"{At}/ridgeHeight", "The ridge height",
            given.RidgeHeight, Bounds.LeastHeight, Bounds.MostPeak),
        RidgeFromSidewallA = findings.Optional($"{At}/ridgeFromSidewallA",
            "The place of the ridge", given.RidgeFromSidewallA, Bounds.OneInch,
            width - Bounds.OneInch),
        UpperRun = findings.Optional($"{At}/upperRun", "The upper run",
            given.UpperRun, Bounds.OneInch, Bounds.MostWidth),
    };

    /// <summary>The shape; null when there were violations.</summary>
    public RoofShape? Read()
    {
        var before = findings.All.Count;
        var shape = roof.Form switch
        {
            RoofForm.Gable => Gable(),
            RoofForm.OffsetRidge => OffsetRidge(),
            RoofForm.Monoslope => Monoslope(),
            RoofForm.Gambrel => Gambrel(),
            RoofForm.DoublePitch => DoublePitch(),
            RoofForm.Profile =>
                new DrawnRoof(roof.Points, width, eaveHeight, datum, findings).Read(),
            _ => null,
        };
        if (findings.All.Count > before || shape is null) return null;
        return WithinHeights(shape) ? shape : null;
    }

    private RoofShape? Gable()
    {
        var slope = SlopeOf("slope", "The slope", roof.Slope);
        if (given.Slope is null && given.RidgeHeight is null)
            findings.Missing($"{At}/slope", "The slope (or the ridge height) of a gable roof");
        var half = width.Times(0.5);
        return Ridged(
            Side("A", half, eaveHeight, slope),
            Side("B", width - half, roof.EaveHeightB ?? eaveHeight, slope));
    }

    private RoofShape? OffsetRidge()
    {
        var a = SlopeOf("slopeA", "Slope A", roof.SlopeA);
        var b = SlopeOf("slopeB", "Slope B", roof.SlopeB);
        var ridge = roof.RidgeFromSidewallA ?? RidgeWhereSlopesMeet(a, b);
        if (ridge is null)
        {
            if (given.RidgeFromSidewallA is null)
                findings.Missing($"{At}/ridgeFromSidewallA", "The place of the ridge");
            return null;
        }
        if (!Inside("ridgeFromSidewallA", "The ridge", ridge.Value, width)) return null;
        if (given.EaveHeightB is null && given.SlopeB is null)
            findings.Missing($"{At}/slopeB", "Slope B (or eave height B) of an offset ridge");
        return Ridged(
            Side("A", ridge.Value, eaveHeight, a),
            Side("B", width - ridge.Value, roof.EaveHeightB, b));
    }

    /// <summary>
    /// Both eaves and both slopes given fix the ridge: r = (H_B − H_A + B·s_B)/(s_A + s_B).
    /// </summary>
    private Length? RidgeWhereSlopesMeet(Slope? a, Slope? b)
    {
        if (a is not { } slopeA || b is not { } slopeB || roof.EaveHeightB is not { } eaveB)
            return null;
        var difference = datum.EaveLine(eaveB, slopeB) - datum.EaveLine(eaveHeight, slopeA);
        return (difference + width.Times(slopeB.RiseOverRun))
            .Times(1 / (slopeA.RiseOverRun + slopeB.RiseOverRun));
    }

    private RoofShape? Monoslope()
    {
        var slope = SlopeOf("slope", "The slope", roof.Slope);
        var tops = new List<(string Name, Length Height)>();
        if (slope is { } rising)
            tops.Add(($"slope {rising}",
                datum.EaveLine(eaveHeight, rising) + width.Times(rising.RiseOverRun)));
        if (roof.EaveHeightB is { } high)
            tops.Add(("eave height B", HighEave(high, slope)));
        if (roof.RidgeHeight is { } peak)
            tops.Add(("ridge height", datum.FromStripBase(peak)));
        if (tops.Count == 0)
        {
            if (given is { Slope: null, EaveHeightB: null, RidgeHeight: null })
                findings.Missing(
                    $"{At}/slope", "The slope (or eave height B) of a monoslope roof");
            return null;
        }
        if (!Closes(tops, given.EaveHeightB is null ? "/ridgeHeight" : "/eaveHeightB")) return null;
        var low = datum.EaveLine(
            eaveHeight, slope ?? MonoslopeFrom(tops[0].Height));
        if (tops[0].Height <= low)
        {
            findings.Broken($"{At}/eaveHeightB", "roof-falls-inward",
                $"Eave B at {findings.Say(tops[0].Height)} is not above eave A at "
                + $"{findings.Say(low)}; sidewall A is the low eave of a monoslope.",
                tops[0].Height, low);
            return null;
        }
        if (slope is null)
            CheckFound(Slope.FromRatio((tops[0].Height - low) / width), "from A to B",
                given.EaveHeightB is null ? "/ridgeHeight" : "/eaveHeightB");
        return new(new([new(Length.Zero, low), new(width, tops[0].Height)]), null);
    }

    private Length HighEave(Length high, Slope? slope)
    {
        var rising = slope ?? Slope.FromRatio((high - eaveHeight) / width);
        return datum.EaveLine(high, Slope.FromRatio(-rising.RiseOverRun));
    }

    private Slope MonoslopeFrom(Length top)
    {
        var slope = Slope.FromRatio(0);
        for (var round = 0; round < 60; round++)
            slope = Slope.FromRatio((top - datum.EaveLine(eaveHeight, slope)) / width);
        return slope;
    }

    private RoofShape? Gambrel()
    {
        var half = width.Times(0.5);
        if (roof.HalfOctagon) return HalfOctagon(half);
        var lower = SlopeOf("lowerSlope", "The lower slope", roof.LowerSlope, required: true);
        var upper = SlopeOf("upperSlope", "The upper slope", roof.UpperSlope);
        if (given.UpperSlope is null && given.RidgeHeight is null)
            findings.Missing($"{At}/upperSlope", "The upper slope (or ridge height) of a gambrel");
        var run = RunsOf(half, "half the width");
        if (lower is null || run is null) return null;
        if (upper is { } flat && flat.RiseOverRun >= lower.Value.RiseOverRun)
            findings.Add($"{At}/upperSlope", "gambrel-upper-not-flatter",
                $"The upper slope {flat} is not flatter than the lower {lower}; that is a "
                + "double pitch.", $"{flat.RisePer12:0.###}", $"{lower.Value.RisePer12:0.###}",
                "in 12 in");
        return Ridged(
            Side("A", half, eaveHeight, upper, run.Value, lower.Value),
            Side("B", width - half, roof.EaveHeightB ?? eaveHeight, upper, run.Value, lower.Value));
    }

    /// <summary>Four equal chords in a half circle of diameter B: 67.5° and 22.5°.</summary>
    private RoofShape? HalfOctagon(Length half)
    {
        foreach (var (name, isGiven) in new (string, bool)[]
        {
            ("lowerSlope", roof.LowerSlope is not null), ("lowerRun", roof.LowerRun is not null),
            ("upperSlope", roof.UpperSlope is not null), ("upperRun", roof.UpperRun is not null),
        })
            if (isGiven)
                findings.Add($"{At}/{name}", "not-with-half-octagon",
                    $"{name} follows from the half octagon; leave it out.");
        var lowerRun = width.Times((1 - Math.Cos(Math.PI / 4)) / 2);
        var (lower, upper) = (Slope.FromDegrees(67.5), Slope.FromDegrees(22.5));
        return Ridged(
            Side("A", half, eaveHeight, upper, lowerRun, lower),
            Side("B", width - half, roof.EaveHeightB ?? eaveHeight, upper, lowerRun, lower));
    }

    private RoofShape? DoublePitch()
    {
        var broken = roof.BrokenSide ?? BrokenSide.A;
        var ridge = roof.RidgeFromSidewallA ?? width.Times(0.5);
        if (!Inside("ridgeFromSidewallA", "The ridge", ridge, width)) return null;
        var lower = SlopeOf(
            "lowerSlope", "The lower slope", roof.LowerSlope, required: true, least: 0);
        var upper = SlopeOf("upperSlope", "The upper slope", roof.UpperSlope, required: true);
        var a = SlopeOf("slopeA", "Slope A", roof.SlopeA);
        var b = SlopeOf("slopeB", "Slope B", roof.SlopeB);
        foreach (var (name, isGiven, ofBroken) in new[]
        {
            ("slopeA", given.SlopeA is not null, broken != BrokenSide.B),
            ("slopeB", given.SlopeB is not null, broken != BrokenSide.A),
        })
            if (isGiven && ofBroken)
                findings.Add($"{At}/{name}", "means-nothing",
                    $"{name} means nothing here: that side is broken and has its lower and upper "
                    + "slope.");
        var (runA, runB) = (ridge, width - ridge);
        var shorter = broken switch
        {
            BrokenSide.A => runA,
            BrokenSide.B => runB,
            _ => Length.Min(runA, runB),
        };
        var run = RunsOf(shorter, "the run of its side");
        if (lower is null || upper is null || run is null) return null;
        // The eaves are level only where the rest does not tell eave B.
        var tellsEaveB = broken switch
        {
            BrokenSide.A => given.SlopeB is not null,
            BrokenSide.B => given.SlopeA is not null || given.RidgeHeight is not null,
            _ => true,
        };
        var eaveB = roof.EaveHeightB ?? (tellsEaveB ? null : eaveHeight);
        var sideA = broken == BrokenSide.B
            ? Side("A", runA, eaveHeight, a)
            : Side("A", runA, eaveHeight, upper, run.Value, lower.Value);
        var sideB = broken == BrokenSide.A
            ? Side("B", runB, eaveB, b)
            : Side("B", runB, eaveB, upper, run.Value, lower.Value);
        return Ridged(sideA, sideB);
    }

    private Length? RunsOf(Length whole, string wholeName)
    {
        var run = findings.Required(
            $"{At}/lowerRun", "The lower run", roof.LowerRun, Bounds.OneInch, Bounds.MostWidth);
        if (run is not { } lower) return null;
        if (lower >= whole)
        {
            findings.Broken($"{At}/lowerRun", "runs-do-not-add-up",
                $"The lower run {findings.Say(lower)} leaves no upper part in {wholeName}, "
                + $"{findings.Say(whole)}.", lower, whole);
            return null;
        }
        if (roof.UpperRun is { } upper
            && Math.Abs((lower + upper - whole).Nanometres) > Bounds.Closing.Nanometres)
        {
            findings.Broken($"{At}/upperRun", "runs-do-not-add-up",
                $"Lower run {findings.Say(lower)} and upper run {findings.Say(upper)} make "
                + $"{findings.Say(lower + upper)}, but {wholeName} is {findings.Say(whole)}.",
                lower + upper, whole);
            return null;
        }
        return lower;
    }

    private RoofShape? Ridged(RoofSide a, RoofSide b)
    {
        var peaks = new List<(string Name, Length Height)>();
        if (a.Peak is { } fromA)
            peaks.Add(($"{(a.Peak == b.Peak ? "each side" : "side A")} {a.Words(Say)}", fromA));
        if (b.Peak is { } fromB && a.Peak != b.Peak)
            peaks.Add(($"side B {b.Words(Say)}", fromB));
        var sides = peaks.Count;
        if (roof.RidgeHeight is { } ridge) peaks.Add(("ridge height", datum.FromStripBase(ridge)));
        var told = sides <= 1 && given.RidgeHeight is not null ? "/ridgeHeight"
            : given.EaveHeightB is not null ? "/eaveHeightB"
            : given.RidgeFromSidewallA is not null ? "/ridgeFromSidewallA" : "";
        if (peaks.Count == 0 || !Closes(peaks, told)) return null;
        var peak = peaks[0].Height;
        if (b.EaveGiven is null && b.Upper is null) return null;
        var (derivedA, derivedB) = (a.Upper is null, b.Upper is null);
        (a, b) = (a.ClosedBy(peak), b.ClosedBy(peak));
        if (!Rises(a, peak, told) || !Rises(b, peak, told)) return null;
        if (derivedA) CheckFound(a.Upper!.Value, $"on side {a.Name}", told);
        if (derivedB && !(derivedA && a.Upper == b.Upper))
            CheckFound(b.Upper!.Value, $"on side {b.Name}", told);
        var points = new List<PlanePoint> { new(Length.Zero, a.EaveLine(peak)) };
        if (a.Break(peak) is { } breakA) points.Add(new(a.LowerRun, breakA));
        var ridgeVertex = points.Count;
        points.Add(new(a.Run, peak));
        if (b.Break(peak) is { } breakB) points.Add(new(width - b.LowerRun, breakB));
        points.Add(new(width, b.EaveLine(peak)));
        return new(new(points), ridgeVertex);
    }

    private string Say(Length length) => length.Say(findings.Metric);

    /// <summary>A slope that follows from heights keeps to the bounds of one that is given.
    /// </summary>
    private void CheckFound(Slope slope, string where, string member)
    {
        var x = slope.RisePer12;
        if (x is >= Bounds.LeastSlope - 1e-9 and <= Bounds.MostSlope + 1e-9) return;
        var flat = x < Bounds.LeastSlope;
        findings.Add(At + member, flat ? "too-small" : "too-large",
            $"By the heights the roof slopes {slope} {where}; it must be {Bounds.LeastSlope}:12 "
            + $"to {Bounds.MostSlope}:12.", Number(x),
            Number(flat ? Bounds.LeastSlope : Bounds.MostSlope), "in 12 in");

        static string Number(double x) => x.ToString("0.###", CultureInfo.InvariantCulture);
    }

    private bool Rises(RoofSide side, Length peak, string member)
    {
        var foot = side.Break(peak) ?? side.EaveLine(peak);
        if (peak > foot) return true;
        findings.Broken(At + member, "roof-falls-inward",
            $"On side {side.Name} the ridge at {findings.Say(peak)} is not above "
            + $"{findings.Say(foot)}: the roof would fall inward.", peak, foot);
        return false;
    }

    /// <summary>The violation stands at the member that tells the top once more.</summary>
    private bool Closes(List<(string Name, Length Height)> tops, string member)
    {
        var low = tops.MinBy(t => t.Height);
        var high = tops.MaxBy(t => t.Height);
        if (high.Height - low.Height <= Bounds.Closing) return true;
        findings.Broken(At + member, "does-not-close",
            "The roof is told more than once and does not close within 1/8 in: the top is at "
            + string.Join(", at ", tops.Select(t =>
                $"{Say(t.Height)} by {t.Name}")) + ".",
            high.Height - low.Height, Bounds.Closing);
        return false;
    }

    private bool WithinHeights(RoofShape shape)
    {
        var ok = true;
        foreach (var (end, name) in new[] { (shape.Profile.Start, "A"), (shape.Profile.End, "B") })
        {
            if (end.Up >= Bounds.LeastHeight && end.Up <= Bounds.MostPeak) continue;
            findings.Broken(At, "eave-out-of-range",
                $"Eave {name} comes to {findings.Say(end.Up)} above the strip base; it must be "
                + $"{findings.Say(Bounds.LeastHeight)} or more.", end.Up, Bounds.LeastHeight);
            ok = false;
        }
        if (shape.Profile.Highest.Up <= Bounds.MostPeak) return ok;
        findings.Broken(At, "too-large",
            $"The roof reaches {findings.Say(shape.Profile.Highest.Up)}; the most is "
            + $"{findings.Say(Bounds.MostPeak)}.", shape.Profile.Highest.Up, Bounds.MostPeak);
        return false;
    }

    private bool Inside(string member, string what, Length value, Length whole)
    {
        if (value >= Bounds.OneInch && value <= whole - Bounds.OneInch) return true;
        findings.Broken($"{At}/{member}", "outside-building",
            $"{what} at {findings.Say(value)} is not between the walls, 0 and "
            + $"{findings.Say(whole)}.", value, whole);
        return false;
    }

    private Slope? SlopeOf(
        string member, string what, Slope? value, bool required = false,
        double least = Bounds.LeastSlope) => required
        ? findings.Required($"{At}/{member}", what, value, least, Bounds.MostSlope)
        : findings.Optional($"{At}/{member}", what, value, least, Bounds.MostSlope);

    private RoofSide Side(
        string name, Length run, Length? eave, Slope? upper, Length lowerRun = default,
        Slope lower = default) => new()
        {
            Name = name,
            Datum = datum,
            Run = run,
            EaveGiven = eave,
            Upper = upper,
            LowerRun = lowerRun,
            LowerSlope = lower,
        };
}
