using CsCheck;
using PostFrame.Engine;
using PostFrame.Engine.Buildings;
using PostFrame.Engine.Quantities;
using Xunit;
using static PostFrame.EngineTests.TakeOff.Ask;

namespace PostFrame.EngineTests.TakeOff;

/// <summary>"best": the least bought area, then the fewest pieces, judged by trying everything.
/// </summary>
public sealed class BestWidthTests
{
    private static readonly double[] Widths = [36, 48, 60, 72];

    [Fact]
    public void No_sequence_of_widths_buys_less_or_as_much_in_fewer_pieces() =>
        Gen.Select(Gen.Int[150, 320], Gen.Int[1, 10], Gen.Int[0, 4]).Sample((width, x, door) =>
        {
            var job = Job(width, 480, 132, Gable(x),
                new InsulationInput
                {
                    Planes = ["endwall1"],
                    Product = "blanket-3-white",
                    BestRollWidth = true,
                });
            if (door > 0)
                job = job.WithOpenings(
                    Opening("endwall1", OpeningKind.OverheadDoor, 100, 96, 6 * door));
            var result = job.Sized();
            var chosen = (result.Totals.Gross.TotalSquareFeet * 144, result.Pieces.Count);
            var best = Cheapest(0, width, x, door);
            Assert.Equal(best.Area, chosen.Item1, 1e-3);
            Assert.Equal(best.Pieces, chosen.Count);
        }, iter: 200);

    [Fact]
    public void A_run_of_168_in_is_covered_without_surplus_by_mixed_widths()
    {
        var result = Job(360, 168, 120, Gable(4), new InsulationInput
        {
            Planes = ["sidewallA"],
            Product = "blanket-3-white",
            BestRollWidth = true,
        }).Sized();
        Assert.Equal(Length.Zero, result.PlaneAt("sidewallA").Surplus);
        Assert.Equal(3, result.Pieces.Count);
    }

    /// <summary>All sequences, strip by strip, with the gable and door worked anew in inches.
    /// </summary>
    private static (double Area, int Pieces) Cheapest(double at, double run, int x, int door)
    {
        if (at >= run - 0.0625) return (0, 0);
        return Widths.Min(width =>
        {
            var (area, pieces) = Cheapest(at + width, run, x, door);
            var right = Math.Min(at + width, run);
            var top = right <= run / 2 ? right : at >= run / 2 ? run - at : run / 2;
            var height = 132 + top * x / 12;
            var inside = door > 0 && 6 * door <= at && at + width <= 6 * door + 100;
            var exact = (inside ? height - 96 : height) + 6;
            return (area + width * Math.Ceiling((exact - 0.0625) / 6) * 6, pieces + 1);
        });
    }
}
