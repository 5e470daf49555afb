namespace PostFrame.CuttingWorker.Planning;

/// <summary>Everything that makes a problem impossible, named before any search.</summary>
internal static class ProblemCheck
{
    private const int MostPieces = 100_000_000;
    private const long MostTotal = 1_000_000_000_000_000_000;
    private const long HighestCost = 1_000_000_000_000;

    private static string Longest => Wording.Length(CuttingProblem.LongestNm);

    public static List<PlanRefusal> Refusals(CuttingProblem problem)
    {
        var found = new List<PlanRefusal>();
        Duplicates(problem.Items.Select(i => i.Key), "item", found);
        Duplicates(problem.Stock.Select(s => s.Key), "stock type", found);
        if (problem.MinUsefulOffcutNm < 0)
            found.Add(new("bad-stock", null,
                $"The minimum useful offcut is {Wording.Length(problem.MinUsefulOffcutNm)}; it "
                    + "must be 0 or more."));
        foreach (var stock in problem.Stock)
            Stock(stock, found);
        Items(problem, found);
        return found;
    }

    private static void Duplicates(IEnumerable<string> keys, string what, List<PlanRefusal> found)
    {
        foreach (var group in keys.GroupBy(k => k, StringComparer.Ordinal)
            .Where(g => g.Count() > 1))
            found.Add(new("duplicate-key", group.Key,
                $"The {what} key {group.Key} is used {group.Count()} times; a key names one "
                    + $"{what}."));
    }

    private static void Stock(StockType stock, List<PlanRefusal> found)
    {
        void Bad(string text) => found
            .Add(new("bad-stock", stock.Key, $"Stock {stock.Key}: {text}"));
        if (stock.LengthNm is < 1 or > CuttingProblem.LongestNm)
            Bad($"length {Wording.Length(stock.LengthNm)} is not from 1 nm to {Longest}.");
        if (stock.EndTrimNm < 0 || stock.EndTrimNm > stock.LengthNm)
            Bad($"end trim {Wording.Length(stock.EndTrimNm)} is not from 0 to the length "
                + $"{Wording.Length(stock.LengthNm)}.");
        if (stock.Count is < 0)
            Bad($"{stock.Count} rolls are at hand; there must be 0 or more.");
        if (stock.Cost is < 0 or > HighestCost)
            Bad($"cost {stock.Cost:#,0} is not from 0 to {HighestCost:#,0}.");
    }

    private static void Items(CuttingProblem problem, List<PlanRefusal> found)
    {
        var longest = problem.Stock.Where(s => s.Count is null or > 0)
            .Select(s => s.UsableNm).DefaultIfEmpty(0).Max();
        long pieces = 0;
        foreach (var item in problem.Items)
        {
            pieces += Math.Max(item.Demand, 0);
            if (item.Demand is < 0 or > 10_000_000)
                found.Add(new("bad-demand", item.Key,
                    $"Item {item.Key}: demand {item.Demand} is not from 0 to 10,000,000 pieces."));
            if (item.LengthNm is < 1 or > CuttingProblem.LongestNm)
                found.Add(new("bad-length", item.Key,
                    $"Item {item.Key}: length {Wording.Length(item.LengthNm)} is not from 1 nm to "
                    + $"{Longest}."));
            else if (item.LengthNm > longest && item.Demand > 0)
                found.Add(new("too-long-for-any-roll", item.Key,
                    $"Item {item.Key} is {Wording.Length(item.LengthNm)} long; the longest usable "
                    + $"roll or remnant is {Wording.Length(longest)}."));
        }

        if (pieces > MostPieces)
            found.Add(new("too-large", null,
                $"{pieces:#,0} pieces are asked for; at most {MostPieces:#,0} pieces."));
        var length = problem.Items.Where(i => i.Demand > 0 && i.LengthNm > 0)
            .Select(i => (Int128)i.Demand * i.LengthNm).Aggregate(Int128.Zero, (a, b) => a + b);
        if (length > MostTotal)
            found.Add(new("too-large", null,
                $"The pieces come to {Wording.Length(length)} in all; at most "
                + $"{Wording.Length(MostTotal)}."));
        var dearest = (Int128)pieces * problem.Stock.Select(s => s.Cost).DefaultIfEmpty(0).Max();
        if (dearest > MostTotal)
            found.Add(new("too-large", null,
                $"{pieces:#,0} pieces on as many of the dearest roll come to a cost of "
                + $"{dearest:#,0}; at most {MostTotal:#,0}."));
    }
}
