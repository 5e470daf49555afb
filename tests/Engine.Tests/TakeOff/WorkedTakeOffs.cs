using System.Globalization;
using PostFrame.Engine;
using PostFrame.Engine.Quantities;
using Xunit;

namespace PostFrame.EngineTests.TakeOff;

/// <summary>Source: takeoff.md section 7, worked by hand and by a separate script (7.9).</summary>
public sealed class WorkedTakeOffs
{
    public static TheoryData<string> Jobs => ["W1", "W2", "W3", "W4", "W5", "W6", "W7", "W8"];

    [Theory, MemberData(nameof(Jobs))]
    public void The_pieces_are_those_of_the_table_one_by_one(string job)
    {
        var result = WorkedJobs.Get(job).Sized();
        var expected = ReferenceTable.Rows("worked-take-offs.csv")
            .Where(r => r["job"] == job).SelectMany(Expand).Order().ToArray();
        var actual = result.Pieces.Select(p => Line(
            p.Plane, p.Strip, p.Role.ToString().ToLowerInvariant(), p.Width, p.Cut)).Order();
        Assert.Equal(expected, actual);
    }

    [Theory, MemberData(nameof(Jobs))]
    public void The_exact_lengths_are_those_of_the_table(string job)
    {
        var pieces = WorkedJobs.Get(job).Sized().Pieces;
        foreach (var row in ReferenceTable.Rows("worked-take-offs.csv").Where(r => r["job"] == job))
            foreach (var plane in row["plane"].Split('+'))
                foreach (var strip in Strips(row["strips"]))
                {
                    var piece = Assert.Single(pieces, p =>
                        p.Plane == plane && p.Strip == strip);
                    Assert.Equal(Number(row, "exact"), In(row, piece.Exact), 0.0006);
                }
    }

    [Theory, MemberData(nameof(Jobs))]
    public void The_totals_are_those_under_the_table(string job)
    {
        var totals = WorkedJobs.Get(job).Sized().Totals;
        var row = Assert.Single(
            ReferenceTable.Rows("worked-totals.csv"), r => r["job"] == job);
        var metric = row["unit"] == "m";
        Assert.Equal(int.Parse(row["pieces"], CultureInfo.InvariantCulture), totals.Pieces);
        Assert.Equal(Number(row, "length"),
            metric ? totals.Length.TotalMetres : totals.Length.TotalFeet, 0.0001);
        Assert.Equal(Number(row, "gross"), Of(totals.Gross), metric ? 0.005 : 0.05);
        Assert.Equal(Number(row, "net"), Of(totals.Net), metric ? 0.005 : 0.05);
        Assert.Equal(Number(row, "ratio"), totals.GrossToNet, 0.0005);

        double Of(Area area) => metric ? area.TotalSquareMetres : area.TotalSquareFeet;
    }

    [Theory, MemberData(nameof(Jobs))]
    public void The_steps_of_every_derivation_add_up_to_its_exact_length(string job)
    {
        foreach (var piece in WorkedJobs.Get(job).Sized().Pieces)
        {
            var steps = piece.Why.TakeWhile(w => w.Term != "exact")
                .Aggregate(Length.Zero, (sum, w) => sum + w.Value);
            Assert.Equal(piece.Exact, steps);
            Assert.Equal(piece.Cut, piece.Why[^1].Value);
        }
    }

    private static IEnumerable<string> Expand(Dictionary<string, string> row) =>
        from plane in row["plane"].Split('+')
        from strip in Strips(row["strips"])
        select Line(plane, strip, row["role"], Measure(row, "width"), Measure(row, "cut"));

    private static string Line(string plane, int strip, string role, Length width, Length cut) =>
        $"{plane} {strip:000} {role} {width.Nanometres} {cut.Nanometres}";

    private static Length Measure(Dictionary<string, string> row, string column) =>
        row["unit"] == "mm" ? Ask.Mm(Number(row, column)) : Ask.In(Number(row, column));

    private static double In(Dictionary<string, string> row, Length length) =>
        row["unit"] == "mm" ? length.TotalMillimetres : length.TotalInches;

    private static double Number(Dictionary<string, string> row, string column) =>
        double.Parse(row[column], CultureInfo.InvariantCulture);

    private static IEnumerable<int> Strips(string text) =>
        from range in text.Split(' ')
        let ends = range.Split('-').Select(e => int.Parse(e, CultureInfo.InvariantCulture))
        from strip in Enumerable.Range(ends.First(), ends.Last() - ends.First() + 1)
        select strip;
}
