using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.Buildings;

/// <summary>Checks lean-tos against the walls they stand at.</summary>
/// <remarks>Source: takeoff.md 2.3.</remarks>
internal sealed class LeanToReading(
    IReadOnlyList<LeanToInput> inputs, RoofShape roof, Length stemWall, Length buildingLength,
    Findings findings)
{
    public IReadOnlyList<LeanTo> Read()
    {
        if (inputs.Count > Bounds.MostLeanTos)
            findings.Add("/building/leanTos", "too-many",
                $"There are {inputs.Count} lean-tos; a building has one on each side at most.",
                $"{inputs.Count}", $"{Bounds.MostLeanTos}");
        var leans = new List<LeanTo>();
        for (var i = 0; i < Math.Min(inputs.Count, Bounds.MostLeanTos); i++)
        {
            var lean = One(inputs[i], $"/building/leanTos/{i}");
            if (lean is null) continue;
            if (leans.Any(l => l.Side == lean.Side))
                findings.Add($"/building/leanTos/{i}/side", "side-taken",
                    $"Side {lean.Side} has a lean-to already.", lean.Side.ToString());
            leans.Add(lean);
        }
        return [.. leans.OrderBy(l => l.Side)];
    }

    private LeanTo? One(LeanToInput input, string at)
    {
        if (input.Side is null) findings.Missing($"{at}/side", "The side of the lean-to");
        if (input.Inside is null)
            findings.Missing($"{at}/inside",
                "What lies inside the lean-to (open, cold or separate)");
        var width = findings.Required($"{at}/width", "The width of the lean-to", input.Width,
            Length.FromFeet(2), Length.FromFeet(100));
        var slope = findings.Required(
            $"{at}/slope", "The slope of the lean-to", input.Slope, Bounds.LeastSlope, 24);
        var drop = findings.Optional($"{at}/drop", "The drop", input.Drop, -Bounds.MostPeak,
            Bounds.MostPeak) ?? Length.Zero;
        if (input.Side is not { } side) return null;
        var wall = side == BuildingSide.A ? roof.Profile.Start.Up : roof.Profile.End.Up;
        if (drop < Length.Zero)
        {
            findings.Broken($"{at}/drop", "lean-to-above-wall",
                $"The lean-to would meet the building {findings.Say(-drop)} above the eave line; "
                + "it cannot be higher than its wall.", drop, Length.Zero);
            return null;
        }
        if (drop >= wall)
        {
            findings.Broken($"{at}/drop", "too-large",
                $"The drop {findings.Say(drop)} is more than the wall, {findings.Say(wall)}.",
                drop, wall);
            return null;
        }
        if (width is not { } w || slope is not { } s || input.Inside is not { } inside
            || Along(input, at) is not { } along)
            return null;
        var low = wall - drop - w.Times(s.RiseOverRun);
        var least = stemWall + Length.FromFeet(1);
        if (low < least)
            findings.Broken($"{at}/slope", "lean-to-too-low",
                $"The lean-to's own eave comes to {findings.Say(low)} above the strip base; it "
                + $"must be {findings.Say(least)} or more. Flatten, narrow or raise it.",
                low, least);
        return new()
        {
            Side = side,
            Along = along,
            AtEndwall1 = along.From == Length.Zero,
            AtEndwall2 = along.To == buildingLength,
            Width = w,
            Slope = s,
            Drop = drop,
            Inside = inside,
            Top = wall - drop,
            LowEave = low,
        };
    }

    /// <summary>Its stretch of the sidewall; ends within ⅛ in of an endwall are at it.</summary>
    private Interval? Along(LeanToInput input, string at)
    {
        var least = Length.FromFeet(2);
        var from = findings.Optional($"{at}/fromEndwall1", "The start of the lean-to",
            input.FromEndwall1 ?? Length.Zero, Length.Zero, buildingLength - least);
        var size = findings.Optional($"{at}/length", "The length of the lean-to",
            input.Length ?? buildingLength, least, Bounds.MostLength);
        if (from is not { } start || size is not { } length) return null;
        if (start <= Bounds.Closing) start = Length.Zero;
        var end = input.Length is null ? buildingLength : start + length;
        if (end > buildingLength + Bounds.Closing)
        {
            findings.Broken($"{at}/length", "outside-building",
                $"The lean-to ends at {findings.Say(end)}, beyond the building's "
                + $"{findings.Say(buildingLength)}.", end, buildingLength);
            return null;
        }
        return new(start, end >= buildingLength - Bounds.Closing ? buildingLength : end);
    }
}
