using PostFrame.CuttingWorker.Planning;
using Xunit;

namespace PostFrame.PlanningTests;

public sealed class BenchArrangementTests
{
    /// <summary>Worked by hand: the rolls hold equal lengths, so each plane gets one roll.
    /// </summary>
    [Fact]
    public void Pieces_of_equal_length_change_rolls_so_that_each_plane_lies_on_one()
    {
        List<IReadOnlyList<BenchPiece>> rolls =
        [
            [new("1", 50, "o", "roof"), new("2", 30, "o", "wall")],
            [new("3", 50, "o", "wall"), new("4", 30, "o", "roof")],
        ];
        var arranged = BenchArrangement.Of(rolls, ["o"]);
        Assert.Equal(["1 4", "3 2"], arranged.Select(r => string.Join(' ', r.Pieces)).Order());
    }

    [Fact]
    public void Pieces_on_rolls_of_different_lots_stay_where_they_are()
    {
        List<IReadOnlyList<BenchPiece>> rolls =
        [
            [new("1", 50, "o", "roof", "A"), new("2", 30, "o", "wall", "A")],
            [new("3", 50, "o", "wall", "B"), new("4", 30, "o", "roof", "B")],
        ];
        var arranged = BenchArrangement.Of(rolls, ["o"]);
        Assert.All(arranged, r => Assert.Equal(
            rolls[r.Roll].Select(p => p.Key), r.Pieces.Order()));
    }

    [Fact]
    public void The_order_needed_sooner_gets_the_pieces_cut_first()
    {
        List<IReadOnlyList<BenchPiece>> rolls =
            [[new("late", 50, "b", "roof")], [new("soon", 50, "a", "roof")]];
        var arranged = BenchArrangement.Of(rolls, ["a", "b"]);
        Assert.Equal(["soon", "late"], arranged.SelectMany(r => r.Pieces));
    }

    [Fact]
    public void Every_roll_keeps_its_lengths_and_every_piece_is_cut_once()
    {
        for (var seed = 0; seed < 200; seed++)
        {
            var (rolls, orders) = Bench(seed);
            var of = rolls.SelectMany(r => r).ToDictionary(p => p.Key, p => p.LengthNm);
            var arranged = BenchArrangement.Of(rolls, orders);
            Assert.Equal(Enumerable.Range(0, rolls.Count), arranged.Select(r => r.Roll).Order());
            Assert.Equal(of.Keys.Order(), arranged.SelectMany(r => r.Pieces).Order());
            Assert.All(arranged, r => Assert.Equal(
                rolls[r.Roll].Select(p => p.LengthNm).Order(),
                r.Pieces.Select(p => of[p]).Order()));
        }
    }

    [Fact]
    public void Fewer_planes_and_orders_lie_open_than_in_the_order_given()
    {
        var (before, after) = (0, 0);
        for (var seed = 0; seed < 200; seed++)
        {
            var (rolls, orders) = Bench(seed);
            var of = rolls.SelectMany(r => r).ToDictionary(p => p.Key);
            var arranged = BenchArrangement.Of(rolls, orders)
                .Select(r => (IReadOnlyList<BenchPiece>)[.. r.Pieces.Select(p => of[p])]).ToList();
            before += Open(rolls, p => $"{p.Order} {p.Plane}") + Open(rolls, p => p.Order);
            after += Open(arranged, p => $"{p.Order} {p.Plane}") + Open(arranged, p => p.Order);
        }

        Assert.True(after < before * 0.8, $"{before} before, {after} after");
    }

    /// <summary>Own count of the most lying open after any roll.</summary>
    private static int Open(
        List<IReadOnlyList<BenchPiece>> rolls, Func<BenchPiece, string> of) =>
        Enumerable.Range(0, rolls.Count).Max(at => rolls.Take(at + 1).SelectMany(r => r).Select(of)
            .Intersect(rolls.Skip(at).SelectMany(r => r).Select(of)).Count());

    private static (List<IReadOnlyList<BenchPiece>> Rolls, List<string> Orders) Bench(int seed)
    {
        var random = new Random(seed);
        var key = 0;
        var rolls = Enumerable.Range(0, random.Next(2, 12)).Select(_ =>
            (IReadOnlyList<BenchPiece>)[.. Enumerable.Range(0, random.Next(1, 5)).Select(_ =>
                new BenchPiece($"p{key++}", random.Next(1, 6), $"o{random.Next(3)}",
                    $"plane {random.Next(4)}"))]).ToList();
        return (rolls, ["o2", "o0", "o1"]);
    }
}
