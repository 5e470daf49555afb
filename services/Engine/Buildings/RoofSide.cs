using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.Buildings;

/// <summary>
/// One side of a ridged roof as far as the request tells it: eave, perhaps a lower part, and an
/// upper part.
/// </summary>
internal sealed record RoofSide
{
    public required string Name { get; init; }

    public required HeightDatum Datum { get; init; }

    /// <summary>Horizontal, from eave line to ridge.</summary>
    public required Length Run { get; init; }

    /// <summary>Eave height as given, from the datum; null when it follows from the rest.</summary>
    public required Length? EaveGiven { get; init; }

    /// <summary>Horizontal run of the lower part; zero without one.</summary>
    public Length LowerRun { get; init; }

    /// <summary>Slope of the lower part; flat without one.</summary>
    public Slope LowerSlope { get; init; }

    /// <summary>Slope of the part that ends at the ridge; null when it follows.</summary>
    public required Slope? Upper { get; init; }

    /// <summary>What its peak follows from, for the one who has to find the wrong number.
    /// </summary>
    public string Words(Func<Length, string> say)
    {
        var lower = LowerRun > Length.Zero ? $"{LowerSlope} over {say(LowerRun)}, " : "";
        return $"(eave {say(Eave(Upper!.Value))}, {lower}{Upper} over {say(UpperRun)})";
    }

    private Length UpperRun => Run - LowerRun;

    private Length LowerRise => LowerRun.Times(LowerSlope.RiseOverRun);

    /// <summary>Peak height by this side alone; null when it does not tell.</summary>
    public Length? Peak => EaveGiven is null || Upper is not { } upper
        ? null
        : Eave(upper) + LowerRise + UpperRun.Times(upper.RiseOverRun);

    /// <summary>
    /// The side with what was missing found from the peak. A slope sought from a bearing height
    /// is found by iteration, because the eave line itself depends on it.
    /// </summary>
    public RoofSide ClosedBy(Length peak)
    {
        if (Upper is not null || EaveGiven is null) return this;
        var slope = Slope.FromRatio(0);
        for (var round = 0; round < 60; round++)
            slope = Slope.FromRatio((peak - Eave(slope) - LowerRise) / UpperRun);
        return this with { Upper = slope };
    }

    /// <summary>
    /// Eave line above the strip base: from what was given, or down from the peak.
    /// </summary>
    public Length EaveLine(Length peak) => EaveGiven is null
        ? peak - LowerRise - UpperRun.Times(Upper!.Value.RiseOverRun)
        : Eave(Upper!.Value);

    /// <summary>Height of the break, when there is one.</summary>
    public Length? Break(Length peak) =>
        LowerRun > Length.Zero ? EaveLine(peak) + LowerRise : null;

    private Length Eave(Slope upper) =>
        Datum.EaveLine(EaveGiven!.Value, LowerRun > Length.Zero ? LowerSlope : upper);
}
