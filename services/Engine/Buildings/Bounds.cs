using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.Buildings;

/// <summary>
/// The sizes a request may have. They bound the work and catch slips of a unit; they are ours and
/// no rule of the trade.
/// </summary>
internal static class Bounds
{
    public static readonly Length LeastWidth = Length.FromFeet(4);
    public static readonly Length MostWidth = Length.FromFeet(400);
    public static readonly Length LeastLength = Length.FromFeet(4);
    public static readonly Length MostLength = Length.FromFeet(2000);
    public static readonly Length LeastHeight = Length.FromFeet(2);
    public static readonly Length MostHeight = Length.FromFeet(80);
    public static readonly Length MostPeak = Length.FromFeet(300);
    public static readonly Length LeastOpening = Length.FromInches(4);
    public static readonly Length MostGap = Length.FromFeet(8);
    public static readonly Length OneInch = Length.FromInches(1);

    /// <summary>Over-determined sizes must close within this. Source: takeoff.md 2.3.</summary>
    public static readonly Length Closing = Length.FromInches(0.125);

    /// <summary>Flattest roof: ¼:12 is the least the trade drains by (common practice).</summary>
    public const double LeastSlope = 0.25;

    /// <summary>Steepest; a half-octagon's lower chord stands at 29:12.</summary>
    public const double MostSlope = 60;

    public const int MostOpenings = 200;
    public const int MostLeanTos = 2;
    public const int MostPoints = 40;
    public const int MostLines = 40;
    public const int MostPanels = 40;
}
