using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.Buildings;

/// <summary>One segment of a roof slope: horizontal run, slope and length along it.</summary>
/// <param name="Run">Horizontal.</param>
/// <param name="Slope">Of the segment.</param>
/// <param name="Along">Length along the slope.</param>
/// <param name="IsOverhang">True beyond an eave line, out to the fascia.</param>
internal sealed record SlopePart(Length Run, Slope Slope, Length Along, bool IsOverhang = false);
