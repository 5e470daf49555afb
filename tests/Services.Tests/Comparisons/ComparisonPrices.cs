using System.Text.Json;
using System.Text.Json.Nodes;
using PostFrame.Engine.TakeOff;
using PostFrame.SizingApi.Prices;
using Xunit;
using static PostFrame.ServicesTests.Comparisons.ComparisonRequests;

namespace PostFrame.ServicesTests.Comparisons;

/// <summary>An option without a price of its own takes the shop's list, and says which.</summary>
public sealed class ComparisonPrices
{
    private static readonly PriceList MadeUp = ReadPrices.From(
        File.ReadAllBytes(Path.Combine(
            Sizing.TestFiles.Root, "contracts", "examples", "made-up.prices.json")),
        "made-up.prices.json");

    private static JsonElement Answer(JsonNode request) => JsonDocument.Parse(
        SizingApi.Comparisons.Comparisons.Answer(Bytes(request), MadeUp).Body!).RootElement;

    private static JsonNode Options(params string[] products) => Example(ShopRoof)
        .With("/options", new JsonArray([
            .. products.Select(JsonNode (code) => new JsonObject { ["product"] = code }),
        ]));

    // Worked by hand from contracts/examples/made-up.prices.json: per ft² of roll, over the 70 of
    // 72 in that a lapped sheet covers; 1.10 a board foot at 2 in; 41 for a sheet of 32 ft²; 60
    // for a bag of 88 ft².
    [Theory]
    [InlineData("blanket-4-white", 0.66)]
    [InlineData("bubble-foil", 0.36)]
    [InlineData("spray-foam-closed", 2.20)]
    [InlineData("board-2-xps", 1.28125)]
    [InlineData("batt-3-5-unfaced", 0.681818)]
    public void A_listed_price_is_per_covered_square_foot(string product, double perFt2)
    {
        var price = Answer(Options(product)).Line("option-1").GetProperty("price");
        Assert.Equal(perFt2, price.Number("perFt2"), 1e-4);
        Assert.Equal("list", price.GetProperty("from").GetString());
        Assert.Contains("made up", price.GetProperty("text").GetString());
    }

    [Fact]
    public void A_typed_price_wins_over_the_list()
    {
        var answer = Answer(Options("blanket-4-white").With("/options/0/pricePerFt2", 0.8));
        Assert.Equal(0.8, answer.Line("option-1").Number("price", "perFt2"), 1e-9);
        Assert.False(answer.TryGetProperty("prices", out _));
    }

    // 1265 ft² at 0.66 against a quote of 620 for all of it: 214.90 more.
    [Fact]
    public void A_payback_by_the_list_names_the_list()
    {
        var answer = Answer(Options("blanket-4-white"));
        var payback = answer.Line("option-1").GetProperty("energy").GetProperty("paybacks")[0];
        Assert.Equal(214.90, payback.Number("extraCost"), 0.01);
        Assert.Equal(
            payback.Number("extraCost") / payback.Number("yearlySaving"),
            payback.Number("years"), 0.051);
        Assert.Contains("\"made-up\"", payback.GetProperty("text").GetString());
        Assert.Contains(
            "made up", answer.GetProperty("prices").GetProperty("note").GetString());
    }

    [Fact]
    public void What_the_list_does_not_hold_has_no_price()
    {
        var list = MadeUp with { UnitPrices = new Dictionary<string, decimal>() };
        var body = SizingApi.Comparisons.Comparisons.Answer(
            Bytes(Options("blanket-4-white")), list).Body!;
        Assert.False(JsonDocument.Parse(body).RootElement.Line("option-1")
            .TryGetProperty("price", out _));
    }
}
