namespace PostFrame.Engine.Heat;

/// <summary>
/// The way heat crosses a plane: a direction the tables print, or one between two neighbours.
/// </summary>
/// <param name="Flatter">The printed direction of the flatter plane.</param>
/// <param name="Steeper">The next steeper one; the same where the direction is printed.</param>
/// <param name="Share">How far it is from the flatter to the steeper, 0 to below 1.</param>
public readonly record struct FlowDirection(HeatFlow Flatter, HeatFlow Steeper, double Share)
{
    /// <summary>What is told of a value between two printed directions.</summary>
    public const string OwnRule =
        "taken straight between the slopes the ASHRAE tables print (own rule)";

    /// <summary>True where the tables print it.</summary>
    public bool IsPrinted => Share == 0;

    /// <summary>The printed directions that have a part in it, one or two.</summary>
    public IReadOnlyList<HeatFlow> Printed => IsPrinted ? [Flatter] : [Flatter, Steeper];

    /// <summary>The printed direction nearest to it.</summary>
    public HeatFlow Nearest => Share > 0.5 ? Steeper : Flatter;

    /// <summary>Slope of the plane it crosses [° from horizontal].</summary>
    public double SlopeDegrees => Between(SlopeOf);

    /// <summary>From one printed direction on to its steeper neighbour by a share.</summary>
    public static FlowDirection Of(HeatFlow flatter, HeatFlow steeper, double share) =>
        share == 0
            ? flatter
            : new FlowDirection(flatter, steeper, share);

    /// <summary>A direction the tables print.</summary>
    public static implicit operator FlowDirection(HeatFlow flow) => new(flow, flow, 0);

    /// <summary>
    /// A coefficient [W/(m²·K)] of this direction: the printed one, or straight between its
    /// neighbours over the slope (own; coefficients and not resistances, because heat flows add).
    /// </summary>
    public double Between(Func<HeatFlow, double> printed)
    {
        ArgumentNullException.ThrowIfNull(printed);
        return IsPrinted
            ? printed(Flatter)
            : (1 - Share) * printed(Flatter) + Share * printed(Steeper);
    }

    /// <summary>Slope of the plane a printed direction is for [° from horizontal].</summary>
    public static double SlopeOf(HeatFlow printed) => printed switch
    {
        HeatFlow.Horizontal => 90,
        HeatFlow.Up45 or HeatFlow.Down45 => 45,
        _ => 0,
    };
}
