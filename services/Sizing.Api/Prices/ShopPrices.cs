using PostFrame.Engine.TakeOff;

namespace PostFrame.SizingApi.Prices;

/// <summary>
/// The shop's price list, read once at start from the file in <c>Prices:File</c>; without that
/// there are no prices. A list with mistakes stops the start and names them all.
/// </summary>
public sealed class ShopPrices(IConfiguration configuration)
{
    public PriceList? List { get; } = configuration["Prices:File"] is { Length: > 0 } path
        ? ReadPrices.From(File.ReadAllBytes(path), path)
        : null;
}
