using PostFrame.Engine.Heat;
using PostFrame.Engine.TakeOff;

namespace PostFrame.Engine;

/// <summary>What a product is for its heat, as the catalogue's codes tell it.</summary>
public static class ProductMaterial
{
    /// <summary>The material of a product.</summary>
    public static MaterialKind Of(Product product)
    {
        ArgumentNullException.ThrowIfNull(product);
        bool Says(string word) => product.Code.Contains(word, StringComparison.Ordinal);
        return product.Kind switch
        {
            ProductKind.Blanket => MaterialKind.Blanket,
            ProductKind.BubbleSheet => MaterialKind.BubbleSheet,
            ProductKind.Batt => MaterialKind.Batt,
            ProductKind.SprayFoam when Says("closed") => MaterialKind.ClosedCellFoam,
            ProductKind.SprayFoam => MaterialKind.OpenCellFoam,
            _ when Says("xps") => MaterialKind.XpsBoard,
            _ when Says("eps") => MaterialKind.EpsBoard,
            _ => MaterialKind.PolyisoBoard,
        };
    }
}
