using PostFrame.Engine.TakeOff;

namespace PostFrame.OrdersApi.TakeOffs;

/// <summary>
/// Which face goes where, as the label tells the crew: common practice, no source. The facing is
/// the vapour retarder; in the usual heated building it looks to the warm inside.
/// </summary>
internal static class FacingText
{
    /// <summary>Null for a product without a facing, or unknown here.</summary>
    public static string? Of(string product) => ProductCatalogue.Find(product) is
    { Facing: { } facing } found
        ? $"{Side(found, facing)}; {Joint(found.Construction.Value)}"
        : null;

    private static string Side(Product product, string facing)
    {
        var words = facing.Split(" (")[0];
        return product.Kind == ProductKind.BubbleSheet
            ? $"{Capital(words)}: either may look inside"
            : $"{Capital(words)} toward the inside";
    }

    private static string Joint(StripConstruction construction) => construction switch
    {
        StripConstruction.TwoTabs => "a tab laps on each side",
        StripConstruction.FlangeOutside => "stick the flange to the next strip",
        StripConstruction.LapInside => "lap the next strip over the edge",
        _ => "the tab laps over the next strip",
    };

    private static string Capital(string words) => char.ToUpperInvariant(words[0]) + words[1..];
}
