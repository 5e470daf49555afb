using PostFrame.Engine;
using PostFrame.Engine.Buildings;
using Xunit;
using static PostFrame.EngineTests.TakeOff.Ask;

namespace PostFrame.EngineTests.TakeOff;

/// <summary>
/// What lies wholly beyond a partition is left out, and told with its reason. Source: takeoff.md
/// 2.9: bays 1 to 3 insulated means that L is the sum of those bays.
/// </summary>
public sealed class PartitionTests
{
    /// <summary>40 × 48 ft, insulated to 16 ft; a lean-to from 24 ft to the far endwall.</summary>
    private static SizingInput Shop(LeanToInside inside, double drop, params string[] planes) =>
        Job(480, 576, 168, Gable(4), Cover(48, planes)).With(b => b with
        {
            Partition = new() { FromEndwall1 = In(192) },
            LeanTos =
            [
                new()
                {
                    Side = BuildingSide.A, Width = In(144), Slope = Pitch(2), Drop = In(drop),
                    Inside = inside, FromEndwall1 = In(288),
                },
            ],
        });

    [Theory]
    [InlineData(LeanToInside.Open, 0, "leanRoofA", "Lean-to A roof")]
    [InlineData(LeanToInside.Open, 0, "leanSidewallA", "Lean-to A sidewall")]
    [InlineData(LeanToInside.Separate, 0, "leanRoofA", "Lean-to A roof")]
    [InlineData(LeanToInside.Open, 12, "sidewallABand", "Sidewall A band")]
    public void A_plane_wholly_beyond_it_is_refused_with_the_reason(
        LeanToInside inside, double drop, string plane, string title)
    {
        var violation = Assert.Single(Shop(inside, drop, "sidewallB", plane).Refused());
        Assert.Equal(("/insulation/0/planes/1", "beyond-partition", plane),
            (violation.Path, violation.Rule, violation.Actual));
        Assert.Contains($"Nothing of {title} lies in the insulated part, from 0 in to 16 ft",
            violation.Message, StringComparison.Ordinal);
        Assert.DoesNotContain(plane, violation.Limit!, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_left_out_beyond_it_is_told()
    {
        var told = Assert.Single(Shop(LeanToInside.Open, 0, "sidewallB").Sized().Warnings,
            w => w.Id == "beyond-partition");
        Assert.Equal("Left out, because nothing of them lies on the insulated side of the "
            + "partition at 16 ft: Lean-to A roof, Lean-to A sidewall.", told.Text);
        Assert.DoesNotContain(Shop(LeanToInside.Open, 0, "sidewallB")
            .With(b => b with { Partition = new() { FromEndwall1 = In(300) } })
            .Sized().Warnings, w => w.Id == "beyond-partition");
    }

    [Theory]
    [InlineData("leanSidewallA", 100.0, " at 100 in")]
    [InlineData("leanSidewallA", null, "")]
    [InlineData("sidewallB", 300.0, " at 300 in")]
    public void An_opening_beyond_it_takes_no_part_and_is_told(
        string wall, double? from, string at)
    {
        var bare = Shop(LeanToInside.Open, 0, "sidewallB");
        var result = bare.WithOpenings(
            Opening(wall, OpeningKind.OverheadDoor, 96, 96, from)).Sized();
        Assert.Equal(bare.Sized().Pieces.Select(p => p.Cut), result.Pieces.Select(p => p.Cut));
        Assert.Equal(
            $"The overhead door in {wall}{at} lies beyond the partition at 16 ft, in the cold "
            + "part, and takes no part.",
            Assert.Single(result.Warnings, w => w.Id == "beyond-partition" && w.Plane == wall)
                .Text);
        Assert.Empty(result.PossibleSavings);
    }

    [Fact]
    public void Panels_that_leave_nothing_of_one_slope_are_told_at_that_slope()
    {
        var job = Job(480, 576, 168, Gable(4), Cover(48, "roofB", "roofA")).With(b => b with
        {
            Roof = b.Roof! with
            {
                TranslucentPanels =
                [
                    new()
                    {
                        Plane = "roofA", FromStart = In(0), Width = In(576),
                        Treatment = TranslucentTreatment.SplitRun,
                    },
                ],
            },
        });
        var violation = Assert.Single(job.Refused());
        Assert.Equal(("/insulation/0/planes/1", "nothing-to-cover"),
            (violation.Path, violation.Rule));
    }

    // Insulated to 288 in: a panel from 400 in and a vent from 420 in lie in the cold part, and
    // nobody is told to cut out what no strip covers.
    [Fact]
    public void A_panel_and_a_vent_beyond_it_are_told_and_ask_for_no_cut()
    {
        var job = Job(480, 576, 168, Gable(4), Cover(48, "roofB", "roofA")).With(b => b with
        {
            Partition = new() { FromEndwall1 = In(288) },
            Roof = b.Roof! with
            {
                Ridge = RidgeKind.Vented,
                VentFrom = In(420),
                VentTo = In(500),
                TranslucentPanels = [new() { FromStart = In(400), Width = In(36) }],
            },
        });
        var warnings = job.Sized().Warnings;
        Assert.DoesNotContain(warnings, w => w.Id == "cut-out-panels");
        Assert.Equal(
            [
                "The translucent panel from 400 in to 436 in lies beyond the partition at "
                    + "24 ft, in the cold part, and takes no part.",
                "The vent of the ridge from 420 in to 500 in lies beyond the partition at "
                    + "24 ft, in the cold part, and takes no part.",
            ],
            warnings.Where(w => w.Id == "beyond-partition").Select(w => w.Text));
    }
}
