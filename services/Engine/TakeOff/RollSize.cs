using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.TakeOff;

/// <summary>A roll a product is stocked in.</summary>
/// <param name="Width">Nominal width.</param>
/// <param name="RollLength">Labelled length.</param>
/// <param name="Metric">True when the nominal width is a metric size.</param>
public sealed record RollSize(Length Width, Length RollLength, bool Metric);
