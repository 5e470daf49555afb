using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.TakeOff;

/// <summary>What pieces weigh and how big they coil.</summary>
/// <remarks>Source: takeoff.md 4.6.</remarks>
internal static class Weights
{
    /// <summary>Facing width × length × mass per area.</summary>
    public static Mass Of(Product product, Length width, Length cut) => Mass.FromPounds(
        Area.Of(product.FacingWidthOf(width), cut).TotalSquareFeet
        * product.PoundsPerSquareFoot.Value);

    /// <summary>Diameter of a coil without a core: D = sqrt(4·ℓ·t/π).</summary>
    public static Length CoilOf(Length length, Length coiledThickness) => Length.FromMillimetres(
        Math.Sqrt(4 * length.TotalMillimetres * coiledThickness.TotalMillimetres / Math.PI));
}
