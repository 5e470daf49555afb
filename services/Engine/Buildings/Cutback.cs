using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.Buildings;

/// <summary>
/// A stretch of a roof slope without the covered overhang that the rest of its eave has, because a
/// flush lean-to carries the roof on there.
/// </summary>
/// <param name="Along">On the plane's run.</param>
/// <param name="AtBottom">Overhang less at the foot, along the slope; zero for none.</param>
/// <param name="AtTop">Overhang less at the top, along the slope; zero for none.</param>
internal readonly record struct Cutback(Interval Along, Length AtBottom, Length AtTop);
