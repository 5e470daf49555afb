using PostFrame.Engine.TakeOff;
using PostFrame.Problems;

namespace PostFrame.SizingApi.Prices;

/// <summary>Reads a price list as strictly as a request.</summary>
public static class ReadPrices
{
    private const double DearestUnit = 1_000_000;

    /// <summary>Ids of what a take-off lists beside its products.</summary>
    private static readonly string[] Accessories =
        ["lapTape", "cutOutTape", "doubleFacedTape", "staples", "capNails", "patchTape"];

    /// <summary>The list in a file's bytes.</summary>
    /// <exception cref="InvalidDataException">It has mistakes; the message names each.</exception>
    public static PriceList From(ReadOnlyMemory<byte> json, string fileName)
    {
        using var file = JsonRequest.Parse(json);
        if (file.Malformed is { } malformed)
        {
            throw new InvalidDataException($"{fileName}: {malformed.Body(null).Detail}");
        }

        var list = From(file.Root);
        return file.Mistakes.Any
            ? throw new InvalidDataException(string.Join(Environment.NewLine,
                file.Mistakes.Listed.Select(m => $"{fileName} {m.Path}: {m.Message}")))
            : list;
    }

    private static PriceList From(RequestObject root)
    {
        var unitPrices = root.Object("unitPrices");
        var list = new PriceList
        {
            Id = root.Text("id", 60) ?? "",
            Version = root.Text("version", 40) ?? "",
            Currency = CurrencyOf(root),
            Note = root.OptionalText("note", 300),
            PerPiece = Money(root, "perPiece"),
            UnitPrices = unitPrices.Names.ToDictionary(
                name => name, name => Money(unitPrices, name) ?? 0, StringComparer.Ordinal),
        };
        CheckItems(unitPrices);
        root.Close();
        return list;
    }

    /// <summary>A price under a misspelt name would silently price nothing.</summary>
    private static void CheckItems(RequestObject unitPrices)
    {
        var known = ProductCatalogue.All.Select(product => product.Code).Concat(Accessories);
        foreach (var name in unitPrices.Names.Except(known))
        {
            unitPrices.Wrong(
                name, "no-such-item", name,
                $"Nothing is sold as {name}; the list may price products and "
                + $"{string.Join(", ", Accessories)}.");
        }
    }

    private static string CurrencyOf(RequestObject root)
    {
        var code = root.Text("currency", 3) ?? "";
        if (code.Length > 0 && (code.Length != 3 || !code.All(char.IsAsciiLetterUpper)))
        {
            root.Wrong("currency", "currency-code", code,
                "The currency is three capital letters, such as USD (ISO 4217).", "ISO 4217");
        }

        return code;
    }

    private static decimal? Money(RequestObject place, string name) =>
        place.OptionalNumber(name, 0, DearestUnit, "per unit") is { } amount
            ? Math.Round((decimal)amount, 6)
            : null;
}
