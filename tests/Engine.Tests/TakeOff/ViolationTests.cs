using PostFrame.Engine;
using PostFrame.Engine.Buildings;
using PostFrame.Engine.Quantities;
using PostFrame.Engine.TakeOff;
using Xunit;
using static PostFrame.EngineTests.TakeOff.Ask;
using static PostFrame.EngineTests.TakeOff.Mistakes;

namespace PostFrame.EngineTests.TakeOff;

/// <summary>Every mistake comes back at once, each at its member with value, bound and unit.
/// </summary>
public sealed class ViolationTests
{
    public static TheoryData<string> Names => [.. Shapes.Concat(Others).Select(c => c.Name)];

    [Theory, MemberData(nameof(Names))]
    public void A_mistake_is_told_at_its_member_in_a_sentence(string name)
    {
        var (_, job, path, rule) = Shapes.Concat(Others).Single(c => c.Name == name);
        var violation = Assert.Single(job.Refused(), v => v.Path == path && v.Rule == rule);
        Assert.EndsWith(".", violation.Message, StringComparison.Ordinal);
        Assert.True(violation.Limit is null || violation.Actual is not null);
    }

    [Fact]
    public void All_mistakes_come_at_once()
    {
        var job = Job(-1, 480, 1, Gable(4) with { VentFrom = In(2) },
            Cover(47, "roof")).WithPractice(p => p with { WallTop = In(-3) })
            .WithOpenings(new OpeningInput());
        Assert.Superset(
            new HashSet<string>
            {
                "/building/width", "/building/eaveHeight", "/building/roof/ventFrom",
                "/insulation/0/rollWidth", "/practice/wallTop",
            },
            job.Refused().Select(v => v.Path).ToHashSet());
    }

    [Fact]
    public void A_limit_given_alone_is_held_against_the_usual_value_of_the_other()
    {
        var one = Assert.Single(W1.WithPractice(p => p with
        {
            OnePersonLimit = Mass.FromPounds(80),
        }).Refused());
        Assert.Equal(("80", "75", "lb"), (one.Actual, one.Limit, one.Unit));
        var two = Assert.Single(W1.WithPractice(p => p with
        {
            TwoPersonLimit = Mass.FromPounds(49),
        }).Refused());
        Assert.Equal(("49", "50", "lb"), (two.Actual, two.Limit, two.Unit));
        Assert.NotNull(Sizing.Size(W1.WithPractice(p => p with
        {
            OnePersonLimit = Mass.FromPounds(80),
            TwoPersonLimit = Mass.FromPounds(80),
        })).Result);
    }

    [Fact]
    public void The_partition_is_the_bound_of_a_door_that_would_cross_it()
    {
        var job = WithOpening(Door("sidewallA", 100, 100, 250))
            .With(b => b with { Partition = new() { FromEndwall1 = In(300) } });
        var violation = Assert.Single(job.Refused());
        Assert.Equal(("250", "300", "in"), (violation.Actual, violation.Limit, violation.Unit));
        foreach (var beside in new[] { 200.0, 300 })
            Assert.NotNull(Sizing.Size(job.WithOpenings(
                Door("sidewallA", 100, 100, beside))).Result);
    }

    [Fact]
    public void A_bound_is_told_in_the_jobs_own_units()
    {
        var inches = W1.With(b => b with { EaveHeight = In(3) }).Refused()[0];
        var metric = WorkedJobs.W8.With(b => b with { EaveHeight = Mm(80) }).Refused()[0];
        Assert.Equal(("3", "24", "in"), (inches.Actual, inches.Limit, inches.Unit));
        Assert.Equal(("80", "609.6", "mm"), (metric.Actual, metric.Limit, metric.Unit));
    }
}
