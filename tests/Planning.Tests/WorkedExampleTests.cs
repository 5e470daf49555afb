using PostFrame.CuttingWorker.Planning;
using Xunit;

namespace PostFrame.PlanningTests;

public sealed class WorkedExampleTests
{
    private const long Inch = 25_400_000;

    /// <summary>
    /// Hand-worked example: a 30 × 40 ft gable, 46 pieces, 9,096 in; 9,096 / 1,194 = 7.6.
    /// </summary>
    [Fact]
    public void Plain_gable_of_46_pieces_takes_8_rolls_of_100_ft_and_no_fewer()
    {
        (int Inches, int Pieces)[] pieces =
        [
            (396, 10), (186, 4), (174, 2), (168, 2), (162, 2), (150, 2), (144, 2), (138, 2),
                (126, 20),
        ];
        var problem = new CuttingProblem
        {
            Items = [.. pieces.Select(p =>
                new CuttingItem($"{p.Inches} in", p.Inches * Inch, p.Pieces))],
            Stock = [new StockType { Key = "100 ft", LengthNm = 1200 * Inch,
                EndTrimNm = 6 * Inch }],
            MinUsefulOffcutNm = 72 * Inch,
        };

        var plan = CuttingStock
            .Plan(problem, PlanLimits.Default, TestContext.Current.CancellationToken);

        Assert.Empty(PlanCheck.Check(problem, plan));
        Assert.Equal((8, 8, true), (plan.RollCount, plan.LowerBoundRolls, plan.Proven));
    }
}
