using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.Buildings;

/// <summary>
/// Brings the heights of a request to the strip base, and a bearing height up to the eave line.
/// </summary>
/// <remarks>
/// Source: takeoff.md 2.2, H = Hb + e + d·k − g·x/12, less the strip base above the datum.
/// At the high eave of a single slope the girts stand on the rising side, so g·x/12 is added.
/// </remarks>
internal sealed record HeightDatum
{
    public required Length StripBaseAboveDatum { get; init; }

    /// <summary>False when eave heights already mean the eave line.</summary>
    public required bool AtBearing { get; init; }

    public Length Heel { get; init; }

    public Length PurlinDepth { get; init; }

    public Length GirtThickness { get; init; }

    /// <summary>A height that is not an eave's: peak, opening head, sill.</summary>
    public Length FromStripBase(Length given) => given - StripBaseAboveDatum;

    /// <summary>The eave line above the strip base.</summary>
    /// <param name="given">As the request has it.</param>
    /// <param name="slope">Of the roof at this eave, rising inwards; falling when negative.</param>
    public Length EaveLine(Length given, Slope slope) => AtBearing
        ? FromStripBase(given) + Heel + PurlinDepth.Times(slope.Factor)
            - GirtThickness.Times(slope.RiseOverRun)
        : FromStripBase(given);
}
