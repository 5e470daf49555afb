using System.Text;
using System.Text.Json.Nodes;
using PostFrame.SizingApi.Prices;
using PostFrame.SizingApi.Sizings;
using Xunit;

namespace PostFrame.ServicesTests.Sizing;

public sealed class ShopPriceLists
{
    private const string Name = "made-up.prices.json";

    private static string MadeUp => File.ReadAllText(
        Path.Combine(TestFiles.Root, "contracts", "examples", Name));

    public static TheoryData<string> Examples => [.. TestFiles.Examples()];

    [Theory]
    [MemberData(nameof(Examples))]
    public void That_lack_nothing_price_everything_and_say_they_are_made_up(string example)
    {
        var price = Priced(example, MadeUp);

        Assert.Empty(price["notPriced"]!.AsArray());
        Assert.Contains("made up", price["note"]!.GetValue<string>());
        Assert.Equal(
            price["lines"]!.AsArray().Sum(line => line!["amount"]!.GetValue<decimal>()),
            price["total"]!.GetValue<decimal>());
    }

    /// <summary>W1 by hand: 3,032.0 ft² of blanket (takeoff.md W1) at 0.53 is 1,606.96.</summary>
    [Fact]
    public void Price_blanket_by_the_area_bought()
    {
        var blanket = Priced("w1-plain-gable", MadeUp)["lines"]!.AsArray()
            .Single(line => line!["item"]!.GetValue<string>() == "blanket-3-white")!;

        Assert.Equal(3032.0m, blanket["quantity"]!.GetValue<decimal>());
        Assert.Equal(1606.96m, blanket["amount"]!.GetValue<decimal>());
    }

    [Fact]
    public void That_lack_something_name_it_and_fill_no_gap()
    {
        var list = JsonNode.Parse(MadeUp)!;
        list["unitPrices"]!.AsObject().Remove("lapTape");

        var price = Priced("w1-plain-gable", list.ToJsonString());

        Assert.Contains(price["notPriced"]!.AsArray(), line =>
            line!.GetValue<string>().StartsWith("lapTape", StringComparison.Ordinal));
    }

    [Fact]
    public void With_mistakes_stop_the_start_and_name_them_all()
    {
        const string Wrong =
            """
            { "id": "x", "currency": "usd", "perPiece": -1, "unitPrices":
              { "blanket-3-white": "0.53", "blanket-3-whit": 1, "lapTape": 1e999 }, "valid": 1 }
            """;

        var failure = Assert.Throws<InvalidDataException>(() =>
            ReadPrices.From(Encoding.UTF8.GetBytes(Wrong), Name));

        Assert.All(
            ["/version", "/currency", "/perPiece", "/unitPrices/blanket-3-white:",
                "/unitPrices/blanket-3-whit:", "/unitPrices/lapTape", "/valid"],
            place => Assert.Contains(place, failure.Message));
    }

    private static JsonNode Priced(string example, string list)
    {
        var answer = Sizings.Answer(
            Encoding.UTF8.GetBytes(TestFiles.Example(example)),
            ReadPrices.From(Encoding.UTF8.GetBytes(list), Name));
        return JsonNode.Parse(answer.Body)!["price"]!;
    }
}
