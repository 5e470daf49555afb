using System.Text.Json.Nodes;

namespace PostFrame.ContractsTests.Messages;

/// <summary>
/// The examples are one true order. Outside check: the worked building W1 of the take-off
/// reference, section 7 (30 × 40 × 10 ft, 4:12, 48 in blanket over the ridge; schedule worked by
/// hand) and its worked cutting, section 4.5 (8 rolls of 100 ft, 6 in trim).
/// </summary>
public sealed class ExampleTruthTests
{
    private const long NmPerInch = 25_400_000;

    private static readonly JsonNode Order =
        MessageFile.Of("order-confirmed.v1").Example["data"]!;

    private static readonly JsonNode Plan = MessageFile.Of("cutting-planned.v1").Example["data"]!;

    [Fact]
    public void The_order_has_the_schedule_worked_by_hand()
    {
        (string Plane, long CutIn, int Count)[] worked =
        [
            ("endwall1", 138, 1), ("endwall1", 144, 1), ("endwall1", 150, 1), ("endwall1", 162, 1),
            ("endwall1", 168, 1), ("endwall1", 174, 1), ("endwall1", 186, 2),
            ("endwall2", 138, 1), ("endwall2", 144, 1), ("endwall2", 150, 1), ("endwall2", 162, 1),
            ("endwall2", 168, 1), ("endwall2", 174, 1), ("endwall2", 186, 2),
            ("roof", 396, 10), ("sidewallA", 126, 10), ("sidewallB", 126, 10),
        ];

        var schedule = Order["pieces"]!.AsArray()
            .GroupBy(piece => ((string)piece!["plane"]!, (long)piece["cutNm"]! / NmPerInch))
            .Select(group => (group.Key.Item1, group.Key.Item2, group.Count())).Order();

        Assert.Equal(worked, schedule);
    }

    [Fact]
    public void The_plan_cuts_every_piece_of_the_order_once()
    {
        var cuts = Rolls().SelectMany(roll => roll["cuts"]!.AsArray());

        Assert.Equal(
            Order["pieces"]!.AsArray().Select(Identity).Order(), cuts.Select(Identity).Order());
    }

    [Fact]
    public void The_plan_uses_eight_rolls_and_no_plan_can_use_fewer()
    {
        var total = Order["pieces"]!.AsArray().Sum(piece => (long)piece!["cutNm"]!);
        var usable = (1200 - 6) * NmPerInch;

        Assert.Equal(9096 * NmPerInch, total);
        Assert.Equal(8, (total + usable - 1) / usable);
        Assert.Equal(8, Rolls().Count());
        Assert.Equal(8, (int)Plan["plans"]![0]!["lowerBoundRolls"]!);
    }

    [Fact]
    public void Every_roll_is_used_up_to_the_last_nanometre_by_trim_cuts_and_left_over() =>
        Assert.All(Rolls(), roll => Assert.Equal(
            (long)roll["rollLengthNm"]!,
            (long)roll["endTrimNm"]! + (long)roll["leftOverNm"]!
                + roll["cuts"]!.AsArray().Sum(cut => (long)cut!["cutNm"]!)));

    [Fact]
    public void What_is_left_is_an_offcut_from_six_feet_up_and_scrap_below() =>
        Assert.All(Rolls(), roll => Assert.Equal(
            (long)roll["leftOverNm"]! >= 72 * NmPerInch ? "offcut" : "scrap",
            (string)roll["leftOver"]!));

    [Fact]
    public void Counts_say_what_is_there()
    {
        Assert.Equal(46, (int)Plan["pieceCount"]!);
        Assert.Equal(8, (int)Plan["rollCount"]!);
        Assert.Equal(
            46, (int)MessageFile.Of("labels-printed.v1").Example["data"]!["labelCount"]!);
    }

    private static IEnumerable<JsonNode> Rolls() =>
        Plan["plans"]!.AsArray().SelectMany(plan => plan!["rolls"]!.AsArray()).Select(r => r!);

    private static (string, string, long) Identity(JsonNode? piece) =>
        ((string)piece!["pieceId"]!, (string)piece["mark"]!, (long)piece["cutNm"]!);
}
