using System.Globalization;
using PostFrame.CuttingWorker.Planning;

namespace PostFrame.Benchmarks;

/// <summary>Reads published instances; which format a text is in shows in its content.</summary>
internal static class CuttingInstances
{
    /// <summary>The problems of one file: none when it is no cutting instance.</summary>
    /// <remarks>
    /// One roll length: m, capacity, then m pairs of length and demand. Several: K, K triples
    /// length stock cost, m, m pairs length demand. A shop batch (JSON) gives two problems per
    /// width.
    /// </remarks>
    public static IReadOnlyList<(string Suffix, CuttingProblem Problem)> Read(string text)
    {
        if (text.TrimStart().StartsWith('{'))
            return ShopBatch.Read(text).Problems();
        var numbers = Numbers(text);
        if (numbers is null || numbers.Count < 2)
            return [];
        return (OneLength(numbers) ?? SeveralLengths(numbers)) is { } problem ? [("", problem)]
            : [];
    }

    private static List<long>? Numbers(string text)
    {
        var numbers = new List<long>();
        foreach (var word in text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries))
        {
            if (!long.TryParse(word, CultureInfo.InvariantCulture, out var number))
                return null;
            numbers.Add(number);
        }

        return numbers;
    }

    private static CuttingProblem? OneLength(List<long> numbers)
    {
        if (numbers.Count != 2 + 2 * numbers[0])
            return null;
        return new CuttingProblem
        {
            Items = Items(numbers, 2),
            Stock = [new StockType { Key = "roll", LengthNm = numbers[1] }],
        };
    }

    private static CuttingProblem? SeveralLengths(List<long> numbers)
    {
        var types = (int)numbers[0];
        var at = 1 + 3 * types;
        if (at >= numbers.Count || numbers.Count != at + 1 + 2 * numbers[at])
            return null;
        var stock = Enumerable.Range(0, types).Select(k => new StockType
        {
            Key = $"roll {k + 1}",
            LengthNm = numbers[1 + 3 * k],
            Count = (int)Math.Min(numbers[2 + 3 * k], 1_000_000),
            Cost = numbers[3 + 3 * k],
        });
        return new CuttingProblem { Items = Items(numbers, at + 1), Stock = [.. stock] };
    }

    private static List<CuttingItem> Items(List<long> numbers, int from)
    {
        var items = new List<CuttingItem>();
        for (var at = from; at + 1 < numbers.Count; at += 2)
            items.Add(new CuttingItem($"{items.Count + 1}", numbers[at], (int)numbers[at + 1]));
        return items;
    }
}
