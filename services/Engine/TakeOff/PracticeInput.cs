using PostFrame.Engine.Quantities;

namespace PostFrame.Engine;

/// <summary>
/// /practice: the shop's own allowances and limits. A member left null takes the usual value, in
/// inches or in millimetres after the building. Each is echoed in the assumptions.
/// </summary>
public sealed record PracticeInput
{
    /// <summary>Order step every piece is rounded up to.</summary>
    public Length? RoundUpTo { get; init; }

    /// <summary>A length this little above a step counts as on it.</summary>
    public Length? Tolerance { get; init; }

    /// <summary>Per eave end of a roof piece.</summary>
    public Length? EaveTuck { get; init; }

    /// <summary>Per piece at a closed ridge.</summary>
    public Length? RidgeLap { get; init; }

    /// <summary>Per piece where a lean-to meets the building.</summary>
    public Length? JunctionLap { get; init; }

    /// <summary>Per piece end at a break or joint.</summary>
    public Length? BreakLap { get; init; }

    /// <summary>Back from a vented ridge, along the slope.</summary>
    public Length? VentSetback { get; init; }

    /// <summary>Folded back at the vent slot.</summary>
    public Length? VentFold { get; init; }

    /// <summary>Over the top of a wall.</summary>
    public Length? WallTop { get; init; }

    /// <summary>Fold at the skirt board.</summary>
    public Length? WallBase { get; init; }

    /// <summary>Fold at an opening's head or sill.</summary>
    public Length? OpeningHead { get; init; }

    /// <summary>Added to each end of a wall's run.</summary>
    public Length? CornerWrap { get; init; }

    /// <summary>Added to each end of a roof's run.</summary>
    public Length? RakeWrap { get; init; }

    /// <summary>Shrinks an opening at each jamb before strips are deducted.</summary>
    public Length? JambMargin { get; init; }

    /// <summary>Lap at a partition; half of it lengthens the runs that end there.</summary>
    public Length? PartitionLap { get; init; }

    /// <summary>Roof slope lengths are lengthened by this percentage [%].</summary>
    public double? DrapePercent { get; init; }

    /// <summary>Sag between two purlins, instead of a percentage.</summary>
    public Length? DrapeSag { get; init; }

    /// <summary>Header pieces shorter than this are flagged or merged.</summary>
    public Length? ShortHeader { get; init; }

    /// <summary>
    /// Short headers become one horizontal piece where that buys no more. Default true.
    /// </summary>
    public bool? MergeShortHeaders { get; init; }

    /// <summary>
    /// Over-ridge runs longer than this are laid as pairs when the layout is auto.
    /// </summary>
    public Length? LongestOverRidge { get; init; }

    /// <summary>Heaviest piece one person lifts.</summary>
    public Mass? OnePersonLimit { get; init; }

    /// <summary>Heaviest piece two people lift.</summary>
    public Mass? TwoPersonLimit { get; init; }

    /// <summary>Heaviest bag of several pieces.</summary>
    public Mass? BagLimit { get; init; }

    /// <summary>Widest coil of several pieces.</summary>
    public Length? BagDiameter { get; init; }

    /// <summary>Highest load of a pallet.</summary>
    public Length? PalletHeight { get; init; }

    /// <summary>Added to the joint length for tape [%].</summary>
    public double? TapeExtraPercent { get; init; }

    /// <summary>Length of a roll of lap tape.</summary>
    public Length? TapeRoll { get; init; }

    /// <summary>Length of a roll of double-faced tape.</summary>
    public Length? DoubleFacedRoll { get; init; }

    /// <summary>Squaring trim lost at the end of a roll.</summary>
    public Length? EndTrim { get; init; }

    /// <summary>Shortest offcut kept as labelled stock.</summary>
    public Length? MinUsefulOffcut { get; init; }
}
