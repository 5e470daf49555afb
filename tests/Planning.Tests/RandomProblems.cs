using PostFrame.CuttingWorker.Planning;

namespace PostFrame.PlanningTests;

/// <summary>Small problems made from a seed, of every shape the planner meets.</summary>
internal static class RandomProblems
{
    public static CuttingProblem Small(int seed)
    {
        var random = new Random(seed);
        var longest = random.Next(5, 40);
        var kinds = random.Next(1, 5);
        var one = random.Next(3) == 0;
        var stock = Enumerable.Range(0, one ? 1 : random.Next(2, 4)).Select(k =>
        {
            var length = k == 0 ? longest : random.Next(2, longest + 1);
            return new StockType
            {
                Key = $"s{k}",
                LengthNm = length,
                EndTrimNm = random.Next(4) == 0 ? random.Next(0, 2) : 0,
                Count = k == 0 && random.Next(3) > 0 ? null : random.Next(0, 5),
                Cost = one ? 1 : random.Next(5) == 0 ? random.Next(0, 6) : length + random
                    .Next(0, 3),
                IsRemnant = k > 0 && random.Next(2) == 0,
                AgeDays = random.Next(0, 4),
            };
        }).ToList();
        var items = Enumerable.Range(0, kinds).Select(k => new CuttingItem(
            $"i{k}", random.Next(1, longest), random.Next(0, 4))).ToList();
        return new CuttingProblem
        {
            Items = items,
            Stock = stock,
            MinUsefulOffcutNm = random.Next(1, longest),
        };
    }
}
