using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.Buildings;

/// <summary>A lean-to along a whole sidewall.</summary>
/// <param name="Top">Where its roof meets the main wall, above the strip base.</param>
/// <param name="LowEave">Its own eave line, above the strip base.</param>
internal sealed record LeanTo(
    BuildingSide Side, Length Width, Slope Slope, Length Drop, LeanToInside Inside, Length Top,
    Length LowEave)
{
    /// <summary>Its roof continues the main eave: one endwall runs from outer girt to outer girt.
    /// </summary>
    public bool SharesEndwall => Inside == LeanToInside.Open && Drop == Length.Zero;
}
