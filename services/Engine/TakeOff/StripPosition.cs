using PostFrame.Engine.Buildings;
using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.TakeOff;

/// <summary>One strip along a run.</summary>
/// <param name="Number">From 1.</param>
/// <param name="Reach">What it covers, wraps beyond the plane included.</param>
/// <param name="Covers">What it covers of the plane.</param>
/// <param name="Width">Nominal roll width.</param>
internal sealed record StripPosition(int Number, Interval Reach, Interval Covers, Length Width);
