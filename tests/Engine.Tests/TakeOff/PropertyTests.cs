using System.Text.Json;
using CsCheck;
using PostFrame.Engine;
using PostFrame.Engine.Buildings;
using PostFrame.Engine.Quantities;
using Xunit;
using static PostFrame.EngineTests.TakeOff.Ask;

namespace PostFrame.EngineTests.TakeOff;

/// <summary>What must hold for any building; random ones of every form.</summary>
public sealed class PropertyTests
{
    private const int Many = 100;

    [Fact]
    public void Order_of_planes_lines_and_openings_changes_nothing() =>
        RandomJobs.OfAnyForm.Sample(job =>
        {
            var turned = job.With(b => b with { Openings = [.. b.Openings!.Reverse()] }) with
            {
                Insulation =
                [
                    .. job.Insulation!.Reverse()
                        .Select(l => l with { Planes = [.. l.Planes!.Reverse()] }),
                ],
            };
            Assert.Equal(JsonSerializer.Serialize(job.Sized()),
                JsonSerializer.Serialize(turned.Sized()));
        }, iter: Many);

    [Fact]
    public void The_mirrored_building_has_the_mirrored_schedule() =>
        Gen.Select(Gen.Int[4, 16], Gen.Double[0.2, 0.8], Gen.Int[30, 160], Gen.Int[0, 20])
            .Sample((strips, share, rise, step) =>
            {
                var width = strips * 48;
                (double Across, double Up)[] points =
                [
                    (0, 140), (width * share * 0.5, 140 + rise * 0.3),
                    (width * share, 140 + rise), (width, 140 - step),
                ];
                var mirrored = points.Reverse().Select(p => (width - p.Across, p.Up));
                Assert.Equal(
                    Cuts(Drawn(points), swap: true), Cuts(Drawn(mirrored), swap: false));
            }, iter: Many);

    [Fact]
    public void The_same_building_in_metres_and_in_feet_has_the_same_exact_lengths() =>
        RandomJobs.OfAnyForm.Sample(job =>
        {
            var practice = job.Practice with
            {
                Tolerance = In(0.0625),
                EaveTuck = In(6),
                RidgeLap = In(6),
                JunctionLap = In(6),
                WallTop = In(3),
                WallBase = In(3),
                OpeningHead = In(3),
                LongestOverRidge = In(540),
            };
            var metric = job with
            {
                Metric = true,
                Practice = practice,
                Building = job.Building! with
                {
                    Width = Mm(job.Building.Width!.Value.TotalInches * 25.4),
                    Length = Mm(job.Building.Length!.Value.TotalInches * 25.4),
                    EaveHeight = Mm(job.Building.EaveHeight!.Value.TotalInches * 25.4),
                },
            };
            Assert.Equal(
                job.Sized().Pieces.Select(p => (p.Mark, p.Exact)),
                metric.Sized().Pieces.Select(p => (p.Mark, p.Exact)));
        }, iter: Many);

    public static TheoryData<RoofForm> Growing =>
        [RoofForm.Gable, RoofForm.Monoslope, RoofForm.Gambrel, RoofForm.DoublePitch];

    [Theory, MemberData(nameof(Growing))]
    public void Growing_any_dimension_never_shrinks_the_total_length(RoofForm form) =>
        Gen.Select(RandomJobs.Of(form), Gen.Int[1, 1600]).Sample((job, sixteenths) =>
        {
            var more = In(sixteenths / 16.0);
            var plain = job.With(b => b with
            {
                Openings = [],
                LeanTos = null,
                Roof = b.Roof!.LowerRun is null ? b.Roof : b.Roof with { LowerRun = In(36) },
            }) with
            {
                Insulation = [job.Insulation![0] with
                {
                    Planes = ["roof"], RoofLayout = Engine.TakeOff.RoofLayout.EaveToRidge,
                }, job.Insulation[1] with { Planes = Walls }],
            };
            var total = plain.Sized().Totals.Length;
            foreach (var grown in new[]
            {
                plain.With(b => b with { Width = b.Width + more }),
                plain.With(b => b with { Length = b.Length + more }),
                plain.With(b => b with { EaveHeight = b.EaveHeight + more }),
                plain.With(b => b with { Roof = Steeper(b.Roof!) }),
                plain.With(b => b with
                {
                    Roof = b.Roof! with
                    {
                        CoverOverhangs = true,
                        EaveOverhang = (b.Roof.EaveOverhang ?? In(0)) + In(6),
                        RakeOverhang = (b.Roof.RakeOverhang ?? In(0)) + In(6),
                    },
                }),
            })
                Assert.True(grown.Sized().Totals.Length >= total);
        }, iter: Many / 2);

    private static RoofInput Steeper(RoofInput roof) => roof with
    {
        Slope = roof.Slope is { } s ? Slope.FromRatio(s.RiseOverRun * 1.1) : null,
        UpperSlope = roof.UpperSlope is { } u ? Slope.FromRatio(u.RiseOverRun * 1.1) : null,
    };

    [Fact]
    public void Mixed_widths_never_buy_more_than_the_best_single_width() =>
        RandomJobs.OfAnyForm.Sample(job =>
        {
            var best = Bought(job, l => l with { BestRollWidth = true, RollWidth = null });
            foreach (var width in new[] { 36.0, 48, 60, 72 })
            {
                if (width == 36 && job.Insulation![0].Product == "bubble-foil") continue;
                var single = Bought(job, l => l with { RollWidth = In(width) });
                foreach (var plane in best.Keys)
                    Assert.True(best[plane].Area <= single[plane].Area + 1e-9
                        && (best[plane].Area < single[plane].Area - 1e-9
                            || best[plane].Pieces <= single[plane].Pieces), plane);
            }
        }, iter: Many / 2);

    [Fact]
    public void Every_mark_is_its_own() => RandomJobs.OfAnyForm.Sample(job =>
    {
        var marks = job.Sized().Pieces.Select(p => p.Mark).ToArray();
        Assert.Equal(marks.Length, marks.Distinct().Count());
    }, iter: Many);

    private static Dictionary<string, (double Area, int Pieces)> Bought(
        SizingInput job, Func<InsulationInput, InsulationInput> change)
    {
        // Pairs, so that a plane is the same plane whatever its width weighs.
        var result = (job with
        {
            Insulation = [.. job.Insulation!.Select(l => change(l) with
            {
                RoofLayout = l.Planes!.Contains("roof")
                    ? Engine.TakeOff.RoofLayout.EaveToRidge
                    : null,
            })],
        }).Sized();
        return result.Planes.ToDictionary(p => p.Plane, p => (
            p.Gross.TotalSquareFeet, result.Pieces.Count(x => x.Plane == p.Plane)));
    }

    private static SizingInput Drawn(IEnumerable<(double Across, double Up)> points)
    {
        var list = points.ToArray();
        return Job(list[^1].Across, 600, list[0].Up,
            new()
            {
                Form = RoofForm.Profile,
                Points = [.. list.Select(p => new ProfilePointInput
                {
                    Across = In(p.Across), Up = In(p.Up),
                })],
            },
            Cover(48, [.. Walls, "roofA", "roofB"]));
    }

    private static IEnumerable<string> Cuts(SizingInput job, bool swap) => job.Sized().Pieces
        .Select(p => $"{(swap ? Swapped(p.Plane) : p.Plane)} {p.Width} {p.Cut}").Order();

    private static string Swapped(string plane) => plane[^1] switch
    {
        'A' => plane[..^1] + 'B',
        'B' => plane[..^1] + 'A',
        _ => plane,
    };
}
